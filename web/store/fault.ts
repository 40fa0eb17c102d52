/** The study of the present design with one defect at a time: how far it is, its result, the case looked at. */
import { computed, signal } from '@preact/signals'
import type { FaultStudy } from '../../src/index.ts'
import { document as design } from './design.ts'
import type { RawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

export type StudyState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly fraction: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly study: FaultStudy; readonly of: RawObject }

export const study = signal<StudyState>({ kind: 'none' })
/** Index of the case looked at. */
export const chosenCase = signal(0)

/** The design has been changed since it was studied. */
export const studyStale = computed(() => study.value.kind === 'done' && study.value.of !== design.value)

let asked: RawObject | undefined

const engine = sideEngine(
  (data) => {
    if (data.kind === 'study-progress') study.value = { kind: 'running', fraction: data.fraction }
    else if (data.kind === 'study-refused') study.value = { kind: 'refused', reason: data.reason }
    else if (data.kind === 'study' && asked) {
      chosenCase.value = Math.min(chosenCase.value, Math.max(0, data.study.cases.length - 1))
      study.value = { kind: 'done', study: data.study, of: asked }
    }
  },
  (reason) => {
    study.value = { kind: 'refused', reason }
  },
)

export function startStudy(): void {
  asked = design.value
  const text = JSON.stringify(asked)
  study.value = { kind: 'running', fraction: 0 }
  engine.ask((id) => ({ kind: 'study', id, text }))
}

export function stopStudy(): void {
  engine.ask(() => ({ kind: 'study-stop' }))
  study.value = { kind: 'none' }
}
