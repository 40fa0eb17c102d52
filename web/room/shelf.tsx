/** The bench where the designs lie: every one with its versions, kept on this machine. */
import { ShelfView } from '../view/shelf.tsx'
import type { RoomSight } from './room.ts'

export const shelfRoom: RoomSight = { Bench: ShelfView }
