/** Station of the diode bridge. */
import type { Station } from './station.ts'

export const bridgeStation: Station = {
  noun: 'bridge',
  title: 'Bridge',
  lead: 'The diodes that make direct current.',
  open: false,
}
