/** Concern: the diodes are too weak for the volts at runaway or for the current. */
import { diodeClasses } from '../../data/diode.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { electricCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'
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

export const diodeRating: ConcernRule = {
  code: 'diode-rating',
  title: 'The diodes are too weak for runaway volts or for the current',
  basis: `Repetitive peak reverse voltage of one diode against ${reverseFactor} times the largest line peak at runaway (common practice, no source), and the largest mean current against the kind’s rating: the output of a bridge, the share of one phase for single diodes. Too few volts block the outdoor class, a warning in the others; too much current is a warning.`,
  judge: (chain) => {
    const { machine, runaway } = chain
    const kind = diodeClasses.find(({ name }) => name === machine.design.bridge.diode)
    const most = rowOfMost(chain.rows, ({ dcCurrent }) => dcCurrent)
    if (kind === undefined || most === undefined || machine.load.kind === 'open') return undefined
    const bridge = kind.name.startsWith('bridge')
    const paths = bridge ? 1 : chain.voltage.phases.length > 1 ? chain.voltage.phases.length : 2
    const duty = {
      peak: runaway.directVoltage,
      reverse: machine.diode.reverseVoltage,
      current: most.dcCurrent / paths,
      rated: kind.rated_A,
    }
    const { volts, amps } = diodeFaults(duty)
    if (!volts && !amps) return undefined
    return {
      code: 'diode-rating',
      severity: volts ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'bridge',
      what: volts
        ? 'A diode may break down when the load is lost.'
        : 'The diodes carry more current than their kind is sold for.',
      why: volts
        ? 'Without the battery each diode must block the full volts of the lines at runaway, spikes on top; a diode that breaks down turns into a short between phases.'
        : 'Each diode heats by its drop times its current, and fails short or open when too hot.',
      figures: `Blocks ${duty.reverse === undefined ? 'an unknown voltage' : formatSi(duty.reverse, 'V')} against ${formatSi(duty.peak, 'V')} at ${formatSi(runaway.speed, 'rpm')}, wanted ${formatSi(reverseFactor * duty.peak, 'V')}; carries up to ${formatSi(duty.current, 'A')} of ${formatNumber(duty.rated)} A rated${
        bridge ? '' : ' in each diode'
      }.`,
      remedies: [
        ...(volts
          ? [
              `Take diodes for at least ${formatSi(reverseFactor * duty.peak, 'V', 2)} of repetitive reverse voltage.`,
            ]
          : []),
        ...(amps ? ['Take the next larger bridge, and bolt it to a metal plate in moving air.'] : []),
        'Keep the volts down at the source: an independent limiter, fewer turns.',
        electricCaution,
      ],
    }
  },
}
