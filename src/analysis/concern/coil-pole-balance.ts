/** Concern: these counts of coils and poles give no balanced phases, or a coil cancels itself. */
import { leastPitchFactor, nearestGoodCounts, phasesBalance } from '../../physics/winding/star-of-slots.ts'
import { pitchFactor } from '../../physics/winding/winding-factor.ts'
import { formatNumber } from '../../units/format.ts'
import { coilFormOf } from '../conductor-layout.ts'
import { triable } from '../ladder/ladder.ts'
import { onePhase, otherCoilCounts } from '../ladder/winding.ts'
import { type ConcernRule, severityFor } from './concern.ts'

export interface CoilPoleCounts {
  readonly coilCount: number
  readonly polePairs: number
  readonly phaseCount: number
  /** Mechanical angle between a coil's legs [rad]; left out, the coils fill the circle: 2π/Q. */
  readonly legSpan?: number
}

export interface CoilPoleBalance {
  /** The phases are alike and rightly apart. */
  readonly balanced: boolean
  /** Of one coil, 0…1. */
  readonly pitchFactor: number
  readonly fails: boolean
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b)
}

export function coilPoleBalance(counts: CoilPoleCounts): CoilPoleBalance {
  const { coilCount: Q, polePairs: p, phaseCount: m, legSpan = (2 * Math.PI) / Q } = counts
  const balanced = phasesBalance({ coilCount: Q, polePairs: p, phaseCount: m })
  const factor = Math.abs(pitchFactor({ span: p * legSpan, harmonic: 1 }))
  const pitch = factor < 1e-12 ? 0 : factor
  return { balanced, pitchFactor: pitch, fails: !balanced || pitch < leastPitchFactor - 1e-12 }
}

const pairs = (counts: readonly { readonly coils: number; readonly polePairs: number }[]): string =>
  counts
    .filter(({ polePairs }) => polePairs <= 60)
    .slice(0, 3)
    .map(({ coils, polePairs }) => `${coils} coils on ${2 * polePairs} poles`)
    .join(', ')

export const coilPoleBalanceRule: ConcernRule = {
  code: 'coil-pole-balance',
  title: 'The counts of coils and poles do not go together',
  basis: `Star of slots: with t = gcd(coils, pole pairs), three phases need coils/t divisible by 3 and two need it divisible by 4; the coil’s own pitch factor sin(p·span/2) must reach ${leastPitchFactor} (common practice, no source). Blocks the outdoor class, a warning in the others.`,
  measure: ({ machine }) => {
    const { winding } = machine.stator
    if (winding.kind !== 'coils') return undefined
    const { coilCount, phaseCount } = winding
    const { polePairs } = machine.rotor
    const { legSpan } = coilFormOf(machine, winding)
    const { balanced, pitchFactor: pitch } = coilPoleBalance({ coilCount, polePairs, phaseCount, legSpan })
    return balanced
      ? { name: 'pitch factor of a coil', value: pitch, limit: leastPitchFactor, unit: '1', sound: 'above' }
      : undefined
  },
  judge: (chain) => {
    const { machine } = chain
    const { winding } = machine.stator
    if (winding.kind !== 'coils') return undefined
    const { coilCount, phaseCount, hole } = winding
    const { polePairs } = machine.rotor
    const { legSpan } = coilFormOf(machine, winding)
    const counts = { coilCount, polePairs, phaseCount }
    const verdict = coilPoleBalance({ ...counts, legSpan })
    if (!verdict.fails) return undefined
    const evenly = coilPoleBalance(counts)
    const overlapped = hole.shape === 'lap'
    const good = nearestGoodCounts({
      coils: coilCount,
      polePairs,
      phaseCount,
      ...(overlapped ? { span: (legSpan * polePairs) / Math.PI } : {}),
    })
    const samePoles = pairs(good.samePoles)
    const sameCoils = pairs(good.sameCoils)
    const t = divisor(coilCount, polePairs)
    return {
      code: 'coil-pole-balance',
      severity: severityFor(chain, ['outdoor']),
      path: 'stator.winding.coilCount',
      what: verdict.balanced
        ? 'Both legs of a coil lie under like poles much of the time, so that a coil cancels most of its own volts.'
        : `${coilCount} coils on ${2 * polePairs} poles give no ${phaseCount === 3 ? 'three' : 'two'} equal phases.`,
      why: verdict.balanced
        ? 'A coil works best when its legs lie one pole apart; two poles apart they cancel.'
        : 'The coils take up too few different electrical places round the rotor to be shared out evenly: some phases come out weaker, stronger or in step with another.',
      figures: `gcd(${coilCount}, ${polePairs}) = ${t}, ${coilCount}/${t} = ${coilCount / t}${
        phaseCount === 3 ? ', which must divide by 3' : phaseCount === 2 ? ', which must divide by 4' : ''
      }. Pitch factor of the coil as drawn ${formatNumber(verdict.pitchFactor)}${
        overlapped || coilCount === 1
          ? ''
          : `, of coils that fill the circle ${formatNumber(evenly.pitchFactor)}`
      } (at least ${leastPitchFactor}).`,
      remedies: [
        ...(verdict.balanced && (overlapped || coilCount === 1 || !evenly.fails)
          ? [
              `Make the coils so wide that their legs lie about one pole apart: ${formatNumber(360 / (2 * polePairs))}° about the shaft.`,
            ]
          : []),
        ...(coilCount > 1 && samePoles !== ''
          ? [
              triable(
                `Keep the rotor and wind ${samePoles}.`,
                otherCoilCounts(machine.design, good.samePoles.slice(0, 3)),
              ),
            ]
          : []),
        ...(coilCount > 1 && sameCoils !== '' ? [`Keep the coils and build ${sameCoils}.`] : []),
        ...(verdict.balanced
          ? []
          : [
              triable(
                'Or accept one phase: all coils in series, and a torque that pulses.',
                onePhase(machine.design),
              ),
            ]),
      ],
    }
  },
}
