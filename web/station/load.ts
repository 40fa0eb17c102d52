/** Station of the load. */
import type { Station } from './station.ts'

export const loadStation: Station = {
  noun: 'load',
  title: 'Load',
  lead: 'What it feeds.',
  open: true,
  starts: {
    'load.kind': {
      battery: () => ({ chemistry: 'lead-acid', voltage_V: 12.6 }),
      resistor: () => ({ resistance_ohm: 10 }),
      open: () => ({}),
    },
  },
}
