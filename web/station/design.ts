/** Station of the design itself: its name, and what a reader should know. */
import type { Station } from './station.ts'

export const designStation: Station = {
  noun: '',
  title: 'Design',
  lead: 'What you call it.',
  open: false,
}
