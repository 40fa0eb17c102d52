/** Remedies for the match, tried on demand: what each changes, brings and costs, and a button to take it over. */
import type { Remedy, RemedyReport } from '../../src/index.ts'
import {
  changesText,
  figureCells,
  idealSentence,
  remedyColumns,
  remedyNames,
  remedyNote,
  remedySentence,
  withoutTexts,
  worseParts,
} from '../../src/output/remedy-words.ts'
import { remedies, remediesStale, stopRemedies, takeRemedy, tryRemedies } from '../store/remedy.ts'
import { type Column, DataTable } from './data-table.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function One({ report, remedy }: { readonly report: RemedyReport; readonly remedy: Remedy }) {
  const worse = worseParts(report, remedy)
  const name = capital(remedyNames[remedy.kind])
  return (
    <li>
      <h4>{name}</h4>
      <p class="remedy-change">{changesText(remedy)}</p>
      <p>{remedySentence(report, remedy)}.</p>
      {worse.length > 0 ? <p class="note">Price: {worse.join('; ')}.</p> : null}
      {remedy.design === undefined ? null : (
        <button type="button" aria-label={`Try it: ${name}`} onClick={() => takeRemedy(remedy)}>
          Try it
        </button>
      )}
    </li>
  )
}

function Report({ report }: { readonly report: RemedyReport }) {
  const rows = [
    { name: 'as it is', cells: figureCells(report.before, 0) },
    ...report.remedies.map(({ kind, after, burnt }) => ({
      name: remedyNames[kind],
      cells: figureCells(after, burnt),
    })),
  ]
  const columns: Column<(typeof rows)[number]>[] = [
    { head: 'machine', cell: ({ name }) => name },
    ...remedyColumns.map(
      (head, k): Column<(typeof rows)[number]> => ({ head, cell: ({ cells }) => cells[k] }),
    ),
  ]
  return (
    <div class="remedy-report">
      {remediesStale.value ? (
        <p class="note">
          The design has been changed since. “Try it” starts from the design that these were computed for.
        </p>
      ) : null}
      {report.remedies.length === 0 ? <p>None of the remedies tried helps this machine.</p> : null}
      <ol class="remedy-list">
        {report.remedies.map((remedy) => (
          <One key={remedy.kind} report={report} remedy={remedy} />
        ))}
      </ol>
      <DataTable caption="Before and after, each remedy alone" rows={rows} columns={columns} chosen={0} />
      {report.without.length > 0 ? (
        <>
          <h4>Looked at, without use</h4>
          <ul>
            {withoutTexts(report).map((text) => (
              <li key={text}>{capital(text)}.</li>
            ))}
          </ul>
        </>
      ) : null}
      <p class="note">{idealSentence(report)}</p>
      <p class="note">{remedyNote}</p>
    </div>
  )
}

function statusText(): string {
  const state = remedies.value
  if (state.kind === 'running') return 'Trying …'
  if (state.kind === 'refused') return state.reason
  return state.kind === 'done' ? 'Done.' : ''
}

export function RemedyView() {
  const state = remedies.value
  const running = state.kind === 'running'
  return (
    <details class="card fold remedies" id="remedies">
      <summary>
        <h3>What would make them suit each other better</h3>
      </summary>
      <p class="note">
        Gap, turns, connection, cable, electronics, magnets, blades, and a resistor last: each is tried on the
        whole machine, and the best step of each is shown with what it costs.
      </p>
      <div class="fault-choice">
        <button type="button" disabled={running} onClick={tryRemedies}>
          Try the remedies
        </button>
        {running ? (
          <button type="button" onClick={stopRemedies}>
            Stop
          </button>
        ) : null}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label="Tried so far" max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </details>
  )
}
