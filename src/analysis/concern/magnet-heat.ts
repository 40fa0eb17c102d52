/** Concern: the magnets come near the temperature at which they lose strength for good. */
import { magnetGrades } from '../../data/magnet-grade.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'
import { sunAllowance } from './plastic-softening.ts'

/** Share of the intrinsic coercivity up to which the straight line is trusted: common practice, no source. */
export const kneeShare = 0.9

export interface MagnetAtWork {
  /** Mean demagnetising field at `temperature`, as a magnitude [A/m]. */
  readonly field: number
  /** [K] */
  readonly temperature: number
  /** Intrinsic coercivity at 20 °C [A/m] and its change with temperature [1/K]. */
  readonly coercivity: number
  readonly coercivityCoefficient: number
  /** Change of remanence with temperature [1/K]. */
  readonly remanenceCoefficient: number
}

const reference = 293.15

/**
 * Temperature at which the working field reaches the knee [K]: kneeShare HcJ (1 + β ΔT) = H (1 + α ΔT)/(1 + α ΔT0);
 * infinite where it does so at no higher temperature.
 */
export function kneeTemperature(magnet: MagnetAtWork): number {
  const { field, temperature, coercivity, coercivityCoefficient: β, remanenceCoefficient: α } = magnet
  const H20 = field / (1 + α * (temperature - reference))
  const slope = H20 * α - kneeShare * coercivity * β
  const rise = (kneeShare * coercivity - H20) / slope
  return slope > 0 ? reference + rise : Number.POSITIVE_INFINITY
}

/**
 * Share of the copper's rise above the air that the magnets are guessed to take, and the bounds of the guess: none
 * where their own turning cools them, all where the gap is closed. A guess, no source.
 */
export const magnetShare = { least: 0, likely: 0.5, most: 1 } as const

/** Of the magnets beside copper that is hotter than the air [K]. */
export const guessedMagnetTemperature = (
  air: number,
  copper: number,
  share: number = magnetShare.likely,
): number => air + share * Math.max(0, copper - air)

/** Margin to be kept [K]: common practice, no source. */
export const magnetMargin = 10

export const magnetHeat: ConcernRule = {
  code: 'magnet-heat',
  title: 'The magnets may lose strength by heat',
  basis: `The lower of the grade’s limit and the temperature at which the mean demagnetising field reaches ${kneeShare} of the intrinsic coercivity, less a margin of ${magnetMargin} K, against the site’s air plus ${sunAllowance} K of sun outdoors, and against the magnets in work: air plus half of the hottest copper’s rise. That half is a guess, for the heat that crosses the gap is not computed; it lies between none and all of the rise, and both are told. Shares and margins common practice, no source. Corners of a block bear more than its mean. A warning.`,
  judge: (chain) => {
    const { machine, field } = chain
    const { magnet } = machine.rotor
    const name = machine.design.rotor.magnet.grade
    const grade = magnetGrades.find((candidate) => candidate.name === name)
    if (magnet.highestTemperature === undefined || grade === undefined) return undefined
    const knee =
      grade.coercivityCoefficient_percent_per_K < 0
        ? kneeTemperature({
            field: Math.max(0, -field.workingPoint.fieldStrength),
            temperature: machine.site.ambient,
            coercivity: grade.intrinsicCoercivity_kA_per_m * 1000,
            coercivityCoefficient: grade.coercivityCoefficient_percent_per_K / 100,
            remanenceCoefficient: magnet.temperatureCoefficient,
          })
        : Number.POSITIVE_INFINITY
    const limit = Math.min(knee, magnet.highestTemperature)
    const standing = machine.site.ambient + (machine.safetyClass === 'outdoor' ? sunAllowance : 0)
    const hottest = rowOfMost(chain.rows, ({ copperTemperature }) => copperTemperature)
    const copper = hottest?.copperTemperature ?? machine.site.ambient
    const air = machine.site.ambient
    const guessed = guessedMagnetTemperature(air, copper)
    const sun = standing > limit - magnetMargin
    if (!sun && guessed <= limit - magnetMargin) return undefined
    const thin = knee < magnet.highestTemperature
    return {
      code: 'magnet-heat',
      severity: 'warning',
      path: 'rotor.magnet',
      what: sun
        ? 'The magnets may lose strength for good on a hot day.'
        : 'The copper across the gap may heat the magnets more than they bear.',
      why: thin
        ? 'Thin blocks in an open circuit work deep in their own demagnetising field; heat lowers what they withstand, long before the limit on the grade’s sheet, which is for thick ones.'
        : 'Above its grade’s limit a magnet loses part of its strength and does not get it back on cooling.',
      figures: `They bear about ${formatSi(limit, 'degC', 3)} here (the grade’s sheet says ${formatSi(magnet.highestTemperature, 'degC', 3)}; permeance coefficient ${formatNumber(Math.min(field.workingPoint.permeanceCoefficient, 1e6), 2)}); in summer sun they may reach ${formatSi(standing, 'degC', 3)}, the copper ${formatSi(copper, 'degC', 3)}${hottest === undefined ? '' : ` in ${formatSi(hottest.wind, 'm_per_s')}`}, which makes the magnets ${formatSi(guessed, 'degC', 3)} by a guess (half of its rise; none to all: ${formatSi(air, 'degC', 3)} to ${formatSi(guessedMagnetTemperature(air, copper, magnetShare.most), 'degC', 3)}).`,
      remedies: [
        'Take the same size in a grade with higher coercivity (letters M, H, SH behind the number).',
        'Take thicker magnets, or put steel behind them: both ease the demagnetising field.',
        'Keep the copper cooler, and read the volts per speed after the first hot summer: a lasting drop tells.',
      ],
    }
  },
}
