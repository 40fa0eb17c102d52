/** The bench where the design becomes a page of paper. */
import { SheetView } from '../view/sheet.tsx'
import type { RoomSight } from './room.ts'

export const sheetRoom: RoomSight = { Bench: SheetView }
