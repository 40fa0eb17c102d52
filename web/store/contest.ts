/** The contest of the present design with another: what was asked, how far it is, and its report. */
import { computed, signal } from '@preact/signals'
import type { ContestRule } from '../../src/index.ts'
import type { ContestReport } from '../../src/output/contest-report.ts'
import { document as design } from './design.ts'
import { type Example, examples } from './example.ts'
import { isRawObject, type RawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

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

let asked: RawObject | undefined

const engine = sideEngine(
  (data) => {
    if (data.kind === 'contest-progress') contest.value = { kind: 'running', fraction: data.fraction }
    else if (data.kind === 'contest-refused') contest.value = { kind: 'refused', reason: data.reason }
    else if (data.kind === 'contest' && asked)
      contest.value = { kind: 'done', report: data.report, of: asked }
  },
  (reason) => {
    contest.value = { kind: 'refused', reason }
  },
)

export function holdContest(): void {
  const other = rival.value
  if (!other) return
  asked = design.value
  contest.value = { kind: 'running', fraction: 0 }
  const texts = [asked, other.document].map((document) => JSON.stringify(document))
  engine.ask((id) => ({ kind: 'contest', id, texts, rule: contestRule.value }))
}

export function stopContest(): void {
  engine.ask(() => ({ kind: 'contest-stop' }))
  contest.value = { kind: 'none' }
}
