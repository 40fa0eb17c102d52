/** How exactly it has to be built: many builds of the drawing, how many of them reach the target, and what to tighten first. */
import { buildScatterChart, buildScatterTable } from '../../src/output/chart/build-scatter.ts'
import type { ToleranceReport } from '../../src/output/tolerance-report.ts'
import {
  buildChoices,
  builds,
  startTolerance,
  stopTolerance,
  toleranceStale,
  toleranceState,
} from '../store/tolerance.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'
import { FieldButtons } from './mechanics.tsx'

type Goal = ToleranceReport['goals'][number]
type Figure = ToleranceReport['figures'][number]
type Effect = ToleranceReport['tolerances'][number]

function Yield({ report }: { readonly report: ToleranceReport }) {
  return (
    <div class="tolerance-yield">
      <svg class="yield-bar" viewBox="0 0 200 18" width="200" height="18" aria-hidden="true">
        <rect class="margin-track" x="0.5" y="3.5" width="199" height="11" />
        <rect class="margin-used" x="0.5" y="3.5" width={199 * report.yield} height="11" />
      </svg>
      <ul>
        {report.sentences.map((sentence) => (
          <li key={sentence}>{told(sentence)}</li>
        ))}
      </ul>
      <FieldButtons paths={report.tighten} />
    </div>
  )
}

function Report({ report }: { readonly report: ToleranceReport }) {
  const { goals, figures, tolerances, scatter } = report
  const cell = (text: string) => told(shown(text))
  return (
    <div class="fault-report tolerance-report">
      {toleranceStale.value ? (
        <p class="note">{say`The design has been changed since; build anew for its new numbers.`}</p>
      ) : null}
      <Yield report={report} />
      <DataTable
        caption={say`The target`}
        rows={goals}
        columns={[
          { head: say`goal`, cell: ({ words }: Goal) => told(words) },
          { head: say`limit`, cell: ({ limit }: Goal) => told(limit) },
          { head: say`reached by`, cell: ({ reached }: Goal) => cell(reached) },
        ]}
      />
      {scatter.length === 0 ? null : (
        <ChartFrame
          name="build-scatter"
          title={say`Where nine of ten builds end up`}
          draw={(width) => buildScatterChart({ width, rows: scatter })}
          data={() => buildScatterTable(scatter)}
        />
      )}
      <DataTable
        caption={say`What comes out`}
        rows={figures}
        columns={[
          { head: say`of the build`, cell: ({ words }: Figure) => told(words) },
          ...report.figureColumns.map(
            (head, k): Column<Figure> => ({ head: told(head), cell: ({ cells }) => cell(cells[k] ?? '') }),
          ),
        ]}
      />
      <p class="note">{told(report.figureNote)}</p>
      {tolerances.length === 0 ? null : (
        <>
          <DataTable
            caption={say`Which tolerance does it`}
            rows={tolerances}
            columns={[
              { head: say`tolerance`, cell: ({ words }: Effect) => told(words) },
              { head: say`width`, cell: ({ width }: Effect) => cell(width) },
              ...report.shareColumns.map(
                (head, k): Column<Effect> => ({
                  head: told(head),
                  unit: '%',
                  cell: ({ shares }) => shares[k] ?? '',
                }),
              ),
              { head: say`if halved`, unit: '%', cell: ({ yieldHalved }: Effect) => cell(yieldHalved) },
            ]}
          />
          <p class="note">{told(report.toleranceNote)}</p>
        </>
      )}
    </div>
  )
}

function statusText(): string {
  const state = toleranceState.value
  if (state.kind === 'running') return say`Building …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Built.` : ''
}

export function ToleranceView() {
  const state = toleranceState.value
  const running = state.kind === 'running'
  return (
    <section class="bench tolerance card" id="tolerance" aria-labelledby="tolerance-title">
      <h3 id="tolerance-title">{say`How exactly it has to be built`}</h3>
      <p class="note">
        {say`The drawing is built many times over, each time with magnets, coils and wire a little out of place, as much as the fields of the tolerances say. How many of the builds reach the target, and which tolerance is worth the trouble?`}
      </p>
      <div class="fault-choice">
        <label>
          {say`Builds`}{' '}
          <select
            value={String(builds.value)}
            onChange={(event) => {
              const chosen = buildChoices.find((one) => String(one) === event.currentTarget.value)
              if (chosen !== undefined) builds.value = chosen
            }}
          >
            {buildChoices.map((one) => (
              <option key={one} value={String(one)}>
                {one}
              </option>
            ))}
          </select>
        </label>
        <button type="button" class="chief" disabled={running} onClick={startTolerance}>
          {say`Build them`}
        </button>
        {running ? (
          <button type="button" onClick={stopTolerance}>
            {say`Stop`}
          </button>
        ) : null}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label={say`Built so far`} max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </section>
  )
}
