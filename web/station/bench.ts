/** Station of the bench: what was read and what is claimed. */
import type { Station } from './station.ts'

export const benchStation: Station = {
  noun: 'bench',
  title: 'Bench',
  lead: 'What you measured, and what is said of it.',
  open: false,
  entries: {
    'bench.readings': () => ({ speed_rpm: 300, voltage_V: 6 }),
    'bench.claims': () => ({ power_W: 10, from: 'open-circuit volts' }),
  },
  entryNames: { 'bench.readings': 'reading', 'bench.claims': 'claim' },
}
