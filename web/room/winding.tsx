/** The room of the winding: its path, its volts, and how warm it gets. */
import { harmonicChart, harmonicTable } from '../../src/output/chart/harmonic.ts'
import { starOfSlotsChart, starOfSlotsTable } from '../../src/output/chart/star-of-slots.ts'
import { windingDiagram, windingDiagramTable } from '../../src/output/chart/winding-diagram.ts'
import { windDetail } from '../store/design.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { FoldGroup } from '../view/fold-group.tsx'
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
      <SightChart
        of="windingPlan"
        name="winding-diagram"
        title={say`The winding unrolled`}
        draw={(plan, width) => windingDiagram({ width, plan })}
        data={windingDiagramTable}
      />
      {detail ? <Waveform detail={detail} row={row} /> : null}
      <FoldGroup
        title={say`How the coils add up`}
        note={say`Star of slots, coil by coil, harmonics, and where along the wire the volts arise.`}
      >
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
      </FoldGroup>
      <WireChoice />
      <FoldGroup
        title={say`How warm it gets`}
        note={say`In each wind, on which ways the heat leaves, how fast it comes, and how long it lasts.`}
      >
        <TemperatureByWindView wind={row.wind} />
        <HeatWaysView row={row} />
        <WarmUp row={row} />
        <HeatLast row={row} />
      </FoldGroup>
    </>
  )
}

export const windingRoom: RoomSight = { View }
