/** Station of how exactly it is built. */
import type { Station } from './station.ts'

export const toleranceStation: Station = {
  noun: 'tolerance',
  title: 'Building',
  lead: 'How far each part may come out beside the drawing, and what must still be reached.',
  open: false,
}
