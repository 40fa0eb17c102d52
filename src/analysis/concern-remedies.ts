/** The remedies of concerns, tried on the whole chain: how far each gets, and what it costs or brings elsewhere. */
import type { Design } from '../machine/design.ts'
import { faultText } from '../machine/fault.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { Refusal } from '../refusal/require.ts'
import { type Chain, chainOf } from './compute.ts'
import {
  type Concern,
  type ConcernMeasure,
  concernRules,
  type Severity,
  severities,
  type TriableRemedy,
} from './concerns.ts'
import { type Change, withChanges } from './remedy/change.ts'
import { type MatchFigures, matchFigures } from './remedy/figures.ts'
import { gentlestStep } from './remedy/ladder-search.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'

/** What a machine comes to beside the concern that is looked at. */
export interface RemedyFigures extends MatchFigures {
  /** Of the wire, in the money of the document; undefined where no price is given. */
  readonly price: number | undefined
}

/** How a rule judges one machine. */
export interface Standing {
  /** Undefined where it does not object. */
  readonly severity: Severity | undefined
  readonly measure: ConcernMeasure | undefined
}

/** A concern that a remedy brings, takes along or makes graver or lighter. */
export interface ConcernShift {
  readonly code: string
  readonly before: Severity | undefined
  readonly after: Severity | undefined
}

/**
 * settles: gone, or only a note is left of what was more; softens: a lower severity; eases: as grave, but nearer to its
 * limit; no help: none of these; impossible: no step makes a machine.
 */
export const remedyOutcomes = ['settles', 'softens', 'eases', 'no help', 'impossible'] as const
export type RemedyOutcome = (typeof remedyOutcomes)[number]

export interface SkippedStep {
  readonly changes: readonly Change[]
  readonly reason: string
}

export interface TriedRemedy {
  readonly words: string
  readonly outcome: RemedyOutcome
  /** Of the gentlest step that gets as far as the best one; empty where none is possible. */
  readonly changes: readonly Change[]
  readonly after: Standing | undefined
  readonly figures: RemedyFigures | undefined
  /** Concerns that it brings or makes graver, the gravest first; and those that go or get lighter, this one aside. */
  readonly worse: readonly ConcernShift[]
  readonly better: readonly ConcernShift[]
  /** Steps that were met on the way and make no machine. */
  readonly skipped: readonly SkippedStep[]
}

export interface ConcernTrials {
  readonly concern: Concern
  readonly before: Standing
  /** The one to take first comes first. */
  readonly tried: readonly TriedRemedy[]
  /** What no document can hold. */
  readonly advice: readonly string[]
}

export interface ConcernRemedyReport {
  readonly name: string
  /** In which watts are compared [m/s]. */
  readonly wind: number
  readonly before: RemedyFigures
  readonly concerns: readonly ConcernTrials[]
}

export interface ConcernRemedyOptions {
  /** The chain of the design, where it is known. */
  readonly chain?: Chain
  /** Concerns whose remedies are tried; all without. */
  readonly codes?: readonly string[]
}

/** A possible machine with its changes: all that is kept of its chain. */
interface Trial {
  readonly severities: ReadonlyMap<string, Severity>
  readonly measures: ReadonlyMap<string, ConcernMeasure | undefined>
  readonly figures: RemedyFigures
}

const figuresOf = (chain: Chain, wind: number): RemedyFigures => ({
  ...matchFigures(chain, wind),
  price: chain.wound.price,
})

function trialOf(chain: Chain, wind: number, codes: readonly string[]): Trial {
  return {
    severities: new Map(chain.concerns.map(({ code, severity }) => [code, severity])),
    measures: new Map(
      codes.map((code) => [code, concernRules.find((rule) => rule.code === code)?.measure?.(chain)]),
    ),
    figures: figuresOf(chain, wind),
  }
}

const standing = ({ severities: of, measures }: Trial, code: string): Standing => ({
  severity: of.get(code),
  measure: measures.get(code),
})

