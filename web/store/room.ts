/** The room of the page that is open; the address tells it, so that the way back is the browser's own. */
import { signal } from '@preact/signals'

/** Stations of the river, in the order in which the power passes them. */
export const stationKeys = [
  'wind',
  'blades',
  'shaft',
  'magnets',
  'winding',
  'bridge',
  'cable',
  'store',
] as const
/** Benches, where work is done with the machine as a whole. */
export const benchKeys = [
  'whole',
  'begin',
  'turn',
  'storm',
  'faults',
  'compare',
  'sure',
  'sheet',
  'shelf',
  'words',
] as const

export type StationKey = (typeof stationKeys)[number]
export type RoomKey = StationKey | (typeof benchKeys)[number]

const keys: readonly string[] = [...stationKeys, ...benchKeys]
const roomOf = (hash: string): RoomKey | undefined => {
  const name = hash.replace(/^#\/?/, '')
  return keys.includes(name) ? (name as RoomKey) : undefined
}

export const room = signal<RoomKey>(roomOf(location.hash) ?? 'whole')

/** Its address within the page: no element bears such a name, so the browser does not jump to one. */
export const roomAddress = (key: RoomKey): string => `#/${key}`

/** Opens a room; `quietly` leaves no step on the way back. */
export function enter(key: RoomKey, quietly = false): void {
  if (room.value === key) return
  room.value = key
  if (quietly) history.replaceState(null, '', roomAddress(key))
  else history.pushState(null, '', roomAddress(key))
}

const follow = () => {
  const there = roomOf(location.hash)
  if (there) room.value = there
  else if (location.hash === '') room.value = 'whole'
}

addEventListener('popstate', follow)
addEventListener('hashchange', follow)
