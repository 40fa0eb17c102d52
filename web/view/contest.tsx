/** Sets the present design against another one: the choice, the verdict, the watts by wind, every figure. */
import { type ContestRule, contestRules, contestRuleWords } from '../../src/analysis/contest-rule.ts'
import { contestChart } from '../../src/output/chart/contest.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import type { ContestReport } from '../../src/output/contest-report.ts'
import { formatNumber } from '../../src/units/format.ts'
import {
  contest,
  contestRule,
  contestStale,
  holdContest,
  rival,
  rivals,
  stopContest,
} from '../store/contest.ts'
import { isRawObject } from '../store/raw-document.ts'
import { ChartFrame } from './chart-frame.tsx'
import { type Column, DataTable } from './data-table.tsx'

async function openRival(file: File | undefined): Promise<void> {
  if (!file) return
  const refuse = (reason: string) => {
    contest.value = { kind: 'refused', reason: `${file.name} must be ${reason}` }
  }
  try {
    const document: unknown = JSON.parse(await file.text())
    if (isRawObject(document)) rival.value = { name: String(document['name'] ?? file.name), document }
    else refuse('an object; received another kind of value (wrong-type)')
  } catch (error) {
    refuse(`JSON; received ${error instanceof Error ? error.message : 'something else'} (not-json)`)
  }
}

function Choice() {
  const running = contest.value.kind === 'running'
  const chosen = rival.value
  return (
    <form
      class="contest-choice"
      onSubmit={(event) => {
        event.preventDefault()
        holdContest()
      }}
    >
      <label>
        Compare with{' '}
        <select
          value={rivals.find(({ document }) => document === chosen?.document)?.key ?? ''}
          onChange={(event) => {
            rival.value = rivals.find(({ key }) => key === event.currentTarget.value)
          }}
        >
          <option value="">{chosen?.name ?? 'a design …'}</option>
          {rivals.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        or a file{' '}
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            void openRival(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
          }}
        />
      </label>
      <label>
        at{' '}
        <select
          value={contestRule.value}
          onChange={(event) => {
            contestRule.value = event.currentTarget.value as ContestRule
          }}
        >
          {contestRules.map((rule) => (
            <option key={rule} value={rule}>
              {contestRuleWords[rule]}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" disabled={chosen === undefined || running}>
        Compare
      </button>
      {running ? (
        <button type="button" onClick={stopContest}>
          Stop
        </button>
      ) : null}
    </form>
  )
}

function Report({ report }: { readonly report: ContestReport }) {
  const { letters, names, changes, verdict, conditions, figures, winds } = report
  const values = letters.map((head, k) => ({ head, k }))
  const figureColumns: Column<ContestReport['figures'][number]>[] = [
    {
      head: 'figure',
      cell: ({ name, unit }) => (
        <>
          {name} <small>{unit}</small>
        </>
      ),
    },
    ...values.map(({ head, k }) => ({
      head,
      cell: (row: ContestReport['figures'][number]) => row.values[k],
    })),
  ]
  const windColumns: Column<ContestReport['winds'][number]>[] = [
    { head: 'wind', unit: 'm/s', cell: ({ wind }) => shortNumber(wind) },
    ...values.map(({ head, k }) => ({
      head,
      unit: 'W',
      cell: (row: ContestReport['winds'][number]) => formatNumber(row.watts[k] ?? 0),
    })),
  ]
  return (
    <div class="contest-report">
      {contestStale.value ? (
        <p class="note">The design has been changed since; compare again for its new numbers.</p>
      ) : null}
      <p>{report.rule}</p>
      <ul>
        {letters.map((letter, k) => (
          <li key={letter}>
            <b>{letter}</b> {names[k]}: {changes[k]}
          </li>
        ))}
      </ul>
      <h4>Verdict</h4>
      <ul>
        {verdict.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <ChartFrame
        name="contest"
        title="Watts into the load"
        draw={(width) =>
          contestChart({
            width,
            height: Math.round(Math.min(340, Math.max(260, width * 0.45))),
            letters,
            winds,
          })
        }
        table={() => <DataTable caption="Watts by wind" columns={windColumns} rows={winds} />}
      />
      <DataTable caption="Side by side" columns={figureColumns} rows={figures} />
      <h4>Conditions</h4>
      <ul>
        {conditions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  )
}

const statusText = (): string => {
  const state = contest.value
  if (state.kind === 'running') return 'Comparing …'
  if (state.kind === 'refused') return state.reason
  return state.kind === 'done' ? 'Compared.' : ''
}

export function ContestView() {
  const state = contest.value
  return (
    <details class="card contest" id="contest">
      <summary>
        <h3>Compare with another design</h3>
      </summary>
      <p class="note">
        Both get the same of what is held equal, by a wider or narrower bundle of the wire that fits; the
        turns follow, so that current begins at one speed.
      </p>
      <Choice />
      <div class="contest-status">
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label="Compared so far" max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </details>
  )
}
