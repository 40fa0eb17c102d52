/** What helps against one concern of the present design: how far the trial is, its report, one remedy taken. */
import { computed, signal } from '@preact/signals'
import { withChanges } from '../../src/analysis/remedy/change.ts'
import type { ConcernRemedyReport, TriedRemedy } from '../../src/index.ts'
import { remedyChangesText } from '../../src/output/concern-remedy-words.ts'
import { document as design, notice, replace } from './design.ts'
import type { RawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

export type ConcernTrialState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly code: string; readonly fraction: number }
  | { readonly kind: 'refused'; readonly code: string; readonly reason: string }
  | {
      readonly kind: 'done'
      readonly code: string
      readonly report: ConcernRemedyReport
      readonly of: RawObject
    }

export const concernTrial = signal<ConcernTrialState>({ kind: 'none' })

/** The design has been changed since its remedies were tried. */
export const concernTrialStale = computed(
  () => concernTrial.value.kind === 'done' && concernTrial.value.of !== design.value,
)

let asked: { readonly code: string; readonly of: RawObject } | undefined

const engine = sideEngine(
  (data) => {
    if (asked === undefined) return
    const { code, of } = asked
    if (data.kind === 'helps-progress')
      concernTrial.value = { kind: 'running', code, fraction: data.fraction }
    else if (data.kind === 'helps-refused')
      concernTrial.value = { kind: 'refused', code, reason: data.reason }
    else if (data.kind === 'helps') concernTrial.value = { kind: 'done', code, report: data.report, of }
  },
  (reason) => {
    if (asked !== undefined) concernTrial.value = { kind: 'refused', code: asked.code, reason }
  },
)

/** Tries what helps against one concern; another that is being tried is given up for it. */
export function tryConcern(code: string): void {
  asked = { code, of: design.value }
  const text = JSON.stringify(asked.of)
  concernTrial.value = { kind: 'running', code, fraction: 0 }
  engine.ask((id) => ({ kind: 'helps', id, text, code }))
}

export function stopConcern(): void {
  engine.ask(() => ({ kind: 'helps-stop' }))
  concernTrial.value = { kind: 'none' }
}

/** Puts a remedy's changes into the document that it was tried on; the way back is kept. */
export function takeConcernRemedy(tried: TriedRemedy): void {
  const state = concernTrial.value
  if (state.kind !== 'done') return
  replace(withChanges(state.of, tried.changes) as RawObject)
  if (notice.value === '')
    notice.value = `Taken over: ${remedyChangesText(tried)}. “Back to what I had” brings back the design as it was.`
}
