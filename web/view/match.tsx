/** Whether blades and generator suit each other: the map of both, every steady state, the zones, the target sheet. */
import type { GeneratorTarget, MatchMap } from '../../src/index.ts'
import { matchChart } from '../../src/output/chart/match.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import {
  matchCells,
  matchColumns,
  matchNote,
  targetRows,
  zoneSentences,
} from '../../src/output/match-page.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow } from '../store/design.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { celsius } from './row-words.ts'

interface MatchView {
  readonly snapshot: Snapshot
  readonly map: MatchMap
  readonly target: GeneratorTarget | undefined
  /** Wind that the page looks at [m/s]. */
  readonly wind: number
}

const nearest = ({ winds }: MatchMap, wind: number): number =>
  winds.reduce(
    (best, each, k) => (Math.abs(each.wind - wind) < Math.abs(winds[best]!.wind - wind) ? k : best),
    0,
  )

function WindSelector({ snapshot, map, wind }: Omit<MatchView, 'target'>) {
  const { rows } = snapshot
  const last = Math.max(0, rows.filter((row) => row.wind <= map.greatestWind + 1e-9).length - 1)
  const first = rows[0]!.wind
  const step = rows.length > 1 ? rows[1]!.wind - first : 0.5
  const shown = Math.min(wind, rows[last]!.wind)
  return (
    <div class="slider match-wind">
      <label for="match-wind">
        Wind: <output>{shortNumber(shown)} m/s</output>
      </label>
      <input
        id="match-wind"
        type="range"
        min={first}
        max={rows[last]!.wind}
        step={step}
        value={shown}
        aria-valuetext={`${shortNumber(shown)} metres per second`}
        onInput={(event) => lookAtRow(Math.round((Number(event.currentTarget.value) - first) / step))}
      />
    </div>
  )
}

function TargetSheet({ target }: { readonly target: GeneratorTarget }) {
  return (
    <details class="as-table">
      <summary>What blades and load ask of the generator</summary>
      <dl class="target-sheet">
        {targetRows(target).map(([head, text]) => (
          <div key={head}>
            <dt>{head}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}

export function Match({ snapshot, map, target, wind }: MatchView) {
  const chosen = nearest(map, wind)
  const columns = matchColumns.map(
    (head, k): Column<readonly string[]> => ({ head, cell: (cells) => cells[k] }),
  )
  return (
    <ChartFrame
      name="match"
      title="Blades and generator"
      note={`They meet where the machine runs. The generator’s line is that of copper as warm as it gets at each speed; its ribbons reach from ${celsius(map.coldTemperature)} to ${celsius(map.hotTemperature)} °C of copper${map.battery === undefined ? '' : ' and from an empty to a full battery'}.`}
      draw={(width) =>
        matchChart({
          width,
          height: Math.round(Math.min(460, Math.max(320, width * 0.52))),
          map,
          chosen,
        })
      }
      table={() => (
        <>
          <DataTable
            caption="Where the machine runs"
            rows={map.winds.map(matchCells)}
            columns={columns}
            chosen={chosen}
          />
          <p class="note">{matchNote}</p>
        </>
      )}
    >
      <WindSelector snapshot={snapshot} map={map} wind={wind} />
      <ul class="zone-list">
        {zoneSentences(map).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {target === undefined ? null : <TargetSheet target={target} />}
    </ChartFrame>
  )
}
