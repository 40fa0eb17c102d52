/** Concern: the magnets come near the temperature at which they lose strength for good. */
import { magnetGrades } from '../../data/magnet-grade.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { harderGrade, thickerMagnets } from '../ladder/magnet.ts'
import type { ChainView, ConcernRule } from './concern.ts'
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

/** Margin to be kept [K]: common practice, no source. */
export const magnetMargin = 10

/** What bounds the magnets of a chain, and how warm they may get; undefined where no grade is named. */
function magnetCase({ machine, field, rows }: ChainView) {
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
  const hottest = rowOfMost(rows, ({ temperatures }) => temperatures.magnets)
  return {
    limit: Math.min(knee, magnet.highestTemperature),
    sheet: magnet.highestTemperature,
    thin: knee < magnet.highestTemperature,
    standing: machine.site.ambient + (machine.safetyClass === 'outdoor' ? sunAllowance : 0),
    hottest,
    atWork: hottest?.temperatures.magnets ?? machine.site.ambient,
  }
}

export const magnetHeat: ConcernRule = {
  code: 'magnet-heat',
  title: 'The magnets may lose strength by heat',
  basis: `The lower of the grade’s limit and the temperature at which the mean demagnetising field reaches ${kneeShare} of the intrinsic coercivity, less a margin of ${magnetMargin} K, against the site’s air plus ${sunAllowance} K of sun outdoors, and against the magnets in work: warmed by the winding across the gap, by air and radiation, and cooled on the rotor’s outer faces. That warmth is estimated, ± 50 %. Margin and sun common practice, no source. Corners of a block bear more than its mean. A warning.`,
  measure: (chain) => {
    const found = magnetCase(chain)
    return (
      found && {
        name: 'magnets, in the sun or in work',
        value: Math.max(found.standing, found.atWork),
        limit: Math.min(found.limit - magnetMargin, 1000),
        unit: 'degC',
        sound: 'below',
      }
    )
  },
  answeredBy:
    'A thermometer strip on a magnet after an hour of full work, and the volts at one speed before and after the first hot summer.',
  judge: (chain) => {
    const found = magnetCase(chain)
    if (found === undefined) return undefined
    const { field, machine } = chain
    const { limit, sheet, thin, standing, hottest, atWork } = found
    const { ambient } = machine.site
    const sun = standing > limit - magnetMargin
    if (!sun && atWork <= limit - magnetMargin) return undefined
    const open = chain.heat.spread * Math.max(0, atWork - ambient)
    const { design } = machine
    return {
      code: 'magnet-heat',
      severity: 'warning',
      path: 'rotor.magnet',
      what: sun
        ? 'The magnets may lose strength for good on a hot day.'
        : 'The copper across the gap heats the magnets more than they bear.',
      why: thin
        ? 'Thin blocks in an open circuit work deep in their own demagnetising field; heat lowers what they withstand, long before the limit on the grade’s sheet, which is for thick ones.'
        : 'Above its grade’s limit a magnet loses part of its strength and does not get it back on cooling.',
      figures: `They bear about ${formatSi(limit, 'degC', 3)} here (the grade’s sheet says ${formatSi(sheet, 'degC', 3)}; permeance coefficient ${formatNumber(Math.min(field.workingPoint.permeanceCoefficient, 1e6), 2)}); in summer sun they may reach ${formatSi(standing, 'degC', 3)}, in work ${formatSi(atWork, 'degC', 3)}${open > 0 ? ` ± ${formatNumber(open, 2)} K` : ''}${hottest === undefined ? '' : ` in ${formatSi(hottest.wind, 'm_per_s')} beside copper of ${formatSi(hottest.copperTemperature, 'degC', 3)}`}.`,
      remedies: [
        triable(
          'Take the same size in a grade with higher coercivity (letters M, H, SH behind the number).',
          harderGrade(design),
        ),
        triable(
          'Take thicker magnets, or put steel behind them: both ease the demagnetising field.',
          thickerMagnets(design),
        ),
        'Keep the copper cooler, and read the volts per speed after the first hot summer: a lasting drop tells.',
      ],
    }
  },
}
