/** Concern: the blades are so small or slow that the polar of their section is not to be trusted. */
import { bladeReynolds, leastTrustedReynolds } from '../../physics/aerodynamics/blade-reynolds.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { fewerBlades, slowerBlades, widerChord } from '../ladder/blade.ts'
import { whereTriable } from '../ladder/ladder.ts'
import type { ChainView, ConcernRule } from './concern.ts'

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

/** Of the blades at their best, and the lowest that their section was measured at; undefined where no chord is known. */
function reynoldsOf({ rotor, machine: { blades } }: ChainView) {
  const { tipSpeedRatio } = rotor.best
  if (!(tipSpeedRatio > 0)) return undefined
  const number =
    blades.kind === 'straight-blade'
      ? uprightReynolds(blades.chord, tipSpeedRatio)
      : rotor.shape === undefined
        ? undefined
        : bladeReynolds(rotor.shape, {
            tipSpeedRatio,
            windSpeed: askedWind,
            kinematicViscosity: viscosity,
          })
  return number === undefined ? undefined : { number, lowest: rotor.shape?.polars?.[0]?.reynolds ?? 0 }
}

export const bladeReynoldsRule: ConcernRule = {
  code: 'blade-reynolds',
  title: 'The blades’ Reynolds number is low',
  basis: `Reynolds number at three quarters of the radius, at the best tip-speed ratio in ${askedWind} m/s, against 100 000 (common practice, no source): below it smooth sections lose lift suddenly and differ from builder to builder; and against the lowest of the section’s table, whose polar is held below it. A note.`,
  measure: (chain) => {
    const reynolds = reynoldsOf(chain)
    return (
      reynolds && {
        name: 'Reynolds number',
        value: reynolds.number,
        limit: Math.max(leastTrustedReynolds, heldShare * reynolds.lowest),
        unit: '1',
        sound: 'above',
      }
    )
  },
  answeredBy: 'Power of the finished blades under load, with speed and wind logged beside it.',
  judge: (chain) => {
    const found = reynoldsOf(chain)
    if (found === undefined) return undefined
    const { number: reynolds, lowest } = found
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
        ...whereTriable('Fewer and wider blades.', fewerBlades(chain.machine.design)),
        ...whereTriable('A lower tip-speed ratio widens the chord.', slowerBlades(chain.machine.design)),
        ...whereTriable('The same blades with a wider chord.', widerChord(chain.machine.design)),
        'A thin, cambered section made for small models, with a clean leading edge.',
        'Take the power of the blades with a third of doubt until measured.',
      ],
    }
  },
}
