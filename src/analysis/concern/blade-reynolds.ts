/** Concern: the blades are so small or slow that the polar of their section is not to be trusted. */
import { bladeReynolds, leastTrustedReynolds } from '../../physics/aerodynamics/blade-reynolds.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

/** Wind in which it is asked [m/s]: where a small machine does most of its work. */
export const askedWind = 6

/** Kinematic viscosity of air at 15 °C [m²/s]. */
const viscosity = 1.46e-5

export const reynoldsTooLow = (reynolds: number): boolean => reynolds < leastTrustedReynolds

/** Below the lowest Reynolds number measured by more than this share, the held polar says little. */
const heldShare = 0.8

/** Of an upright blade of a chord [m], on the mean of the turn, two thirds of the wind across it. */
export const uprightReynolds = (chord: number, tipSpeedRatio: number): number =>
  (chord * askedWind * Math.hypot(tipSpeedRatio, 2 / 3)) / viscosity

export const bladeReynoldsRule: ConcernRule = {
  code: 'blade-reynolds',
  title: 'The blades’ Reynolds number is low',
  basis: `Reynolds number at three quarters of the radius, at the best tip-speed ratio in ${askedWind} m/s, against 100 000 (common practice, no source): below it smooth sections lose lift suddenly and differ from builder to builder; and against the lowest of the section’s table, whose polar is held below it. A note.`,
  judge: ({ rotor, machine: { blades } }) => {
    const { tipSpeedRatio } = rotor.best
    const upright = blades.kind === 'straight-blade' ? blades : undefined
    if (!(tipSpeedRatio > 0)) return undefined
    const reynolds =
      upright !== undefined
        ? uprightReynolds(upright.chord, tipSpeedRatio)
        : rotor.shape === undefined
          ? undefined
          : bladeReynolds(rotor.shape, {
              tipSpeedRatio,
              windSpeed: askedWind,
              kinematicViscosity: viscosity,
            })
    if (reynolds === undefined) return undefined
    const lowest = rotor.shape?.polars?.[0]?.reynolds ?? 0
    const held = reynolds < heldShare * lowest
    if (!reynoldsTooLow(reynolds) && !held) return undefined
    return {
      code: 'blade-reynolds',
      severity: 'note',
      path: 'blades',
      what: 'The blades work where sections behave badly, so the computed power may be too good.',
      why: 'Narrow blades in slow air keep a sluggish layer on their back that lets go early; a rough or blunt leading edge changes much there.',
      figures: `Reynolds number ${formatNumber(Math.round(reynolds / 1000) * 1000, 2)} in ${formatSi(askedWind, 'm_per_s')}; wanted ${formatNumber(leastTrustedReynolds, 2)}${held ? `; the section’s table begins at ${formatNumber(lowest, 2)}, and that is used below it` : ''}.`,
      remedies: [
        'Fewer and wider blades, or a lower tip-speed ratio: both widen the chord.',
        'A thin, cambered section made for small models, with a clean leading edge.',
        'Take the power of the blades with a third of doubt until measured.',
      ],
    }
  },
}
