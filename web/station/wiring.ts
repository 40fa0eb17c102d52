/** Station of fuse, switch and surroundings. */
import type { Station } from './station.ts'

export const wiringStation: Station = {
  noun: 'wiring',
  title: 'Wiring',
  lead: 'Fuse, switch, and where people may touch it.',
  open: false,
}
