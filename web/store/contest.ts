/** The contest of the present design with another: what was asked, how far it is, and its report. */
import { computed, signal } from '@preact/signals'
import type { ContestRule } from '../../src/index.ts'
import { document as design, openId } from './design.ts'
import { type Example, examples } from './example.ts'
import { jobView } from './job.ts'
import { isRawObject, type RawObject } from './raw-document.ts'
import { listed } from './shelf-list.ts'
import { tracings } from './tracing.ts'

const files = import.meta.glob('../../examples/contest/*.json', { eager: true, import: 'default' })

const contestExamples: readonly Example[] = Object.entries(files).flatMap(([path, document]) =>
  isRawObject(document) ? [{ key: path, name: String(document['name'] ?? path), document }] : [],
)

export interface Rival {
  /** Among those offered; a file has none. */
  readonly key?: string
  readonly name: string
  readonly document: RawObject
}

export interface RivalGroup {
  readonly of: 'tracings' | 'own designs' | 'examples'
  readonly rivals: readonly (Rival & { readonly key: string })[]
}

/** Whom the design can be set against: its tracings, other designs of the shelf, examples. */
export const rivalGroups = computed((): readonly RivalGroup[] => [
  {
    of: 'tracings',
    rivals: tracings.value.map(({ id, letter, name, document }) => ({
      key: `tracing ${id}`,
      name: `${letter}, ${name}`,
      document,
    })),
  },
  {
    of: 'own designs',
    rivals: (listed.value ?? [])
      .filter(({ id, asideAt }) => id !== openId.value && asideAt === undefined)
      .map(({ id, name, document }) => ({ key: `design ${id}`, name, document })),
  },
  // those made for a contest first
  { of: 'examples', rivals: [...contestExamples, ...examples.value] },
])

export const rival = signal<Rival | undefined>(undefined)
export const contestRule = signal<ContestRule>('equal-copper-mass')

const view = jobView('contest')
export const contest = view.state
export const contestStale = view.stale
export const stopContest = view.stop

export function holdContest(): void {
  const other = rival.value
  if (!other) return
  const texts = [design.value, other.document].map((document) => JSON.stringify(document))
  view.start({ texts, rule: contestRule.value })
}
