/** The room of the winding: its path, its volts, and how warm it gets. */
import { harmonicChart, harmonicTable } from '../../src/output/chart/harmonic.ts'
import { starOfSlotsChart, starOfSlotsTable } from '../../src/output/chart/star-of-slots.ts'
import { windingDiagram, windingDiagramTable } from '../../src/output/chart/winding-diagram.ts'
import { windDetail } from '../store/design.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { HeatLast } from '../view/heat-last.tsx'
import { HeatWaysView } from '../view/heat-way.tsx'
import { PhasorPlayer } from '../view/phasor-player.tsx'
import { SightChart } from '../view/sight-chart.tsx'
import { TemperatureByWindView } from '../view/temperature-by-wind.tsx'
import { WarmUp } from '../view/warm-up.tsx'
import { Waveform } from '../view/waveform.tsx'
import { WireChoice } from '../view/wire-choice.tsx'
import { WireVoltage } from '../view/wire-voltage.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ row }: RoomView) {
  const detail = windDetail.value
  const found = useSight('phasors')
  return (
    <>
      {detail ? <Waveform detail={detail} row={row} /> : null}
      <SightChart
        of="windingPlan"
        name="winding-diagram"
        title={say`The winding unrolled`}
        draw={(plan, width) => windingDiagram({ width, plan })}
        data={windingDiagramTable}
      />
      {found ? <PhasorPlayer {...found} /> : null}
      <SightChart
        of="phasors"
        name="star-of-slots"
        title={say`Star of slots`}
        draw={({ phasors }, width) => starOfSlotsChart({ width, phasors })}
        data={({ phasors }) => starOfSlotsTable(phasors)}
      />
      <SightChart
        of="harmonics"
        name="harmonics"
        title={say`Harmonics of the volts`}
        draw={(harmonics, width) => harmonicChart({ width, height: 300, harmonics })}
        data={harmonicTable}
      />
      <WireVoltage />
      <WireChoice />
      <TemperatureByWindView wind={row.wind} />
      <HeatWaysView row={row} />
      <WarmUp row={row} />
      <HeatLast row={row} />
    </>
  )
}

export const windingRoom: RoomSight = { View }
