/** The bench where a first machine is begun from what somebody owns. */
import { WalkOffer } from '../hint/walk-start.tsx'
import { FirstMachine } from '../view/first-machine.tsx'
import type { RoomSight } from './room.ts'

function Bench() {
  return (
    <>
      <WalkOffer />
      <FirstMachine />
    </>
  )
}

export const beginRoom: RoomSight = { Bench }
