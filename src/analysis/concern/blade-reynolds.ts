/** Concern: the blades are so small or slow that the polar of their section is not to be trusted. */
import { bladeReynolds, leastTrustedReynolds } from '../../physics/aerodynamics/blade-reynolds.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

/** Wind in which it is asked [m/s]: where a small machine does most of its work. */
export const askedWind = 6

/** Kinematic viscosity of air at 15 °C [m²/s]. */
const viscosity = 1.46e-5

export const reynoldsTooLow = (reynolds: number): boolean => reynolds < leastTrustedReynolds

export const bladeReynoldsRule: ConcernRule = {
  code: 'blade-reynolds',
  title: 'The blades’ Reynolds number is low',
  basis: `Reynolds number at three quarters of the radius, at the best tip-speed ratio in ${askedWind} m/s, against 100 000 (common practice, no source): below it smooth sections lose lift suddenly and differ from builder to builder. A note.`,
  judge: ({ rotor }) => {
    if (rotor.shape === undefined || !(rotor.best.tipSpeedRatio > 0)) return undefined
    const reynolds = bladeReynolds(rotor.shape, {
      tipSpeedRatio: rotor.best.tipSpeedRatio,
      windSpeed: askedWind,
      kinematicViscosity: viscosity,
    })
    if (!reynoldsTooLow(reynolds)) return undefined
    return {
      code: 'blade-reynolds',
      severity: 'note',
      path: 'blades',
      what: 'The blades work where sections behave badly, so the computed power may be too good.',
      why: 'Narrow blades in slow air keep a sluggish layer on their back that lets go early; a rough or blunt leading edge changes much there.',
      figures: `Reynolds number ${formatNumber(Math.round(reynolds / 1000) * 1000, 2)} in ${formatSi(askedWind, 'm_per_s')}; wanted ${formatNumber(leastTrustedReynolds, 2)}.`,
      remedies: [
        'Fewer and wider blades, or a lower tip-speed ratio: both widen the chord.',
        'A thin, cambered section made for small models, with a clean leading edge.',
        'Take the power of the blades with a third of doubt until measured.',
      ],
    }
  },
}
