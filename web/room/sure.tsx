/** The bench where it is told how sure the numbers are, what to measure next, and how exactly it has to be built. */
import { SpreadView } from '../view/spread.tsx'
import { ToleranceView } from '../view/tolerance.tsx'
import type { RoomSight } from './room.ts'

const Bench = () => (
  <>
    <SpreadView />
    <ToleranceView />
  </>
)

export const sureRoom: RoomSight = { Bench }
