/** What the rules say of a chain, for the page and for what goes on from it: fetched once the first numbers stand. */
import { concernsOf } from '../src/analysis/concerns.ts'
import type { UnjudgedChain } from '../src/analysis/unjudged-chain.ts'
import type { Chain } from '../src/index.ts'
import { type ShownConcern, shownConcern } from './shown-concern.ts'

export function judgement(chain: UnjudgedChain): {
  readonly judged: Chain
  readonly concerns: readonly ShownConcern[]
} {
  const judged: Chain = { ...chain, concerns: concernsOf(chain) }
  return { judged, concerns: judged.concerns.map((concern) => shownConcern(judged, concern)) }
}
