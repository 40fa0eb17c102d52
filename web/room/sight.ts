/** What is shown in the rooms that have been entered, each fetched when it is entered for the first time. */
import { effect, signal } from '@preact/signals'
import { type RoomKey, room } from '../store/room.ts'
import { allWords } from '../text/language.ts'
import { rooms } from './plan.ts'
import type { RoomSight } from './room.ts'

/** A visit may begin in these: what they say comes with the first words. */
const firstRooms: ReadonlySet<RoomKey> = new Set(['whole', 'begin'])

type Found = Readonly<Partial<Record<RoomKey, RoomSight | 'missing'>>>

const found = signal<Found>({})

/** Undefined while it is on its way, missing where it did not arrive. */
export const sightOfRoom = (key: RoomKey): RoomSight | 'missing' | undefined => found.value[key]

async function fetchSight(key: RoomKey): Promise<void> {
  const before = found.peek()[key]
  if (before !== undefined && before !== 'missing') return
  let sight: RoomSight | 'missing' | undefined
  try {
    const words = firstRooms.has(key) ? undefined : allWords()
    sight = await rooms[key]?.load()
    // without them it is shown in English
    await words?.catch(() => {})
  } catch {
    sight = 'missing'
  }
  if (sight !== undefined && sight !== found.peek()[key]) found.value = { ...found.peek(), [key]: sight }
}

/** Fetches for the room that is open now, and for every one entered from now on. */
export function fetchRooms(): void {
  effect(() => {
    void fetchSight(room.value)
  })
}
