/** Station of the electronics between bridge and battery. */
import { valueAt } from '../store/raw-document.ts'
import type { Station } from './station.ts'

export const converterStation: Station = {
  noun: 'converter',
  title: 'Converter',
  lead: 'Electronics that draw a set power at each speed.',
  open: false,
  extras: [
    {
      path: ['converter'],
      label: 'Boost converter before the battery',
      start: {
        curve: [
          { speed_rpm: 100, power_W: 0 },
          { speed_rpm: 300, power_W: 60 },
          { speed_rpm: 600, power_W: 400 },
        ],
      },
      fits: (document) => valueAt(document, ['load', 'kind']) === 'battery',
    },
    {
      path: ['converter', 'efficiency'],
      label: 'Its efficiency as measured',
      start: [
        { input_V: 12, input_W: 10, efficiency: 0.85 },
        { input_V: 12, input_W: 50, efficiency: 0.92 },
        { input_V: 12, input_W: 150, efficiency: 0.9 },
      ],
      fits: (document) => valueAt(document, ['converter']) !== undefined,
    },
  ],
  entries: {
    'converter.curve': () => ({ speed_rpm: 800, power_W: 600 }),
    'converter.efficiency': () => ({ input_V: 12, input_W: 200, efficiency: 0.88 }),
  },
  entryNames: { 'converter.curve': 'point', 'converter.efficiency': 'point' },
}
