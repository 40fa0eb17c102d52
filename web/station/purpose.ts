/** Station of the purpose: what the machine is for. */
import type { Station } from './station.ts'

export const purposeStation: Station = {
  noun: 'purpose',
  title: 'Purpose',
  lead: 'What it is for, and how strictly it is judged.',
  open: false,
}
