/** The bench where faults are looked for: a magnet flipped, a coil reversed, a diode open. */
import { FaultView } from '../view/fault.tsx'
import type { RoomSight } from './room.ts'

export const faultsRoom: RoomSight = { Bench: FaultView }
