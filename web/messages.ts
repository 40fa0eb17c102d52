/** What the page and its worker say to each other. */
import type { FieldDescription, FormField, Spreads } from '../src/index.ts'
import type { Snapshot, WindSnapshot } from './snapshot.ts'

export type ToWorker =
  /** The raw text of the document; a newer one supersedes it. */
  | { readonly kind: 'edit'; readonly id: number; readonly text: string }
  /** Another row of the last complete result is looked at. */
  | { readonly kind: 'wind'; readonly row: number }

/** A fault as the page shows it. */
export interface ShownFault {
  readonly path: string
  readonly condition: string
  readonly received: string
  readonly code: string
  readonly nearest?: string
  /** The whole sentence in the wording of the house. */
  readonly text: string
}

export type FromWorker =
  /** Every field that any design may have; sent once. */
  | { readonly kind: 'fields'; readonly fields: readonly FieldDescription[] }
  | { readonly kind: 'form'; readonly id: number; readonly form: readonly FormField[] }
  | { readonly kind: 'progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'faults'; readonly id: number; readonly faults: readonly ShownFault[] }
  | { readonly kind: 'result'; readonly id: number; readonly snapshot: Snapshot }
  | { readonly kind: 'wind'; readonly id: number; readonly wind: WindSnapshot }
  /** How far the guesses let the result of that edit be off; follows it after a while. */
  | { readonly kind: 'spreads'; readonly id: number; readonly spreads: Spreads }
  /** The engine failed in a way that no rule foresaw. */
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string }
