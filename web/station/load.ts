/** Station of the load. */
import { valueAt } from '../store/raw-document.ts'
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
      heater: () => ({ ratedVoltage_V: 24, ratedPower_W: 200 }),
      lamp: () => ({ lamp: 'filament', ratedVoltage_V: 12, ratedPower_W: 21 }),
      capacitor: () => ({ capacitance_F: 10, ratedVoltage_V: 16, drawn_ohm: 100 }),
      open: () => ({}),
    },
  },
  extras: [
    {
      path: ['load', 'disconnect'],
      label: 'Electronics in the battery that take it off',
      start: {},
      fits: (document) => valueAt(document, ['load', 'kind']) === 'battery',
    },
  ],
}