/** 0 blocking … 3 not raised. */
const lightness = (severity: Severity | undefined): number =>
  severity === undefined ? severities.length : severities.indexOf(severity)

/** Beyond the limit, as a share of the limit or, where that is zero, of the larger value; zero within it. */
function excess(measure: ConcernMeasure | undefined, whole: number): number | undefined {
  if (measure === undefined || !Number.isFinite(measure.value)) return undefined
  const { value, limit, sound } = measure
  return Math.max(0, sound === 'below' ? value - limit : limit - value) / whole
}

/** Share of the excess that must go for a remedy to be said to ease. */
const leastEase = 0.05

function eases(before: ConcernMeasure | undefined, after: ConcernMeasure | undefined): boolean {
  if (before === undefined || after === undefined || before.unit !== after.unit) return false
  const from = excess(before, 1)
  const to = excess(after, 1)
  return from !== undefined && to !== undefined && from > 0 && to < from * (1 - leastEase)
}

export function outcomeOf(before: Standing, after: Standing): RemedyOutcome {
  const from = lightness(before.severity)
  const to = lightness(after.severity)
  if (to === severities.length || (to > from && after.severity === 'note')) return 'settles'
  if (to > from) return 'softens'
  return to === from && eases(before.measure, after.measure) ? 'eases' : 'no help'
}

const blocks = ({ after }: ConcernShift): boolean => after === 'blocking'

/** Worse than no help: graver than before. Half a step more where nothing else comes to block the class instead. */
function gainOf(before: Standing, after: Standing, moved: readonly ConcernShift[]): number {
  if (lightness(after.severity) < lightness(before.severity)) return -1
  const outcome = outcomeOf(before, after)
  const gain = remedyOutcomes.length - 1 - remedyOutcomes.indexOf(outcome)
  return gain >= gains.worthHalving && !moved.some(blocks) ? gain + 0.5 : gain
}

const gains = {
  settled: remedyOutcomes.length - 0.5,
  worthHalving: remedyOutcomes.length - 1 - remedyOutcomes.indexOf('softens'),
} as const

function shifts(before: Trial, after: Trial, except: string): ConcernShift[] {
  const codes = new Set([...before.severities.keys(), ...after.severities.keys()])
  codes.delete(except)
  return [...codes]
    .map((code) => ({ code, before: before.severities.get(code), after: after.severities.get(code) }))
    .filter((shift) => shift.before !== shift.after)
}

const byGravity = (of: (shift: ConcernShift) => Severity | undefined) => (a: ConcernShift, b: ConcernShift) =>
  lightness(of(a)) - lightness(of(b))

const count = (list: readonly ConcernShift[], severity: Severity): number =>
  list.filter(({ after }) => after === severity).length

/** Share of the year's energy within which two remedies cost alike: wire then decides. */
const alike = 0.005

/** Below this share of the year's energy a machine has not been helped but stopped: common practice, no source. */
const leastKept = 0.5

/** The one to take first: that gets farthest, brings the fewest blocking concerns and warnings, and costs least. */
function ranked(tried: readonly TriedRemedy[], before: RemedyFigures): TriedRemedy[] {
  const energy = ({ figures }: TriedRemedy) =>
    before.energy > 0 ? Math.round((figures?.energy ?? 0) / (alike * before.energy)) : 0
  const sound = ({ outcome, worse, figures }: TriedRemedy) =>
    outcome === 'settles' &&
    count(worse, 'blocking') === 0 &&
    (figures?.energy ?? 0) >= leastKept * before.energy
  return [...tried].sort((a, b) => {
    return (
      Number(sound(b)) - Number(sound(a)) ||
      remedyOutcomes.indexOf(a.outcome) - remedyOutcomes.indexOf(b.outcome) ||
      count(a.worse, 'blocking') - count(b.worse, 'blocking') ||
      count(a.worse, 'warning') - count(b.worse, 'warning') ||
      energy(b) - energy(a) ||
      (a.figures?.copperMass ?? 0) - (b.figures?.copperMass ?? 0)
    )
  })
}

