/** Shows the present machine in a storm: every scenario in its turn, second by second, what each class makes of it, and how far the short brakes. */

import type { StormTrace } from '../../src/analysis/storm-trace.ts'
import { type StormWindKind, stormWindKinds } from '../../src/analysis/storm-wind.ts'
import { brakeColumns } from '../../src/output/brake-report.ts'
import { stormTraceChart } from '../../src/output/chart/storm-trace.ts'
import { traceHeads } from '../../src/output/scenario-page.ts'
import {
  numberColumns,
  type ScenarioReport,
  type ScenarioReportRow,
  verdictColumns,
} from '../../src/output/scenario-report.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import {
  chosenScenario,
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

function Trace({ trace, words }: { readonly trace: StormTrace; readonly words: string }) {
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

function Report({ report }: { readonly report: ScenarioReport }) {
  const { rows, brake } = report
  const at = Math.max(
    0,
    rows.findIndex(({ key }) => key === chosenScenario.value),
  )
  const row = rows[at]!
  const what: Column<ScenarioReportRow> = { head: 'what happens', cell: ({ words }) => words }
  const braked = brake?.rows ?? []
  return (
    <div class="fault-report storm-report">
      {stormStale.value ? (
        <p class="note">The design has been changed since; compute again for its new numbers.</p>
      ) : null}
      <p class="note">{report.windWords}</p>
      <ul class="storm-verdict">
        {report.summary.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <div class="fault-choice">
        <label>
          Scenario{' '}
          <select
            value={row.key}
            onChange={(event) => {
              chosenScenario.value = event.currentTarget.value
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
      {row.trace === undefined ? null : <Trace trace={row.trace} words={row.words} />}
      <DataTable
        caption="What each class of use makes of it"
        rows={rows}
        columns={[
          what,
          ...verdictColumns.map(
            (head, k): Column<ScenarioReportRow> => ({ head, cell: ({ verdicts }) => verdicts[k] }),
          ),
        ]}
        chosen={at}
      />
      <DataTable
        caption="How fast, how many volts, how hot"
        rows={rows}
        columns={[
          what,
          ...numberColumns.map(
            (head, k): Column<ScenarioReportRow> => ({ head, cell: ({ numbers }) => numbers[k] }),
          ),
        ]}
        chosen={at}
      />
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
  'extreme gust': 'A rare gust of fourteen seconds',
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
        The machine second by second, from its first turn and its work to gusts in which one thing after
        another fails: the load, the battery, each limiter, the winding, a magnet. A load is never counted as
        a protection.
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
