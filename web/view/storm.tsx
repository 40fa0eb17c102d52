/** Shows the present machine in a storm: what fails in turn, each second by second, and how far the short brakes. */
import { type StormWindKind, stormWindKinds } from '../../src/analysis/storm-wind.ts'
import { stormTraceChart } from '../../src/output/chart/storm-trace.ts'
import { traceHeads } from '../../src/output/storm-page.ts'
import {
  brakeColumns,
  type StormReport,
  type StormReportRow,
  stormColumns,
} from '../../src/output/storm-report.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import {
  chosenFailure,
  startStorm,
  stopStorm,
  stormKind,
  stormStale,
  stormState,
  stormTop,
  stormTopBounds,
} from '../store/storm.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** One sample of twelve is enough for a table that is read aloud. */
const spacing = 12

function Trace({ row }: { readonly row: StormReportRow }) {
  const { trace, words } = row
  const rows = Array.from(trace.time, (_, k) => k).filter((k) => k % spacing === 0)
  const column = (head: string, name: keyof typeof traceHeads): Column<number> => ({
    head,
    cell: (k) => formatSi(trace[name][k]!, traceHeads[name].suffix),
  })
  const columns: Column<number>[] = [
    { head: 'time', unit: 's', cell: (k) => formatNumber(trace.time[k]!) },
    column('wind', 'wind'),
    column('speed', 'speed'),
    column('direct volts', 'voltage'),
    column('direct amps', 'current'),
    column('phase amps', 'phaseCurrent'),
    column('copper', 'copperTemperature'),
    { head: 'wind left', unit: '%', cell: (k) => formatNumber(100 * trace.kept[k]!, 2) },
  ]
  return (
    <ChartFrame
      name="storm-trace"
      title="Second by second"
      note={`With this: ${words}. Dashed, the wind that the limiter leaves.`}
      draw={(width) => stormTraceChart({ width, trace, words })}
      table={() => <DataTable caption="The storm, sample by sample" rows={rows} columns={columns} />}
    />
  )
}

function Report({ report }: { readonly report: StormReport }) {
  const { rows, brake } = report
  const at = Math.max(
    0,
    rows.findIndex(({ key }) => key === chosenFailure.value),
  )
  const row = rows[at]!
  const columns: Column<StormReportRow>[] = [
    { head: 'what fails', cell: ({ words }) => words },
    ...stormColumns.map((head, k): Column<StormReportRow> => ({ head, cell: ({ cells }) => cells[k] })),
  ]
  const braked = brake?.rows ?? []
  return (
    <div class="fault-report storm-report">
      {stormStale.value ? (
        <p class="note">The design has been changed since; compute again for its new numbers.</p>
      ) : null}
      <p class="note">{report.windWords}</p>
      <ul class="storm-verdict">
        {report.verdict.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <div class="fault-choice">
        <label>
          Failure{' '}
          <select
            value={row.key}
            onChange={(event) => {
              chosenFailure.value = event.currentTarget.value
            }}
          >
            {rows.map(({ key, words, outcome }) => (
              <option key={key} value={key}>
                {capital(words)} – {outcome}
              </option>
            ))}
          </select>
        </label>
      </div>
      <ul class="storm-sentences">
        {row.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <Trace row={row} />
      <DataTable caption="Each failure in its turn" rows={rows} columns={columns} chosen={at} />
      {brake === undefined ? null : (
        <>
          <h4>The shorted winding as a brake</h4>
          <p>{brake.sentence}</p>
          <DataTable
            caption="Shorted for ten minutes in a steady wind"
            rows={braked}
            columns={brakeColumns.map(
              (head, k): Column<readonly string[]> => ({ head, cell: (cells) => cells[k] }),
            )}
          />
        </>
      )}
      {report.notes.map((text) => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
      <p class="storm-caution">{report.cautions.join(' ')}</p>
    </div>
  )
}

const statusText = (): string => {
  const state = stormState.value
  if (state.kind === 'running') return 'Computing …'
  if (state.kind === 'refused') return state.reason
  return state.kind === 'done' ? 'Computed.' : ''
}

const kindWords: Readonly<Record<Exclude<StormWindKind, 'logged wind'>, string>> = {
  'operating gust': 'A gust of ten seconds',
  'coherent gust': 'A rise that stays',
  'steady storm': 'A steady storm',
}

export function StormView() {
  const state = stormState.value
  const running = state.kind === 'running'
  const [least, most] = stormTopBounds
  return (
    <details class="card faults storm" id="storm">
      <summary>
        <h3>In a storm</h3>
      </summary>
      <p class="note">
        The machine second by second while one thing after another fails: the load, the battery, each limiter,
        the winding. A load is never counted as a protection.
      </p>
      <div class="fault-choice">
        <label>
          Wind{' '}
          <select
            value={stormKind.value}
            onChange={(event) => {
              const chosen = stormWindKinds.find((kind) => kind === event.currentTarget.value)
              if (chosen !== undefined && chosen !== 'logged wind') stormKind.value = chosen
            }}
          >
            {Object.entries(kindWords).map(([kind, words]) => (
              <option key={kind} value={kind}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label>
          up to{' '}
          <input
            type="text"
            inputMode="decimal"
            size={6}
            placeholder="site’s"
            value={stormTop.value}
            aria-describedby="storm-top-note"
            onInput={(event) => {
              stormTop.value = event.currentTarget.value
            }}
          />{' '}
          m/s
        </label>
        <span id="storm-top-note" class="note">
          left empty: the site’s storm; else {least} to {most} m/s
        </span>
        <button type="button" disabled={running} onClick={startStorm}>
          Compute the storm
        </button>
        {running ? (
          <button type="button" onClick={stopStorm}>
            Stop
          </button>
        ) : null}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label="Computed so far" max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </details>
  )
}
