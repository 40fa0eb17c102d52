/** The room of the blades: their shape, what they take at each tip-speed ratio, and whether the generator suits them. */
import { bladeChart, bladeCoefficientTable } from '../../src/output/chart/blade.ts'
import { say } from '../text/say.ts'
import { MatchView } from '../view/match.tsx'
import { RemedyView } from '../view/remedy.tsx'
import { SightChart } from '../view/sight-chart.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result, row }: RoomView) {
  return (
    <>
      <SightChart
        of="bladeFigure"
        name="blade"
        title={say`Shape of a blade, and what it takes`}
        draw={(figure, width) => bladeChart({ width, figure, chosenWind: row.wind })}
        data={bladeCoefficientTable}
        wind={row.wind}
      />
      <MatchView snapshot={result} wind={row.wind} />
      <RemedyView />
    </>
  )
}

export const bladesRoom: RoomSight = { View }
