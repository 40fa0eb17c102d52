/** The bench where a first machine is begun from what somebody owns. */
import { FirstMachine } from '../view/first-machine.tsx'
import type { RoomSight } from './room.ts'

export const beginRoom: RoomSight = { Bench: FirstMachine }
