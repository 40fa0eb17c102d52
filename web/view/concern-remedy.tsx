/** What helps against one concern, tried on demand: each remedy's step, what it does, and a button to take it. */
import type { ConcernRemedyReport, ConcernTrials, TriedRemedy } from '../../src/index.ts'
import { outcomeText, triedNote, triedSentences } from '../../src/output/concern-remedy-words.ts'
import {
  concernTrial,
  concernTrialStale,
  stopConcern,
  takeConcernRemedy,
  tryConcern,
} from '../store/concern-remedy.ts'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

interface One {
  readonly trials: ConcernTrials
  readonly tried: TriedRemedy
  readonly report: ConcernRemedyReport
}

function One({ trials, tried, report }: One) {
  return (
    <li>
      <p class="helps-words">
        <strong>{capital(outcomeText(tried))}.</strong> {tried.words}
      </p>
      {triedSentences(trials, tried, report.before).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {tried.changes.length === 0 ? null : (
        <button type="button" aria-label={`Take it: ${tried.words}`} onClick={() => takeConcernRemedy(tried)}>
          Take it
        </button>
      )}
    </li>
  )
}

function Report({ report }: { readonly report: ConcernRemedyReport }) {
  const trials = report.concerns[0]
  if (trials === undefined) return <p>The concern is not raised by the design that was tried.</p>
  return (
    <>
      {concernTrialStale.value ? (
        <p class="note">
          The design has been changed since. “Take it” starts from the design that these were computed for.
        </p>
      ) : null}
      <ol class="helps-list">
        {trials.tried.map((tried) => (
          <One key={tried.words} trials={trials} tried={tried} report={report} />
        ))}
      </ol>
      <p class="note">{triedNote}</p>
    </>
  )
}

export function ConcernRemedyView({ code, what }: { readonly code: string; readonly what: string }) {
  const state = concernTrial.value
  const own = state.kind !== 'none' && state.code === code ? state : undefined
  const running = own?.kind === 'running'
  return (
    <div class="helps">
      <div class="fault-choice">
        <button
          type="button"
          disabled={running}
          aria-label={`Try what helps: ${what}`}
          onClick={() => tryConcern(code)}
        >
          Try what helps
        </button>
        {running ? (
          <button type="button" onClick={stopConcern}>
            Stop
          </button>
        ) : null}
        <output aria-live="polite">
          {running ? 'Trying …' : own?.kind === 'refused' ? own.reason : own?.kind === 'done' ? 'Done.' : ''}
        </output>
        {own?.kind === 'running' ? <progress aria-label="Tried so far" max={1} value={own.fraction} /> : null}
      </div>
      {own?.kind === 'done' ? <Report report={own.report} /> : null}
    </div>
  )
}
