/** Concern: the phases do not stand at the electrical angles that their connection needs. */
import { phaseOffset, phaseOffsetTolerance } from '../../physics/winding/star-of-slots.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { ownBridges } from '../ladder/connection.ts'
import { triable } from '../ladder/ladder.ts'
import { phasesPlaced } from '../ladder/winding.ts'
import { type ConcernRule, severityFor } from './concern.ts'

export interface PlacedPhase {
  /** Mechanical angle from the first [rad]. */
  readonly offset: number
  readonly sense: 1 | -1
}

const turn = 2 * Math.PI
const wrapped = (angle: number) => ((angle % turn) + turn) % turn
const principal = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle))

/** Electrical angle of each phase against the first, a reversed one half a turn on, 0…2π [rad]. */
export function electricalAngles(phases: readonly PlacedPhase[], polePairs: number): number[] {
  const first = phases[0]
  if (first === undefined) return []
  return phases.map(({ offset, sense }) =>
    wrapped(
      phaseOffset({ mechanicalOffset: offset - first.offset, polePairs }).electricalOffset +
        (sense === first.sense ? 0 : Math.PI),
    ),
  )
}

/** Largest distance from angles that serve: thirds of a turn for three, a quarter for two; 0 for one [rad]. */
export function phaseError(angles: readonly number[]): number {
  const [, b, c] = angles
  if (b === undefined) return 0
  const from = (angle: number, wanted: number) => Math.abs(principal(angle - wanted))
  if (c === undefined) return Math.min(from(b, turn / 4), from(b, -turn / 4))
  const third = turn / 3
  return Math.min(Math.max(from(b, third), from(c, -third)), Math.max(from(b, -third), from(c, third)))
}

const degrees = (angle: number) => `${formatNumber((angle * 180) / Math.PI)}°`

export const phaseOffsetRule: ConcernRule = {
  code: 'phase-offset',
  title: 'The phases stand at the wrong electrical angles',
  basis: `Mechanical offset times pole pairs, half a turn added where the sense is reversed, against 120° and 240° (three phases) or 90° (two), ± ${degrees(phaseOffsetTolerance)}: common practice, no source. Blocks the outdoor class, a warning in the others; only a warning where every phase has its own bridge.`,
  measure: ({ machine }) => {
    const { winding } = machine.stator
    return winding.kind !== 'serpentine' || winding.phases.length < 2
      ? undefined
      : {
          name: 'electrical angle off its place',
          value: phaseError(electricalAngles(winding.phases, machine.rotor.polePairs)),
          limit: phaseOffsetTolerance,
          unit: 'deg',
          sound: 'below',
        }
  },
  judge: (chain) => {
    const { winding, connection } = chain.machine.stator
    if (winding.kind !== 'serpentine' || winding.phases.length < 2) return undefined
    const p = chain.machine.rotor.polePairs
    const angles = electricalAngles(winding.phases, p)
    const error = phaseError(angles)
    if (error <= phaseOffsetTolerance + 1e-9) return undefined
    const three = winding.phases.length === 3
    const flipped = winding.phases.map((phase, k) => ({
      ...phase,
      sense: (k === 1 ? -phase.sense : phase.sense) as 1 | -1,
    }))
    const reversible = three && phaseError(electricalAngles(flipped, p)) <= phaseOffsetTolerance
    const step = (three ? 120 : 90) / p
    const right = `offsets of 0°, ${formatNumber(step)}°${three ? ` and ${formatNumber(2 * step)}°` : ''} about the shaft`
    const listed = winding.phases.map(
      ({ offset, sense }, k) =>
        `${degrees(offset)} × ${p}${sense === -1 ? ' reversed' : ''} → ${degrees(angles[k]!)}`,
    )
    return {
      code: 'phase-offset',
      severity: connection === 'separate' ? 'warning' : severityFor(chain, ['outdoor']),
      path: 'stator.winding.phases',
      what: `The phases do not stand ${three ? 'thirds' : 'a quarter'} of an electrical turn apart.`,
      why: 'An angle about the shaft is not the electrical angle: the magnets pass once per pole pair, so each mechanical degree counts as many electrical ones as there are pole pairs. Phases at wrong angles share the current unevenly, and a delta of them drives current round itself.',
      figures: `${listed.join('; ')}; off by ${degrees(error)} (allowed ${degrees(phaseOffsetTolerance)}). Lines of ${chain.voltage.lines.map(({ rms }) => formatSi((rms * turn * 100) / 60, 'V')).join(', ')} rms per 100 rpm.`,
      remedies: [
        triable(
          reversible
            ? 'Swap start and finish of the middle phase: with that, these places are right.'
            : `Wind with ${right}${three ? `, or ${formatNumber(step / 2)}° apart with the middle phase reversed` : ''}.`,
          phasesPlaced(chain.machine.design, reversible),
        ),
        triable(
          'Give every phase its own bridge: then wrong angles cost ripple only.',
          ownBridges(chain.machine.design),
        ),
        'Mark both angles, mechanical and electrical, on the placing template before winding.',
      ],
    }
  },
}
