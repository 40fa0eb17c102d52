/** What a concern is, and what a rule that raises one may look at. */
import type { SafetyClass } from '../../machine/safety-class.ts'
import type { Change } from '../remedy/change.ts'
import type { UnjudgedChain } from '../unjudged-chain.ts'

/** blocking: the machine must not be signed off for its class; warning: it will disappoint or wear; note: know it. */
export const severities = ['blocking', 'warning', 'note'] as const
export type Severity = (typeof severities)[number]

/** A change of the document that can be tried on the whole chain. */
export interface TriableRemedy {
  /** What to do, in a sentence; the sizes that the trial finds are told beside it. */
  readonly words: string
  /** Ever stronger steps of one kind of change; the gentlest that settles the concern is looked for. */
  readonly ladder: readonly (readonly Change[])[]
}

/** A sentence is advice that no document can hold. */
export type ConcernRemedy = string | TriableRemedy

export const remedyWords = (remedy: ConcernRemedy): string =>
  typeof remedy === 'string' ? remedy : remedy.words

/** The quantity that a rule judges, told whether it objects or not. */
export interface ConcernMeasure {
  readonly name: string
  readonly value: number
  readonly limit: number
  /** Suffix of the unit of both. */
  readonly unit: string
  /** The side of the limit on which all is well. */
  readonly sound: 'below' | 'above'
}

/** What a builder has read and set against a concern. */
export interface ConcernAnswer {
  readonly note: string
  readonly file: string | undefined
  readonly date: string | undefined
  /** Why it does not hold, in a sentence; undefined where it does. */
  readonly unfit: string | undefined
}

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
  readonly remedies: readonly ConcernRemedy[]
  /** The newest answer in the document; undefined where it holds none. */
  readonly answer?: ConcernAnswer
}

/** Counts for the sign-off: raised, and no answer that holds. */
export const isOpen = ({ answer }: Pick<Concern, 'answer'>): boolean =>
  answer === undefined || answer.unfit !== undefined

/** A concern without what only the page or another program adds: its remedies in words. */
export const plainConcern = ({ code, severity, path, what, why, figures, remedies }: Concern) => ({
  code,
  severity,
  path,
  what,
  why,
  figures,
  remedies: remedies.map(remedyWords),
})

/** All that a rule may look at. */
export type ChainView = UnjudgedChain

export interface ConcernRule {
  readonly code: string
  /** One line for the page of concerns. */
  readonly title: string
  /** What the rule asks and where its limit comes from. */
  readonly basis: string
  readonly judge: (chain: ChainView) => Concern | undefined
  /** Undefined where the rule asks for a fact and not for an amount; a rule whose remedies are tried has one. */
  readonly measure?: (chain: ChainView) => ConcernMeasure | undefined
  /** The reading that settles it, in a sentence; undefined where no reading can, as for counts that do not go together. */
  readonly answeredBy?: string
}

/** blocking in the given classes, else a warning. */
export const severityFor = (chain: ChainView, blockedClasses: readonly SafetyClass[]): Severity =>
  blockedClasses.includes(chain.machine.safetyClass) ? 'blocking' : 'warning'
