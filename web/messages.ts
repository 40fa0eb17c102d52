/** What the page and its worker say to each other. */
import type { FieldDescription, FormField, SpreadStudy, Worth } from '../src/index.ts'
import type { ToJob } from './job/plan.ts'
import type { ShownConcern } from './shown-concern.ts'
import type { SightName } from './sight.ts'
import type { Snapshot, WindSnapshot } from './snapshot.ts'

export type ToWorker =
  /** The raw text of the document; a newer one supersedes it. */
  | { readonly kind: 'edit'; readonly id: number; readonly text: string }
  /** Another row of the last complete result is looked at. */
  | { readonly kind: 'wind'; readonly row: number }
  /** The numbers of that edit have been painted; what follows them may be worked out, at this row first. */
  | { readonly kind: 'painted'; readonly id: number; readonly row: number }
  /** The pictures in sight: what they are drawn of is told of this result and of those to come. */
  | { readonly kind: 'sights'; readonly names: readonly SightName[] }
  | ToJob

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

/** What the engine of the page says; what one says of a job is told beside the jobs. */
export type FromWorker =
  /** Every field that any design may have; sent once. */
  | { readonly kind: 'fields'; readonly fields: readonly FieldDescription[] }
  /** Only where the fields are others than those told last. */
  | { readonly kind: 'form'; readonly form: readonly FormField[] }
  | { readonly kind: 'progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'faults'; readonly id: number; readonly faults: readonly ShownFault[] }
  /** The parts that are not as in the result told before, all of them at first. */
  | { readonly kind: 'result'; readonly id: number; readonly changed: Partial<Snapshot> }
  /** What the rules say of that result. */
  | { readonly kind: 'concerns'; readonly id: number; readonly concerns: readonly ShownConcern[] }
  | { readonly kind: 'wind'; readonly id: number; readonly wind: WindSnapshot }
  | { readonly kind: 'sight'; readonly id: number; readonly name: SightName; readonly drawn: unknown }
  /** How far the guesses let the result of that edit be off; follows it after a while. */
  | { readonly kind: 'spread-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'spreads'; readonly id: number; readonly study: SpreadStudy; readonly last: boolean }
  /** The need of the design against its year, where it names one; follows it after a while. */
  | { readonly kind: 'worth'; readonly id: number; readonly worth: Worth }
  /** The engine failed in a way that no rule foresaw. */
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string }
