/** The contest of the present design with another: what was asked, how far it is, and its report. */
import { computed, signal } from '@preact/signals'
import type { ContestRule } from '../../src/index.ts'
import type { ContestReport } from '../../src/output/contest-report.ts'
import type { FromContest, FromWorker, ToWorker } from '../messages.ts'
import { document as design } from './design.ts'
import { type Example, examples } from './example.ts'
import { isRawObject, type RawObject } from './raw-document.ts'

const files = import.meta.glob('../../examples/contest/*.json', { eager: true, import: 'default' })

/** Designs to compare with: those made for a contest first. */
export const rivals: readonly Example[] = [
  ...Object.entries(files).flatMap(([path, document]) =>
    isRawObject(document) ? [{ key: path, name: String(document['name'] ?? path), document }] : [],
  ),
  ...examples,
]

export interface Rival {
  readonly name: string
  readonly document: RawObject
}

export const rival = signal<Rival | undefined>(undefined)
export const contestRule = signal<ContestRule>('equal-copper-mass')

export type ContestState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly fraction: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly report: ContestReport; readonly of: RawObject }

export const contest = signal<ContestState>({ kind: 'none' })

/** The design has been changed since it was compared. */
export const contestStale = computed(() => contest.value.kind === 'done' && contest.value.of !== design.value)

/** An engine of its own, so that the page goes on answering edits; started when it is first needed. */
let worker: Worker | undefined
let newest = 0
let asked: RawObject | undefined

function heard({ data }: MessageEvent<FromWorker | FromContest>): void {
  if (!('id' in data) || data.id !== newest) return
  if (data.kind === 'contest-progress') contest.value = { kind: 'running', fraction: data.fraction }
  else if (data.kind === 'contest-refused') contest.value = { kind: 'refused', reason: data.reason }
  else if (data.kind === 'contest' && asked) contest.value = { kind: 'done', report: data.report, of: asked }
}

function engine(): Worker {
  if (worker) return worker
  worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = heard
  worker.onerror = (event) => {
    worker = undefined
    contest.value = { kind: 'refused', reason: event.message || 'The engine stopped for no reason given.' }
  }
  return worker
}

const ask = (message: ToWorker) => engine().postMessage(message)

export function holdContest(): void {
  const other = rival.value
  if (!other) return
  newest += 1
  asked = design.value
  contest.value = { kind: 'running', fraction: 0 }
  const texts = [asked, other.document].map((document) => JSON.stringify(document))
  ask({ kind: 'contest', id: newest, texts, rule: contestRule.value })
}

export function stopContest(): void {
  newest += 1
  ask({ kind: 'contest-stop' })
  contest.value = { kind: 'none' }
}
