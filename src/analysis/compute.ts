/** The whole chain of one design, wind to battery, as plain data that a page or a terminal can show. */

import type { Design } from '../machine/design.ts'
import type { Machine } from '../machine/machine.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type Concern, concernsOf } from './concerns.ts'
import { finished, type Steps } from './step.ts'
import { type ChainOptions, type UnjudgedChain, unjudgedChain } from './unjudged-chain.ts'

/** Everything that was computed, functions included, and what the rules say of it: what pictures and pages draw from. */
export interface Chain extends UnjudgedChain {
  readonly concerns: readonly Concern[]
}

/** The chain, step by step: yields the fraction done and returns the result. */
export function* chainOf(machine: Machine, options: ChainOptions = {}): Steps<Chain> {
  const bare = yield* unjudgedChain(machine, options)
  return { ...bare, concerns: concernsOf(bare) }
}

/** The chain of a design in one go. */
export const computeDesign = (design: Design): Chain => finished(chainOf(resolveDesign(design)))
