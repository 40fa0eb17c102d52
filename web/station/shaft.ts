/** Station of the shaft. */
import type { Station } from './station.ts'

export const shaftStation: Station = {
  noun: 'shaft',
  title: 'Shaft',
  lead: 'Bearings and seals between blades and magnets.',
  open: false,
  extras: [
    {
      path: ['shaft', 'bearings'],
      label: 'The two bearings and where blades and magnets sit',
      start: { spacing_mm: 80, bladeOverhang_mm: 80, magnetOverhang_mm: 30 },
      fits: () => true,
    },
    {
      path: ['shaft', 'key'],
      label: 'Key between shaft and hub',
      start: { width_mm: 6, height_mm: 6, length_mm: 25 },
      fits: () => true,
    },
    {
      path: ['shaft', 'locking'],
      label: 'What keeps each thread from shaking loose',
      start: {},
      fits: () => true,
    },
  ],
}
