/** Concern: a lamp or a heater gets more volts than its label says, and takes the load along when it burns out. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { moreLabelVolts } from '../ladder/part.ts'
import { fewerTurns } from '../ladder/turns.ts'
import { fireCaution, turningCaution } from './caution.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'
import { limitedSeverity } from './limited-severity.ts'

/** Volts over the label's from which it wears fast, and from which it burns out: common practice, no source. */
export const labelShares = { wears: 1.1, burns: 1.2 } as const

export type LabelVerdict = 'in order' | 'wears fast' | 'burns out'

export const labelVerdict = (share: number): LabelVerdict =>
  share > labelShares.burns ? 'burns out' : share > labelShares.wears ? 'wears fast' : 'in order'

/** The most volts at the label, and the label's; undefined where nothing has one. */
function labelled({ machine: { load }, rows }: ChainView) {
  if (load.kind !== 'lamp' && load.kind !== 'heater') return undefined
  const rated = load.kind === 'lamp' ? load.ratedVoltage : Math.sqrt(load.ratedPower * load.hot)
  const row = rowOfMost(rows, ({ loadVoltage }) => loadVoltage)
  return row === undefined || !(rated > 0) ? undefined : { load, rated, row }
}

export const labelVoltage: ConcernRule = {
  code: 'label-voltage',
  title: 'Lamp or heater gets more volts than its label says',
  basis: `Volts at the load in the strongest wind, the limiter at work, over those on its label: from ${labelShares.wears} on it wears fast, a note; from ${labelShares.burns} on it burns out (common practice, no source): a lost load, which blocks the outdoor class without a mechanical limiter that acts below the storm, else a warning.`,
  measure: (chain) => {
    const found = labelled(chain)
    return (
      found && {
        name: `volts at the ${found.load.kind}`,
        value: found.row.loadVoltage,
        limit: labelShares.wears * found.rated,
        unit: 'V',
        sound: 'below',
      }
    )
  },
  answeredBy: 'Volts at the lamp or heater itself in the strongest wind of a season.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const found = labelled(chain)
    if (found === undefined) return undefined
    const { load, rated, row } = found
    const share = row.loadVoltage / rated
    const verdict = labelVerdict(share)
    if (verdict === 'in order') return undefined
    const first = chain.rows.find(({ loadVoltage }) => loadVoltage > labelShares.wears * rated)
    const name = load.kind
    return {
      code: 'label-voltage',
      severity: verdict === 'burns out' ? limitedSeverity(chain) : 'note',
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
        triable(
          `Take one for ${formatSi(row.loadVoltage / labelShares.wears, 'V', 2)} or more, or several in series and parallel, so that one that fails leaves the others.`,
          moreLabelVolts(machine.design),
        ),
        triable(
          'Let the mechanical limiter act earlier, or hold the volts with a battery or a regulator that diverts.',
          limiter(machine.design),
        ),
        triable('Fewer turns raise fewer volts.', fewerTurns(machine.design)),
        `${fireCaution} ${turningCaution}`,
      ],
    }
  },
}
