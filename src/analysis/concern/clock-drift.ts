/** Concern: the logger's clock had wandered off when it was read out. */
import { formatNumber } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ConcernRule } from './concern.ts'

/** Share of an averaging time by which two records may be apart: common practice, no source. */
export const driftShare = 0.1

/** Averaging time where it is not said: a minute, as is usual for small machines [s]; common practice, no source. */
export const usualAveraging = 60

/** Drift from which hours of the day and the change of clocks are in doubt [s]. */
export const hourDrift = 1800

export const clockDrift: ConcernRule = {
  code: 'clock-drift',
  title: 'The logger’s clock had wandered off',
  basis:
    'How far the clock was off when the record was read out, against a tenth of the averaging time (a minute where it is not said; common practice, no source): beyond it wind and power of two loggers no longer belong together, a note. From half an hour on a warning, for hours of the day and the change of clocks are in doubt. The record’s own mean does not suffer.',
  judge: ({ machine }) => {
    const { site } = machine.design
    const drift = site.record?.clockDrift_s
    if (drift === undefined) return undefined
    const off = Math.abs(nominal(drift))
    const averaging = machine.site.averaging ?? usualAveraging
    if (!(off > driftShare * averaging)) return undefined
    return {
      code: 'clock-drift',
      severity: off >= hourDrift ? 'warning' : 'note',
      path: 'site.record.clockDrift_s',
      what:
        off >= hourDrift
          ? 'The logger’s clock was off by so much that its hours are in doubt.'
          : 'The logger’s clock was off by more than a tenth of its averaging time.',
      why: 'A power curve pairs each wind with the watts of the same moment. Two clocks that drift apart pair the watts of one gust with the next lull, and the curve is smeared and bent.',
      figures: `${formatNumber(off)} s ${nominal(drift) > 0 ? 'ahead' : 'behind'} at the end; averages of ${formatNumber(averaging)} s${machine.site.averaging === undefined ? ' (taken for granted)' : ''}, a tenth of which is ${formatNumber(driftShare * averaging)} s.`,
      remedies: [
        'Set the clock against a good one at the start and note how far it is off at the end; spread the drift evenly over the record.',
        'Shift one record until wind and power agree best, and say by how much.',
        'Log wind and power with one logger.',
      ],
    }
  },
  measure: ({ machine }) => {
    const drift = machine.design.site.record?.clockDrift_s
    return drift === undefined
      ? undefined
      : {
          name: 'clock off at the end',
          value: Math.abs(nominal(drift)),
          limit: driftShare * (machine.site.averaging ?? usualAveraging),
          unit: 's',
          sound: 'below',
        }
  },
  answeredBy: 'The time on the logger beside a good clock, at the start and at the end.',
}
