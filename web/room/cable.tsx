/** The room of the cable: what lies between machine and store, with fuse and switch, and what makes it safe. */
import { CableLoss } from '../view/cable-loss.tsx'
import { CircuitView } from '../view/circuit.tsx'
import { SafetyView } from '../view/safety.tsx'
import type { RoomSight, RoomView } from './room.ts'

const View = ({ result, row }: RoomView) => (
  <>
    <CableLoss result={result} row={row} />
    <CircuitView />
    <SafetyView result={result} />
  </>
)

export const cableRoom: RoomSight = { View }
