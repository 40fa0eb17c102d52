/** Concern: the diodes are too weak for the volts at runaway or for the current. */
import { diodeClasses } from '../../data/diode.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { moreReverseVolts, otherDiodes } from '../ladder/part.ts'
import { fewerTurns } from '../ladder/turns.ts'
import { electricCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Repetitive reverse volts wanted over the largest peak at runaway: common practice, no source. */
export const reverseFactor = 2

export interface DiodeDuty {
  /** Largest line peak at runaway [V]. */
  readonly peak: number
  /** Repetitive peak reverse voltage of one diode [V]; undefined where not known. */
  readonly reverse: number | undefined
  /** Mean current that it must carry and may carry [A]. */
  readonly current: number
  readonly rated: number
}

export const diodeFaults = ({ peak, reverse, current, rated }: DiodeDuty) => ({
  volts: reverse !== undefined && reverse < reverseFactor * peak,
  amps: current > rated,
})

/** Of the table's largest part [A]: more is several side by side. */
const greatestRating = Math.max(...diodeClasses.map(({ rated_A }) => rated_A))

/** Why the kinds with a small drop are the first to go. */
const trap = {
  silicon: '',
  Schottky:
    ' Schottky diodes are chosen for their small drop at the battery’s volts and are sold for 45 V to 100 V; hot ones leak more and more on the way there.',
  synchronous:
    ' The transistors’ driver lives on the same volts and has a limit of its own, often below theirs.',
} as const

/** What the rule looks at; undefined where nothing flows or the kind is not known. */
function dutyOf(chain: ChainView) {
  const { machine, runaway } = chain
  const kind = diodeClasses.find(({ name }) => name === machine.design.bridge.diode)
  const most = rowOfMost(chain.rows, ({ dcCurrent }) => dcCurrent)
  if (kind === undefined || most === undefined || machine.load.kind === 'open') return undefined
  const bridge = kind.name.startsWith('bridge') || kind.kind === 'synchronous'
  const paths = bridge ? 1 : chain.voltage.phases.length > 1 ? chain.voltage.phases.length : 2
  const duty: DiodeDuty = {
    peak: runaway.directVoltage,
    reverse: machine.diode.reverseVoltage,
    current: most.dcCurrent / paths,
    rated: kind.rated_A,
  }
  return { kind, bridge, duty }
}

export const diodeRating: ConcernRule = {
  code: 'diode-rating',
  title: 'The diodes are too weak for runaway volts or for the current',
  basis: `Repetitive peak reverse voltage of one diode against ${reverseFactor} times the largest line peak at runaway (common practice, no source), for transistors that switch in place of diodes their drain-source volts likewise; and the largest mean current against the kind’s rating: the output of a bridge, the share of one phase for single diodes. Too few volts block the outdoor class, a warning in the others; too much current is a warning.`,
  measure: (chain) => {
    const found = dutyOf(chain)
    if (found === undefined) return undefined
    const { peak, reverse, current, rated } = found.duty
    return diodeFaults(found.duty).volts || current <= rated
      ? reverse === undefined
        ? undefined
        : {
            name: 'reverse volts of a diode',
            value: reverse,
            limit: reverseFactor * peak,
            unit: 'V',
            sound: 'above',
          }
      : { name: 'amps through the diodes', value: current, limit: rated, unit: 'A', sound: 'below' }
  },
  judge: (chain) => {
    const { machine, runaway } = chain
    const found = dutyOf(chain)
    if (found === undefined) return undefined
    const { kind, bridge, duty } = found
    const { volts, amps } = diodeFaults(duty)
    if (!volts && !amps) return undefined
    const part = kind.kind === 'synchronous' ? 'transistor' : 'diode'
    return {
      code: 'diode-rating',
      severity: volts ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'bridge',
      what: volts
        ? `A ${part} may break down when the load is lost.`
        : `The ${part}s carry more current than their kind is sold for.`,
      why: volts
        ? `Without the battery each ${part} must block the full volts of the lines at runaway, spikes on top; one that breaks down turns into a short between phases.${trap[kind.kind]}`
        : `Each ${part} heats by its drop times its current, and fails short or open when too hot.`,
      figures: `Blocks ${duty.reverse === undefined ? 'an unknown voltage' : formatSi(duty.reverse, 'V')} against ${formatSi(duty.peak, 'V')} at ${formatSi(runaway.speed, 'rpm')}, wanted ${formatSi(reverseFactor * duty.peak, 'V')}; carries up to ${formatSi(duty.current, 'A')} of ${formatNumber(duty.rated)} A rated${
        bridge ? '' : ' in each diode'
      }.`,
      remedies: [
        ...(volts
          ? [
              triable(
                `Take ${part}s for at least ${formatSi(reverseFactor * duty.peak, 'V', 2)} of ${part === 'diode' ? 'repetitive reverse' : 'drain-source'} voltage${
                  kind.kind === 'silicon'
                    ? ''
                    : '; a plain silicon bridge of 600 V costs about 1 V more but bears this'
                }.`,
                kind.kind === 'silicon'
                  ? moreReverseVolts(machine.design, duty.reverse)
                  : otherDiodes(machine.design, {
                      volts: reverseFactor * duty.peak,
                      amps: Math.min(duty.current, greatestRating),
                    }),
              ),
            ]
          : []),
        ...(amps
          ? [
              triable(
                'Take the next larger bridge, and bolt it to a metal plate in moving air.',
                otherDiodes(machine.design, {
                  volts: volts ? reverseFactor * duty.peak : 0,
                  amps: duty.current,
                }),
              ),
            ]
          : []),
        ...(volts
          ? [triable('Keep the volts down at the source: fewer turns.', fewerTurns(machine.design))]
          : []),
        electricCaution,
      ],
    }
  },
}
