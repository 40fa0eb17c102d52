/** What a concern is, and what a rule that raises one may look at. */
import type { SafetyClass } from '../../machine/purpose.ts'
import type { Chain } from '../compute.ts'

/** blocking: the machine must not be signed off for its class; warning: it will disappoint or wear; note: know it. */
export const severities = ['blocking', 'warning', 'note'] as const
export type Severity = (typeof severities)[number]

export interface Concern {
  /** Stable name: what a program may test for. */
  readonly code: string
  readonly severity: Severity
  /** Part of the document where it arises, for example `stator.winding.phases`. */
  readonly path: string
  /** What happens, in one sentence. */
  readonly what: string
  /** Why. */
  readonly why: string
  /** By how much: the number beside its limit, with units. */
  readonly figures: string
  /** What to do, the first remedy first. */
  readonly remedies: readonly string[]
}

/** All that a rule may look at. */
export type ChainView = Omit<Chain, 'concerns'>

export interface ConcernRule {
  readonly code: string
  /** One line for the page of concerns. */
  readonly title: string
  /** What the rule asks and where its limit comes from. */
  readonly basis: string
  readonly judge: (chain: ChainView) => Concern | undefined
}

/** blocking in the given classes, else a warning. */
export const severityFor = (chain: ChainView, blockedClasses: readonly SafetyClass[]): Severity =>
  blockedClasses.includes(chain.machine.safetyClass) ? 'blocking' : 'warning'
