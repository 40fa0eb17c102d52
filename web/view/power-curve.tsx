/** Power against wind, and the table of every wind. */
import { shaftPower } from '../../src/analysis/watts.ts'
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { powerCurveChart } from '../../src/output/chart/power-curve.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow } from '../store/design.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { celsius, stateWords, usefulName } from './row-words.ts'

const columns: Column<WindRow>[] = [
  { head: 'wind', unit: 'm/s', cell: ({ wind }) => shortNumber(wind) },
  { head: 'state', cell: ({ state }) => stateWords[state] },
  { head: 'speed', unit: 'rpm', cell: ({ speed }) => formatSi(speed, 'rpm').replace(' rpm', '') },
  { head: 'direct', unit: 'A', cell: ({ loadCurrent }) => formatNumber(loadCurrent) },
  { head: 'load', unit: 'V', cell: ({ loadVoltage }) => formatNumber(loadVoltage, 4) },
  { head: 'phase', unit: 'A rms', cell: ({ phaseCurrent }) => formatNumber(phaseCurrent) },
  { head: 'shaft', unit: 'W', cell: ({ watts }) => formatNumber(shaftPower(watts)) },
  { head: 'bearings', unit: 'W', cell: ({ watts }) => formatNumber(watts.friction) },
  { head: 'eddy', unit: 'W', cell: ({ watts }) => formatNumber(watts.eddy + watts.parts) },
  { head: 'winding', unit: 'W', cell: ({ watts }) => formatNumber(watts.winding) },
  { head: 'cable', unit: 'W', cell: ({ watts }) => formatNumber(watts.cable) },
  { head: 'diodes', unit: 'W', cell: ({ watts }) => formatNumber(watts.diodes) },
  { head: 'battery', unit: 'W', cell: ({ watts }) => formatNumber(watts.battery) },
  { head: 'useful', unit: 'W', cell: ({ watts }) => formatNumber(watts.useful) },
  {
    head: 'copper',
    unit: '°C',
    cell: ({ copperTemperature, overheated }) => (overheated ? 'burns' : celsius(copperTemperature)),
  },
]

export function PowerCurve({ snapshot, index }: { readonly snapshot: Snapshot; readonly index: number }) {
  const { rows, wanted } = snapshot
  return (
    <ChartFrame
      name="power"
      title="Power in every wind"
      draw={(width) =>
        powerCurveChart({
          width,
          height: Math.round(Math.min(420, Math.max(300, width * 0.5))),
          wind: rows.map(({ wind }) => wind),
          shaft: rows.map(({ watts }) => shaftPower(watts)),
          useful: rows.map(({ watts }) => watts.useful),
          usefulName: usefulName(snapshot),
          chosenWind: rows[index]!.wind,
          ...(wanted ? { wanted } : {}),
        })
      }
      table={() => (
        <DataTable caption="Every wind" columns={columns} rows={rows} chosen={index} onChoose={lookAtRow} />
      )}
    />
  )
}
