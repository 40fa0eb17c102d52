/** What helps against one concern of the present design: how far the trial is, its report, one remedy taken. */
import { withChanges } from '../../src/analysis/remedy/change.ts'
import type { TriedRemedy } from '../../src/index.ts'
import { remedyChangesText } from '../../src/output/concern-remedy-words.ts'
import { say } from '../text/say.ts'
import { document as design, notice, replace } from './design.ts'
import { jobView } from './job.ts'
import type { RawObject } from './raw-document.ts'
import { keepTracing } from './tracing.ts'

const view = jobView('helps')
export const concernTrial = view.state
export const concernTrialStale = view.stale
export const stopConcern = view.stop

/** Tries what helps against one concern; another that is being tried is given up for it. */
export const tryConcern = (code: string): void => view.start({ text: JSON.stringify(design.value), code })

/** Puts a remedy's changes into the document that it was tried on: one step for the way back, under that name. */
export function takeConcernRemedy(tried: TriedRemedy, name: string): void {
  const state = concernTrial.value
  if (state.kind !== 'done') return
  replace(withChanges(state.of, tried.changes) as RawObject, say`remedy: ${name}`, 'remedy')
  notice.value = say`Taken over: ${remedyChangesText(tried)}. “Undo” brings back the design as it was, and the shelf keeps it as a version.`
}

/** Keeps what the remedy would make as a tracing under that name, laid over the design that stays; gives its letter. */
export async function layConcernRemedyOver(tried: TriedRemedy, name: string): Promise<string | undefined> {
  const state = concernTrial.value
  if (state.kind !== 'done') return undefined
  return keepTracing(name, withChanges(state.of, tried.changes) as RawObject)
}
