/** Power against wind with its spread, and the table of every wind. */
import { shaftPower } from '../../src/analysis/watts.ts'
import { powerCurveChart, powerCurveTable } from '../../src/output/chart/power-curve.ts'
import { withTracings } from '../../src/output/chart/tracing.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow, lookAtWind, spreadStudy } from '../store/design.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { usefulName } from './row-words.ts'
import { tracedPower } from './traced.ts'

export function PowerCurve({ snapshot, index }: { readonly snapshot: Snapshot; readonly index: number }) {
  const { rows, wanted } = snapshot
  const spread = spreadStudy.value?.curve
  const tracings = tracedPower()
  const banded = spread !== undefined && spread.wind.length > 0
  return (
    <ChartFrame
      name="power"
      title={say`Power in every wind`}
      note={banded ? say`The band holds nine of ten cases of what is guessed in this design.` : undefined}
      onWind={lookAtWind}
      draw={(width) =>
        powerCurveChart({
          width,
          height: Math.round(Math.min(420, Math.max(300, width * 0.5))),
          wind: rows.map(({ wind }) => wind),
          shaft: rows.map(({ watts }) => shaftPower(watts)),
          useful: rows.map(({ watts }) => watts.useful),
          usefulName: usefulName(snapshot),
          chosenWind: rows[index]!.wind,
          ...(banded ? { spread } : {}),
          ...(wanted ? { wanted } : {}),
          tracings,
        })
      }
      data={() =>
        withTracings(
          powerCurveTable(rows, banded ? spread : undefined),
          rows.map(({ wind }) => wind),
          tracings,
          { of: 'useful', unit: 'W' },
        )
      }
      rows={{ chosen: index, onChoose: lookAtRow }}
    />
  )
}
