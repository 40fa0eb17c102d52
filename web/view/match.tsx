/** Whether blades and generator suit each other: both against speed, for several winds. */
import { shaftPower } from '../../src/analysis/watts.ts'
import type { WindRow } from '../../src/index.ts'
import { matchChart } from '../../src/output/chart/match.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import type { Snapshot, WindSnapshot } from '../snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'
import { celsius, stateWords } from './row-words.ts'

/** Winds drawn beside the chosen one [m/s]. */
const usualWinds = [4, 6, 8, 10, 12, 15]

function bladeCurve({ blades }: Snapshot, wind: number) {
  const ratio = wind / blades.unitWind
  return {
    wind,
    speed: blades.speed.map((speed) => speed * ratio),
    power: blades.power.map((power) => power * ratio ** 3),
  }
}

export function Match({
  snapshot,
  detail,
  row,
}: {
  readonly snapshot: Snapshot
  readonly detail: WindSnapshot
  readonly row: WindRow
}) {
  const { rows, blades } = snapshot
  const free = rows.filter(({ state }) => state !== 'held')
  const highest = Math.max(free.at(-1)?.wind ?? 0, 4)
  // a held rotor is not on the curve of its wind
  const chosen = row.state === 'held' ? undefined : row.wind
  const winds = [
    ...new Set([
      ...usualWinds.filter((wind) => wind <= Math.min(highest, 15)),
      ...(chosen === undefined ? [] : [chosen]),
    ]),
  ]
    .sort((a, b) => a - b)
    .filter((wind) => wind === chosen || chosen === undefined || Math.abs(wind - chosen) >= 1)
  const shown = free.filter(({ speed, wind }) => speed > 0 && wind <= Math.max(15, chosen ?? 0))
  return (
    <ChartFrame
      name="match"
      title="Blades and generator"
      note={`Dotted: what the blades give in each wind. Solid: what the generator takes, its copper at ${celsius(row.copperTemperature)} °C. They meet where the machine runs. Best of the blades: ${formatNumber(100 * blades.best.power)} % of the wind at a tip-speed ratio of ${formatNumber(blades.best.tipSpeedRatio)}.`}
      draw={(width) =>
        matchChart({
          width,
          height: Math.round(Math.min(420, Math.max(300, width * 0.5))),
          blades: winds.map((wind) => bladeCurve(snapshot, wind)),
          generator: detail.generator,
          points: shown.map(({ wind, speed, watts }) => ({ wind, speed, power: shaftPower(watts) })),
          chosenWind: row.wind,
        })
      }
      table={() => (
        <DataTable
          caption="Where the machine runs"
          rows={shown}
          columns={[
            { head: 'wind', unit: 'm/s', cell: ({ wind }) => shortNumber(wind) },
            { head: 'state', cell: ({ state }) => stateWords[state] },
            { head: 'speed', unit: 'rpm', cell: ({ speed }) => formatSi(speed, 'rpm').replace(' rpm', '') },
            { head: 'shaft', unit: 'W', cell: ({ watts }) => formatNumber(shaftPower(watts)) },
            { head: 'tip-speed ratio', cell: ({ tipSpeedRatio }) => formatNumber(tipSpeedRatio) },
            {
              head: 'taken from the wind',
              unit: '%',
              cell: ({ powerCoefficient }) => formatNumber(100 * powerCoefficient),
            },
          ]}
        />
      )}
    />
  )
}
