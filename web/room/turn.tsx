/** The bench where the machine is turned by hand and the meter read. */
import { HandTurn } from '../view/hand-turn.tsx'
import type { RoomSight } from './room.ts'

export const turnRoom: RoomSight = { Bench: HandTurn }
