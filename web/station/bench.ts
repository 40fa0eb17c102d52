/** Station of the bench: what was read and what is claimed. */
import type { Station } from './station.ts'

export const benchStation: Station = {
  noun: 'bench',
  title: 'Bench',
  lead: 'What you measured, and what is said of it.',
  open: false,
  entries: {
    'bench.readings': () => ({ speed_rpm: 300, voltage_V: 6 }),
    'bench.resistances': () => ({ resistance_ohm: 1, place: 'line to line' }),
    'bench.claims': () => ({ power_W: 10, from: 'open-circuit volts' }),
  },
  entryNames: { 'bench.readings': 'reading', 'bench.resistances': 'resistance', 'bench.claims': 'claim' },
  extras: [
    {
      path: ['bench', 'template'],
      label: 'Check square of a printed template',
      start: { drawn_mm: 100, across_mm: 100, down_mm: 100 },
      fits: () => true,
    },
  ],
}
