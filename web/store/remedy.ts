/** Remedies for the match of the present design: how far they are, their report, one taken over on trial. */
import { computed, signal } from '@preact/signals'
import { withChanges } from '../../src/analysis/remedy/change.ts'
import type { Remedy, RemedyReport } from '../../src/index.ts'
import { changesText } from '../../src/output/remedy-words.ts'
import { document as design, notice, replace } from './design.ts'
import type { RawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

export type RemedyState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly fraction: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly report: RemedyReport; readonly of: RawObject }

export const remedies = signal<RemedyState>({ kind: 'none' })

/** The design has been changed since its remedies were tried. */
export const remediesStale = computed(
  () => remedies.value.kind === 'done' && remedies.value.of !== design.value,
)

let asked: RawObject | undefined

const engine = sideEngine(
  (data) => {
    if (data.kind === 'remedies-progress') remedies.value = { kind: 'running', fraction: data.fraction }
    else if (data.kind === 'remedies-refused') remedies.value = { kind: 'refused', reason: data.reason }
    else if (data.kind === 'remedies' && asked)
      remedies.value = { kind: 'done', report: data.report, of: asked }
  },
  (reason) => {
    remedies.value = { kind: 'refused', reason }
  },
)

export function tryRemedies(): void {
  asked = design.value
  const text = JSON.stringify(asked)
  remedies.value = { kind: 'running', fraction: 0 }
  engine.ask((id) => ({ kind: 'remedies', id, text }))
}

export function stopRemedies(): void {
  engine.ask(() => ({ kind: 'remedies-stop' }))
  remedies.value = { kind: 'none' }
}

/** Puts a remedy's changes into the document that the remedies were tried on; the way back is kept. */
export function takeRemedy(remedy: Remedy): void {
  const state = remedies.value
  if (state.kind !== 'done') return
  replace(withChanges(state.of, remedy.changes) as RawObject)
  if (notice.value === '')
    notice.value = `Taken over: ${changesText(remedy)}. “Back to what I had” brings back the design as it was.`
}
