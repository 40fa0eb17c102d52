/** How long each wind blows in a year, and what it brings. */
import { windDistributionChart, windDistributionTable } from '../../src/output/chart/wind-distribution.ts'
import { formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow, lookAtWind } from '../store/design.ts'
import { inMeasure } from '../store/measure.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

export function WindHours({ snapshot, index }: { readonly snapshot: Snapshot; readonly index: number }) {
  const { rows, year, hours } = snapshot
  const drawn = { wind: rows.map(({ wind }) => wind), hours, energy: year.byWind }
  return (
    <ChartFrame
      name="wind-hours"
      title={say`How long each wind blows`}
      note={say`${inMeasure(year.meanWind, 'm_per_s')} in the mean at the hub, ${formatSi(year.energy, 'kWh')} a year.`}
      onWind={lookAtWind}
      draw={(width) =>
        windDistributionChart({
          width,
          height: 220,
          ...drawn,
          chosenWind: rows[index]!.wind,
          meanWind: year.meanWind,
        })
      }
      data={() => windDistributionTable(drawn)}
      rows={{ chosen: index, onChoose: lookAtRow }}
    />
  )
}
