/** The room of the whole machine: the figures asked for first, its power in every wind, every concern. */
import { spreads } from '../store/design.ts'
import { KeyFigures } from '../view/key-figures.tsx'
import { PowerCurve } from '../view/power-curve.tsx'
import { RiverChart } from '../view/river-chart.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result, index, row }: RoomView) {
  return (
    <>
      <KeyFigures snapshot={result} row={row} spreads={spreads.value} />
      <PowerCurve snapshot={result} index={index} />
      <RiverChart snapshot={result} row={row} />
    </>
  )
}

export const wholeRoom: RoomSight = { View }
