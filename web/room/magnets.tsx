/** The room of the magnets: how they stand, and the field they send through the gap. */
import { gapMapChart, gapMapTable } from '../../src/output/chart/gap-map.ts'
import { machineFaceChart, machineFaceTable } from '../../src/output/chart/machine-face.ts'
import { machineSectionChart, machineSectionTable } from '../../src/output/chart/machine-section.ts'
import { say } from '../text/say.ts'
import { GapField } from '../view/gap-field.tsx'
import { MagnetMechanics } from '../view/mechanics-magnets.tsx'
import { SightChart } from '../view/sight-chart.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result }: RoomView) {
  return (
    <>
      <SightChart
        of="machineFace"
        name="machine-face"
        title={say`Magnets and coils, seen along the shaft`}
        draw={(face, width) => machineFaceChart({ width, face })}
        data={machineFaceTable}
      />
      <SightChart
        of="machineSection"
        name="machine-section"
        title={say`Section through the gap`}
        draw={(section, width) => machineSectionChart({ width, section })}
        data={machineSectionTable}
      />
      <SightChart
        of="gapMap"
        name="gap-map"
        title={say`Field through the gap`}
        draw={(map, width) => gapMapChart({ width, map })}
        data={gapMapTable}
      />
      <GapField snapshot={result} />
      <MagnetMechanics />
    </>
  )
}

export const magnetsRoom: RoomSight = { View }
