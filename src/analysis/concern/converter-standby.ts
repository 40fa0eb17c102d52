/** Concern: the converter draws a large share of the year's energy standing by. */
import { yearSeconds } from '../../physics/aerodynamics/annual-energy.ts'
import { formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { lessStandby, withoutConverter } from '../ladder/part.ts'
import type { ConcernRule } from './concern.ts'

/** Share of the year's yield from which it is worth a note, and a warning: common practice, no source. */
export const standbyShares = { note: 0.1, warning: 0.3 } as const

export const converterStandby: ConcernRule = {
  code: 'converter-standby',
  title: 'Standing by, the converter draws much of what it yields',
  basis: `Standby watts over all hours of the year against the year’s energy into the battery, from which they are not taken: from ${standbyShares.note} on a note, from ${standbyShares.warning} on a warning (common practice, no source).`,
  measure: ({ machine: { converter }, year: { energy } }) =>
    converter === undefined || !(energy > 0)
      ? undefined
      : {
          name: 'standby over the year’s yield',
          value: (converter.standby * yearSeconds) / energy,
          limit: standbyShares.note,
          unit: 'percent',
          sound: 'below',
        },
  answeredBy: 'Amps that the converter draws from the battery in calm, and the battery’s volts.',
  judge: (chain) => {
    const { converter } = chain.machine
    if (converter === undefined || !(converter.standby > 0)) return undefined
    const drawn = converter.standby * yearSeconds
    const { energy } = chain.year
    const share = energy > 0 ? drawn / energy : Number.POSITIVE_INFINITY
    if (!(share > standbyShares.note)) return undefined
    return {
      code: 'converter-standby',
      severity: share > standbyShares.warning ? 'warning' : 'note',
      path: 'converter.standby_W',
      what:
        share > 1
          ? 'Over the year the converter draws more than the machine yields.'
          : 'Over the year the converter draws a large share of the yield standing by.',
      why: 'It draws all the time, the machine yields in wind only.',
      figures: `${formatSi(converter.standby, 'W')} all year are ${formatSi(drawn, 'kWh')}; the machine yields ${formatSi(energy, 'kWh')}${
        Number.isFinite(share) ? `, ${formatSi(share, 'percent', 2)} of it` : ''
      }.`,
      remedies: [
        triable(
          'Take one that draws less, switch its supply off below the wind in which it starts, or feed it from the machine’s side.',
          lessStandby(chain.machine.design),
        ),
        triable(
          'Compare with a plain bridge: for a small machine it may yield as much.',
          withoutConverter(chain.machine.design),
        ),
      ],
    }
  },
}
