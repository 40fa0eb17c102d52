/** The study of the present design with one defect at a time: how far it is, its result, the case looked at. */
import { computed, signal } from '@preact/signals'
import type { FaultStudy } from '../../src/index.ts'
import type { FromStudy, FromWorker, ToWorker } from '../messages.ts'
import { document as design } from './design.ts'
import type { RawObject } from './raw-document.ts'

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

/** An engine of its own, so that the page goes on answering edits; started when it is first needed. */
let worker: Worker | undefined
let newest = 0
let asked: RawObject | undefined

function heard({ data }: MessageEvent<FromWorker | FromStudy>): void {
  if (!('id' in data) || data.id !== newest) return
  if (data.kind === 'study-progress') study.value = { kind: 'running', fraction: data.fraction }
  else if (data.kind === 'study-refused') study.value = { kind: 'refused', reason: data.reason }
  else if (data.kind === 'study' && asked) {
    chosenCase.value = Math.min(chosenCase.value, Math.max(0, data.study.cases.length - 1))
    study.value = { kind: 'done', study: data.study, of: asked }
  }
}

function engine(): Worker {
  if (worker) return worker
  worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = heard
  worker.onerror = (event) => {
    worker = undefined
    study.value = { kind: 'refused', reason: event.message || 'The engine stopped for no reason given.' }
  }
  return worker
}

const ask = (message: ToWorker) => engine().postMessage(message)

export function startStudy(): void {
  newest += 1
  asked = design.value
  study.value = { kind: 'running', fraction: 0 }
  ask({ kind: 'study', id: newest, text: JSON.stringify(asked) })
}

export function stopStudy(): void {
  newest += 1
  ask({ kind: 'study-stop' })
  study.value = { kind: 'none' }
}
