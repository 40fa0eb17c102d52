/** Whether blades and generator suit each other: the map of both, every steady state, the zones, the target sheet. */
import type { GeneratorTarget, MatchMap } from '../../src/index.ts'
import { matchChart } from '../../src/output/chart/match.ts'
import { matchTable, matchTableNote } from '../../src/output/chart/match-table.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { targetRows, zoneSentences } from '../../src/output/match-page.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow, lookAtWind } from '../store/design.ts'
import { degreesSaid, warmthSaid, windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

interface MatchMapView {
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

function WindSelector({ snapshot, map, wind }: Omit<MatchMapView, 'target'>) {
  const { rows } = snapshot
  const last = Math.max(0, rows.filter((row) => row.wind <= map.greatestWind + 1e-9).length - 1)
  const first = rows[0]!.wind
  const step = rows.length > 1 ? rows[1]!.wind - first : 0.5
  const shown = Math.min(wind, rows[last]!.wind)
  return (
    <div class="slider match-wind">
      <label for="match-wind">
        {say`Wind:`} <output>{windSaid(shown)}</output>
      </label>
      <input
        id="match-wind"
        type="range"
        min={first}
        max={rows[last]!.wind}
        step={step}
        value={shown}
        aria-valuetext={say`${shortNumber(shown)} metres per second`}
        onInput={(event) => lookAtRow(Math.round((Number(event.currentTarget.value) - first) / step))}
      />
    </div>
  )
}

function TargetSheet({ target }: { readonly target: GeneratorTarget }) {
  return (
    <details class="as-table">
      <summary>{say`What blades and load ask of the generator`}</summary>
      <dl class="target-sheet">
        {targetRows(target).map(([head, text]) => (
          <div key={head}>
            <dt>{told(head)}</dt>
            <dd>{told(text)}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}

export function MatchView({ snapshot, wind }: Pick<MatchMapView, 'snapshot' | 'wind'>) {
  const found = useSight('match')
  return found === undefined ? null : <MapOfBoth snapshot={snapshot} wind={wind} {...found} />
}

function MapOfBoth({ snapshot, map, target, wind }: MatchMapView) {
  const chosen = nearest(map, wind)
  const [cold, hot] = [degreesSaid(map.coldTemperature), warmthSaid(map.hotTemperature)]
  return (
    <ChartFrame
      name="match"
      title={say`Blades and generator`}
      note={
        map.battery === undefined
          ? say`They meet where the machine runs. The generator’s line is that of copper as warm as it gets at each speed; its ribbons reach from ${cold} to ${hot} of copper.`
          : say`They meet where the machine runs. The generator’s line is that of copper as warm as it gets at each speed; its ribbons reach from ${cold} to ${hot} of copper and from an empty to a full battery.`
      }
      draw={(width) =>
        matchChart({
          width,
          height: Math.round(Math.min(460, Math.max(320, width * 0.52))),
          map,
          chosen,
        })
      }
      data={() => matchTable(map)}
      rows={{ chosen, onChoose: (k) => lookAtWind(map.winds[k]!.wind) }}
      tableNote={told(matchTableNote)}
      wind={map.winds[chosen]!.wind}
    >
      <WindSelector snapshot={snapshot} map={map} wind={wind} />
      <ul class="zone-list">
        {zoneSentences(map).map((text) => (
          <li key={text}>{told(text)}</li>
        ))}
      </ul>
      {target === undefined ? null : <TargetSheet target={target} />}
    </ChartFrame>
  )
}
