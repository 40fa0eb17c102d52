/** Concern: a lamp or a heater gets more volts than its label says, and takes the load along when it burns out. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { fireCaution, turningCaution } from './caution.ts'
import type { ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Volts over the label's from which it wears fast, and from which it burns out: common practice, no source. */
export const labelShares = { wears: 1.1, burns: 1.2 } as const

export type LabelVerdict = 'in order' | 'wears fast' | 'burns out'

export const labelVerdict = (share: number): LabelVerdict =>
  share > labelShares.burns ? 'burns out' : share > labelShares.wears ? 'wears fast' : 'in order'

export const labelVoltage: ConcernRule = {
  code: 'label-voltage',
  title: 'Lamp or heater gets more volts than its label says',
  basis: `Volts at the load in the strongest wind, the limiter at work, over those on its label: from ${labelShares.wears} on it wears fast, a note; from ${labelShares.burns} on it burns out, a warning (common practice, no source). A burnt-out lamp is a lost load; see load-loss.`,
  judge: (chain) => {
    const { machine, runaway } = chain
    const { load } = machine
    if (load.kind !== 'lamp' && load.kind !== 'heater') return undefined
    const rated = load.kind === 'lamp' ? load.ratedVoltage : Math.sqrt(load.ratedPower * load.hot)
    const row = rowOfMost(chain.rows, ({ loadVoltage }) => loadVoltage)
    if (row === undefined || !(rated > 0)) return undefined
    const share = row.loadVoltage / rated
    const verdict = labelVerdict(share)
    if (verdict === 'in order') return undefined
    const first = chain.rows.find(({ loadVoltage }) => loadVoltage > labelShares.wears * rated)
    const name = load.kind
    return {
      code: 'label-voltage',
      severity: verdict === 'burns out' ? 'warning' : 'note',
      path: 'load.ratedVoltage_V',
      what:
        verdict === 'burns out'
          ? `In strong wind the ${name} burns out, and the rotor has lost its load.`
          : `In strong wind the ${name} gets more volts than its label says and wears fast.`,
      why: 'Volts follow the speed where no battery holds them, and watts follow the square of the volts. It burns out in a gust, just when the rotor needs its load.',
      figures: `${formatSi(row.loadVoltage, 'V')} in ${formatSi(row.wind, 'm_per_s')}, ${formatNumber(share)} times the ${formatSi(rated, 'V')} of the label${
        first === undefined
          ? ''
          : `; past ${labelShares.wears} times from ${formatSi(first.wind, 'm_per_s')} on`
      }. Burnt out: ${formatSi(runaway.speed, 'rpm')} and ${formatSi(runaway.directVoltage, 'V')} in ${formatSi(runaway.wind, 'm_per_s')}.`,
      remedies: [
        `Take one for ${formatSi(row.loadVoltage / labelShares.wears, 'V', 2)} or more, or several in series and parallel, so that one that fails leaves the others.`,
        'Let the mechanical limiter act earlier, or hold the volts with a battery or a regulator that diverts.',
        `${fireCaution} ${turningCaution}`,
      ],
    }
  },
}
