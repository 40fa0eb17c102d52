/** Remedies for the match, tried on demand: what each changes, brings and costs, laid over the design or taken. */
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
import {
  layRemedyOver,
  remedies,
  remediesStale,
  stopRemedies,
  takeRemedy,
  tryRemedies,
} from '../store/remedy.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { type Column, DataTable } from './data-table.tsx'
import { engineWords } from './engine-words.ts'
import { changesName } from './field-words.ts'
import { LayOver } from './lay-over.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

function One({ report, remedy }: { readonly report: RemedyReport; readonly remedy: Remedy }) {
  const worse = worseParts(report, remedy).map(engineWords)
  const name = capital(told(remedyNames[remedy.kind]))
  return (
    <li>
      <h4>{name}</h4>
      <p class="remedy-change">{engineWords(changesText(remedy))}</p>
      <p>{engineWords(`${remedySentence(report, remedy)}.`)}</p>
      {worse.length > 0 ? <p class="note">{say`Price: ${worse.join('; ')}.`}</p> : null}
      {remedy.design === undefined ? null : (
        <div class="fault-choice">
          <button type="button" aria-label={say`Take it: ${name}`} onClick={() => takeRemedy(remedy)}>
            {say`Take it`}
          </button>
          <LayOver name={name} lay={() => layRemedyOver(remedy, changesName(remedy.changes))} />
        </div>
      )}
    </li>
  )
}

function Report({ report }: { readonly report: RemedyReport }) {
  const rows = [
    { name: say`as it is`, cells: figureCells(report.before, 0) },
    ...report.remedies.map(({ kind, after, burnt }) => ({
      name: told(remedyNames[kind]),
      cells: figureCells(after, burnt),
    })),
  ]
  const columns: Column<(typeof rows)[number]>[] = [
    { head: say`machine`, cell: ({ name }) => name },
    ...remedyColumns.map(
      (head, k): Column<(typeof rows)[number]> => ({
        head: told(head),
        cell: ({ cells }) => shown(cells[k] ?? ''),
      }),
    ),
  ]
  return (
    <div class="remedy-report">
      {remediesStale.value ? (
        <p class="note">
          {say`The design has been changed since. “Take it” and “Lay it over” start from the design that these were computed for.`}
        </p>
      ) : null}
      {report.remedies.length === 0 ? <p>{say`None of the remedies tried helps this machine.`}</p> : null}
      <ol class="remedy-list">
        {report.remedies.map((remedy) => (
          <One key={remedy.kind} report={report} remedy={remedy} />
        ))}
      </ol>
      <DataTable
        caption={say`Before and after, each remedy alone`}
        rows={rows}
        columns={columns}
        chosen={0}
      />
      {report.without.length > 0 ? (
        <>
          <h4>{say`Looked at, without use`}</h4>
          <ul>
            {withoutTexts(report).map((text) => (
              <li key={text}>{capital(engineWords(text))}.</li>
            ))}
          </ul>
        </>
      ) : null}
      <p class="note">{engineWords(idealSentence(report))}</p>
      <p class="note">{told(remedyNote)}</p>
    </div>
  )
}

function statusText(): string {
  const state = remedies.value
  if (state.kind === 'running') return say`Trying …`
  if (state.kind === 'refused') return told(state.reason)
  return state.kind === 'done' ? say`Done.` : ''
}

export function RemedyView() {
  const state = remedies.value
  const running = state.kind === 'running'
  return (
    <details class="card fold remedies" id="remedies">
      <summary>
        <h3>{say`What would make them suit each other better`}</h3>
      </summary>
      <p class="note">
        {say`Gap, turns, connection, cable, electronics, magnets, blades, and a resistor last: each is tried on the whole machine, and the best step of each is shown with what it costs.`}
      </p>
      <div class="fault-choice">
        <button type="button" disabled={running} onClick={tryRemedies}>
          {say`Try the remedies`}
        </button>
        {running ? (
          <button type="button" onClick={stopRemedies}>
            {say`Stop`}
          </button>
        ) : null}
        <output aria-live="polite">{statusText()}</output>
        {state.kind === 'running' ? (
          <progress aria-label={say`Tried so far`} max={1} value={state.fraction} />
        ) : null}
      </div>
      {state.kind === 'done' ? <Report report={state.report} /> : null}
    </details>
  )
}
