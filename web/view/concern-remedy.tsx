/** What helps against one concern, tried on demand: each remedy's step, what it does, laid over the design or taken. */
import type { ConcernRemedyReport, ConcernTrials, TriedRemedy } from '../../src/index.ts'
import { outcomeText, triedNote, triedSentences } from '../../src/output/concern-remedy-words.ts'
import {
  concernTrial,
  concernTrialStale,
  layConcernRemedyOver,
  stopConcern,
  takeConcernRemedy,
  tryConcern,
} from '../store/concern-remedy.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { engineWords } from './engine-words.ts'
import { changesName } from './field-words.ts'
import { LayOver } from './lay-over.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

interface One {
  readonly trials: ConcernTrials
  readonly tried: TriedRemedy
  readonly report: ConcernRemedyReport
}

function One({ trials, tried, report }: One) {
  const remedy = engineWords(tried.words)
  const name = changesName(tried.changes)
  return (
    <li>
      <p class="helps-words">
        <strong>{capital(engineWords(outcomeText(tried)))}.</strong> {remedy}
      </p>
      {triedSentences(trials, tried, report.before).map((sentence) => (
        <p key={sentence}>{engineWords(sentence)}</p>
      ))}
      {tried.changes.length === 0 ? null : (
        <div class="fault-choice">
          <button
            type="button"
            aria-label={say`Take it: ${remedy}`}
            onClick={() => takeConcernRemedy(tried, name)}
          >
            {say`Take it`}
          </button>
          <LayOver name={remedy} lay={() => layConcernRemedyOver(tried, name)} />
        </div>
      )}
    </li>
  )
}

function Report({ report }: { readonly report: ConcernRemedyReport }) {
  const trials = report.concerns[0]
  if (trials === undefined) return <p>{say`The concern is not raised by the design that was tried.`}</p>
  return (
    <>
      {concernTrialStale.value ? (
        <p class="note">
          {say`The design has been changed since. “Take it” and “Lay it over” start from the design that these were computed for.`}
        </p>
      ) : null}
      <ol class="helps-list">
        {trials.tried.map((tried) => (
          <One key={tried.words} trials={trials} tried={tried} report={report} />
        ))}
      </ol>
      <p class="note">{told(triedNote)}</p>
    </>
  )
}

export function ConcernRemedyView({ code, what }: { readonly code: string; readonly what: string }) {
  const state = concernTrial.value
  const own = state.kind !== 'none' && state.asked?.code === code ? state : undefined
  const running = own?.kind === 'running'
  return (
    <div class="helps">
      <div class="fault-choice">
        <button
          type="button"
          disabled={running}
          aria-label={say`Try what helps: ${told(what)}`}
          onClick={() => tryConcern(code)}
        >
          {say`Try what helps`}
        </button>
        {running ? (
          <button type="button" onClick={stopConcern}>
            {say`Stop`}
          </button>
        ) : null}
        <output aria-live="polite">
          {running
            ? say`Trying …`
            : own?.kind === 'refused'
              ? told(own.reason)
              : own?.kind === 'done'
                ? say`Done.`
                : ''}
        </output>
        {own?.kind === 'running' ? (
          <progress aria-label={say`Tried so far`} max={1} value={own.fraction} />
        ) : null}
      </div>
      {own?.kind === 'done' ? <Report report={own.report} /> : null}
    </div>
  )
}
