/** Station of the protection against running away. */
import type { Station } from './station.ts'

export const protectionStation: Station = {
  noun: 'protection',
  title: 'Protection',
  lead: 'What keeps it from running away.',
  open: false,
}
