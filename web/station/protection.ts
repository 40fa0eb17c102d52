/** Station of the protection against running away. */
import { valueAt } from '../store/raw-document.ts'
import type { Station } from './station.ts'

export const protectionStation: Station = {
  noun: 'protection',
  title: 'Protection',
  lead: 'What keeps it from running away.',
  open: false,
  extras: [
    {
      path: ['protection', 'short'],
      label: 'How the shorting switch works',
      start: {},
      fits: (document) => valueAt(document, ['protection', 'electrical']) === 'shorting switch',
    },
    {
      path: ['protection', 'dump'],
      label: 'The dump load in figures',
      start: { resistance_ohm: 2, power_W: 400, on_V: 28.8, off_V: 27 },
      fits: (document) => valueAt(document, ['protection', 'electrical']) === 'dump load',
    },
  ],
}
