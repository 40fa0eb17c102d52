/** Remedies for the match of the present design: how far they are, their report, one taken over on trial. */
import { withChanges } from '../../src/analysis/remedy/change.ts'
import type { Remedy } from '../../src/index.ts'
import { changesText, remedyNames } from '../../src/output/remedy-words.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { document as design, notice, replace } from './design.ts'
import { jobView } from './job.ts'
import type { RawObject } from './raw-document.ts'
import { keepTracing } from './tracing.ts'

const view = jobView('remedies')
export const remedies = view.state
export const remediesStale = view.stale
export const stopRemedies = view.stop

export const tryRemedies = (): void => view.start({ text: JSON.stringify(design.value) })

/** Puts a remedy's changes into the document that the remedies were tried on: one step for the way back, under its name. */
export function takeRemedy(remedy: Remedy): void {
  const state = remedies.value
  if (state.kind !== 'done') return
  replace(
    withChanges(state.of, remedy.changes) as RawObject,
    say`remedy: ${told(remedyNames[remedy.kind])}`,
    'remedy',
  )
  notice.value = say`Taken over: ${changesText(remedy)}. “Undo” brings back the design as it was, and the shelf keeps it as a version.`
}

/** Keeps what the remedy would make as a tracing under that name, laid over the design that stays; gives its letter. */
export async function layRemedyOver(remedy: Remedy, name: string): Promise<string | undefined> {
  const state = remedies.value
  if (state.kind !== 'done') return undefined
  return keepTracing(name, withChanges(state.of, remedy.changes) as RawObject)
}
