/** Shows the present machine in a storm: every scenario in its turn, second by second, what each class makes of it, and how far the short brakes. */

import type { StormTrace } from '../../src/analysis/storm-trace.ts'
import { type StormWindKind, stormWindKinds } from '../../src/analysis/storm-wind.ts'
import { brakeColumns } from '../../src/output/brake-report.ts'
import { stormTraceChart, stormTraceTable } from '../../src/output/chart/storm-trace.ts'
import {
  numberColumns,
  type ScenarioReport,
  type ScenarioReportRow,
  verdictColumns,
} from '../../src/output/scenario-report.ts'
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
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { BenchOpening } from './bench-opening.tsx'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { JobKeys } from './job-keys.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function Trace({ trace, words }: { readonly trace: StormTrace; readonly words: string }) {
  return (
    <ChartFrame
      name="storm-trace"
      title={say`Second by second`}
      note={say`With this: ${told(words)}. Dashed, the wind that the limiter leaves.`}
      draw={(width) => stormTraceChart({ width, trace, words })}
      data={() => stormTraceTable(trace)}
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
  const what: Column<ScenarioReportRow> = {
    head: say`what happens`,
    cell: ({ words }) => told(words),
  }
  const braked = brake?.rows ?? []
  return (
    <div class="fault-report storm-report card">
      {stormStale.value ? (
        <p class="note">{say`The design has been changed since; compute again for its new numbers.`}</p>
      ) : null}
      <p class="note">{told(report.windWords)}</p>
      <ul class="storm-verdict">
        {report.summary.map(({ text }) => (
          <li key={text}>{told(text)}</li>
        ))}
      </ul>
      <div class="fault-choice">
        <label>
          {say`Scenario`}{' '}
          <select
            value={row.key}
            onChange={(event) => {
              chosenScenario.value = event.currentTarget.value
            }}
          >
            {rows.map(({ key, words, outcome }) => (
              <option key={key} value={key}>
                {capital(told(words))} – {told(outcome)}
              </option>
            ))}
          </select>
        </label>
      </div>
      <ul class="storm-sentences">
        {row.sentences.map((sentence) => (
          <li key={sentence}>{told(sentence)}</li>
        ))}
      </ul>
      {row.trace === undefined ? null : <Trace trace={row.trace} words={row.words} />}
      <DataTable
        caption={say`What each class of use makes of it`}
        rows={rows}
        columns={[
          what,
          ...verdictColumns.map(
            (head, k): Column<ScenarioReportRow> => ({
              head: told(head),
              cell: ({ verdicts }) => told(verdicts[k] ?? ''),
            }),
          ),
        ]}
        chosen={at}
      />
      <DataTable
        caption={say`How fast, how many volts, how hot`}
        rows={rows}
        columns={[
          what,
          ...numberColumns.map(
            (head, k): Column<ScenarioReportRow> => ({
              head: told(head),
              cell: ({ numbers }) => told(numbers[k] ?? ''),
            }),
          ),
        ]}
        chosen={at}
      />
      {brake === undefined ? null : (
        <>
          <h4>{say`The shorted winding as a brake`}</h4>
          <p>{told(brake.sentence)}</p>
          <DataTable
            caption={say`Shorted for ten minutes in a steady wind`}
            rows={braked}
            columns={brakeColumns.map(
              (head, k): Column<readonly string[]> => ({
                head: told(head),
                cell: (cells) => told(cells[k] ?? ''),
              }),
            )}
          />
        </>
      )}
      {report.notes.map((text) => (
        <p key={text} class="note">
          {told(text)}
        </p>
      ))}
      <p class="storm-caution">{report.cautions.map(told).join(' ')}</p>
    </div>
  )
}

const statusText = (): string => {
  const state = stormState.value
  if (state.kind === 'running') return say`Computing …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Computed.` : ''
}

const kindWords: Readonly<Record<Exclude<StormWindKind, 'logged wind'>, () => string>> = {
  'operating gust': () => say`A gust of ten seconds`,
  'extreme gust': () => say`A rare gust of fourteen seconds`,
  'coherent gust': () => say`A rise that stays`,
  'steady storm': () => say`A steady storm`,
}

export function StormView() {
  const state = stormState.value
  const [least, most] = stormTopBounds
  return (
    <section class="bench storm" id="storm">
      <BenchOpening drawing="storm" drawn={state.kind !== 'done'}>
        <p>
          {say`The machine second by second, from its first turn and its work to gusts in which one thing after another fails: the load, the battery, each limiter, the winding, a magnet. A load is never counted as a protection.`}
        </p>
        <div class="fault-choice">
          <label>
            {say`Wind`}{' '}
            <select
              value={stormKind.value}
              onChange={(event) => {
                const chosen = stormWindKinds.find((kind) => kind === event.currentTarget.value)
                if (chosen !== undefined && chosen !== 'logged wind') stormKind.value = chosen
              }}
            >
              {Object.entries(kindWords).map(([kind, words]) => (
                <option key={kind} value={kind}>
                  {words()}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say`up to`}{' '}
            <input
              type="text"
              inputMode="decimal"
              size={10}
              placeholder={say`site’s`}
              value={stormTop.value}
              aria-describedby="storm-top-note"
              onInput={(event) => {
                stormTop.value = event.currentTarget.value
              }}
            />{' '}
            m/s
          </label>
          <span id="storm-top-note" class="note">
            {say`left empty: the site’s storm; else ${least} to ${most} m/s`}
          </span>
          <JobKeys
            label={say`Compute the storm`}
            start={startStorm}
            stop={stopStorm}
            fraction={state.kind === 'running' ? state.fraction : undefined}
            status={statusText()}
          />
        </div>
      </BenchOpening>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </section>
  )
}
