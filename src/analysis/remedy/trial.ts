/** A remedy tried on the real chain: a changed document, parsed, computed and weighed against the one it came from. */
import type { Design } from '../../machine/design.ts'
import { faultText } from '../../machine/fault.ts'
import { parseDesign } from '../../machine/parse.ts'
import { resolveDesign } from '../../machine/resolve.ts'
import { Refusal } from '../../refusal/require.ts'
import { type Chain, chainOf } from '../compute.ts'
import type { Steps } from '../step.ts'
import { type Change, withChanges } from './change.ts'
import { type MatchFigures, matchFigures } from './figures.ts'

export type RemedyKind =
  | 'gap'
  | 'turns'
  | 'connection'
  | 'star-delta switch'
  | 'cable'
  | 'converter'
  | 'magnets'
  | 'blade size'
  | 'blade shape'
  | 'series resistance'

export interface Attempt {
  readonly changes: readonly Change[]
}

/** An attempt that makes a possible machine. */
export interface Trial extends Attempt {
  readonly design: Design
  readonly figures: MatchFigures
}

export interface RemedyContext {
  readonly design: Design
  readonly chain: Chain
  /** Wind in which machines are compared [m/s]. */
  readonly wind: number
  readonly figures: MatchFigures
}

export interface RemedyRule {
  readonly kind: RemedyKind
  /** Why this kind is not for this machine, in a sentence; undefined where it is. */
  readonly unfit: (context: RemedyContext) => string | undefined
  /** The best attempt of its kind, or why none is possible. */
  readonly search: (context: RemedyContext) => Steps<Trial | string>
}

/** Warnings that say the machine cannot be put together: no remedy may bring them. */
const notBuildable = ['gap-stack', 'wire-fit'] as const

/** What stands against an attempt; undefined where nothing does. */
function objection(before: MatchFigures, after: MatchFigures): string | undefined {
  const added = after.blocking.find((code) => !before.blocking.includes(code))
  if (added !== undefined) return `it brings the blocking concern ${added}`
  const tight = notBuildable.find((code) => after.warnings.includes(code) && !before.warnings.includes(code))
  return tight === undefined ? undefined : `it brings the concern ${tight}`
}

/** The trial of an attempt, or why it is none. */
export function* tried(context: RemedyContext, { changes }: Attempt): Steps<Trial | string> {
  const parsed = parseDesign(withChanges(context.design, changes))
  if (!parsed.ok) return faultText(parsed.faults[0]!)
  try {
    const chain = yield* chainOf(resolveDesign(parsed.design), { previous: context.chain })
    const figures = matchFigures(chain, context.wind)
    return objection(context.figures, figures) ?? { changes, design: parsed.design, figures }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return error.message
  }
}

/** By what attempts of one kind are chosen: the energy of a year. */
export const worth = (trial: Trial | string | undefined): number =>
  trial === undefined || typeof trial === 'string' ? Number.NEGATIVE_INFINITY : trial.figures.energy
