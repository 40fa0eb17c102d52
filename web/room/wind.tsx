/** The room of the wind: the site, what its wind brings in a year, and a logger's record set into it. */
import { EnergyByWindView } from '../view/energy-by-wind.tsx'
import { RecordView } from '../view/record.tsx'
import { WindHours } from '../view/wind-hours.tsx'
import { YearView } from '../view/year.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result, index, row }: RoomView) {
  return (
    <>
      <WindHours snapshot={result} index={index} />
      <EnergyByWindView wind={row.wind} />
      <YearView snapshot={result} />
      <RecordView />
    </>
  )
}

export const windRoom: RoomSight = { View }
