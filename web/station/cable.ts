/** Station of the cable. */
import type { Station } from './station.ts'

export const cableStation: Station = {
  noun: 'cable',
  title: 'Cable',
  lead: 'From the machine to the load.',
  open: false,
}
