/** The room of the store: whether it is charged, and whether that suffices for what is wanted. */
import { Charging } from '../view/charging.tsx'
import { DumpView } from '../view/dump.tsx'
import { PowerCurve } from '../view/power-curve.tsx'
import { StoreSafety } from '../view/safety.tsx'
import { WorthView } from '../view/worth.tsx'
import type { RoomSight, RoomView } from './room.ts'

const View = ({ result, index, row }: RoomView) => (
  <>
    <Charging result={result} row={row} />
    <WorthView result={result} />
    <PowerCurve snapshot={result} index={index} />
    <DumpView row={row} />
    <StoreSafety />
  </>
)

export const storeRoom: RoomSight = { View }
