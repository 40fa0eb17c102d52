/** Station of the shaft. */
import type { Station } from './station.ts'

export const shaftStation: Station = {
  noun: 'shaft',
  title: 'Shaft',
  lead: 'Bearings and seals between blades and magnets.',
  open: false,
}