/** Chains of changed documents, each computed once: the same change may be a remedy of several concerns. */
function trials(design: Design, chain: Chain, wind: number, codes: readonly string[]) {
  const known = new Map<string, Trial | string>()
  return function* trial(changes: readonly Change[]): Steps<Trial | string> {
    const key = JSON.stringify(changes.map(({ path, to }) => [path, to]))
    const there = known.get(key)
    if (there !== undefined) return there
    const found = yield* made(changes)
    known.set(key, found)
    return found
  }
  function* made(changes: readonly Change[]): Steps<Trial | string> {
    const parsed = parseDesign(withChanges(design, changes))
    if (!parsed.ok) return faultText(parsed.faults[0]!)
    try {
      return trialOf(yield* chainOf(resolveDesign(parsed.design), { previous: chain }), wind, codes)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      return error.message
    }
  }
}

function* triedRemedy(
  { words, ladder }: TriableRemedy,
  {
    code,
    before,
    trial,
  }: { readonly code: string; readonly before: Trial; readonly trial: ReturnType<typeof trials> },
): Steps<TriedRemedy> {
  const was = standing(before, code)
  const skipped: SkippedStep[] = []
  const seen = new Map<number, Trial>()
  const { found } = yield* gentlestStep(ladder, gains, function* (place) {
    const result = yield* trial(ladder[place]!)
    if (typeof result === 'string') {
      skipped.push({ changes: ladder[place]!, reason: result })
      return undefined
    }
    seen.set(place, result)
    return { gain: gainOf(was, standing(result, code), shifts(before, result, code)) }
  })
  const after = found === undefined ? undefined : seen.get(found)
  if (found === undefined || after === undefined)
    return {
      words,
      outcome: 'impossible',
      changes: [],
      after: undefined,
      figures: undefined,
      worse: [],
      better: [],
      skipped,
    }
  const moved = shifts(before, after, code)
  return {
    words,
    outcome: outcomeOf(was, standing(after, code)),
    changes: ladder[found]!,
    after: standing(after, code),
    figures: after.figures,
    worse: moved
      .filter((shift) => lightness(shift.after) < lightness(shift.before))
      .sort(byGravity((shift) => shift.after)),
    better: moved
      .filter((shift) => lightness(shift.after) > lightness(shift.before))
      .sort(byGravity((shift) => shift.before)),
    skipped,
  }
}

/**
 * Every remedy that a document can hold, of every concern or of those named: the gentlest step that settles it, found
 * on the real chain. Yields the fraction done.
 */
export function* concernRemedies(
  design: Design,
  options: ConcernRemedyOptions = {},
): Steps<ConcernRemedyReport> {
  const first = options.chain === undefined ? 0.02 : 0
  const chain = options.chain ?? (yield* within(chainOf(resolveDesign(design)), 0, first))
  const { wind } = tellingWind(chain).row
  const concerns = chain.concerns.filter(
    ({ code }) => options.codes === undefined || options.codes.includes(code),
  )
  const codes = concerns.map(({ code }) => code)
  const before = trialOf(chain, wind, codes)
  const trial = trials(design, chain, wind, codes)
  const all = concerns.reduce(
    (sum, { remedies }) => sum + remedies.filter((each) => typeof each !== 'string').length,
    0,
  )
  let done = 0
  const reports: ConcernTrials[] = []
  for (const concern of concerns) {
    const { code, remedies } = concern
    const tried: TriedRemedy[] = []
    for (const remedy of remedies) {
      if (typeof remedy === 'string') continue
      const width = (1 - first) / all
      tried.push(yield* within(triedRemedy(remedy, { code, before, trial }), first + done * width, width))
      done++
    }
    reports.push({
      concern,
      before: standing(before, code),
      tried: ranked(tried, before.figures),
      advice: remedies.filter((each) => typeof each === 'string'),
    })
  }
  return { name: design.name, wind, before: before.figures, concerns: reports }
}
