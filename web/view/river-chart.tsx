/** The river of watts as a picture that can be taken along, with its table. */

import type { WindRow } from '../../src/index.ts'
import type { ChartTable } from '../../src/output/chart/chart-table.ts'
import { riverChart } from '../../src/output/chart/river.ts'
import { windSaid } from '../store/measure.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import type { StationReach } from './reaches.ts'
import { reaches } from './river.tsx'

function riverTable(found: readonly StationReach[], row: WindRow): ChartTable {
  const share = (watts: number) => (row.available > 0 ? (100 * watts) / row.available : 0)
  return {
    caption: say`Watts at ${windSaid(row.wind)}`,
    columns: [
      { head: say`station` },
      { head: say`arriving`, unit: 'W' },
      { head: say`of the wind`, unit: '%' },
      { head: say`lost there` },
      { head: say`loss`, unit: 'W' },
    ],
    rows: found.flatMap(({ label, arriving, losses }) =>
      losses.length === 0
        ? [[label, arriving, share(arriving), undefined, undefined]]
        : losses.map((loss, k) =>
            k === 0
              ? [label, arriving, share(arriving), loss.label, loss.watts]
              : [undefined, undefined, undefined, loss.label, loss.watts],
          ),
    ),
  }
}

export function RiverChart({ row }: { readonly row: WindRow }) {
  const found = reaches.value
  return found === undefined ? null : (
    <ChartFrame
      name="river"
      title={say`Where the watts go at ${windSaid(row.wind)}`}
      wind={row.wind}
      draw={(width) => riverChart({ width: Math.max(width, 660), wind: row.wind, reaches: found })}
      data={() => riverTable(found, row)}
    />
  )
}
