/** The bench where gusts, storms and single failures come over the machine. */
import { StormView } from '../view/storm.tsx'
import type { RoomSight } from './room.ts'

export const stormRoom: RoomSight = { Bench: StormView }
