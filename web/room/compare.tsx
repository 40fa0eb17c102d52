/** The bench where designs are laid over each other and held against each other. */
import { ContestView } from '../view/contest.tsx'
import { TracingView } from '../view/tracing.tsx'
import type { RoomSight } from './room.ts'

function Bench() {
  return (
    <>
      <TracingView />
      <ContestView />
    </>
  )
}

export const compareRoom: RoomSight = { Bench }
