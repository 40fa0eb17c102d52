/** How sure the difference between two machines is: the guesses that both share are off by the same in both. */
import type { Chain } from './compute.ts'
import { workshopMargin } from './fair-contest.ts'
import { intervalEnds } from './spread.ts'
import { type SpreadOutput, spreadOutputNames } from './spread-output.ts'
import { type Drawn, nestedPoints, type SpreadPlan, spreadPlan, twoStates } from './spread-plan.ts'
import { plainOutputs, spreadSamples } from './spread-sample.ts'
import { type Steps, within } from './step.ts'

/**
 * told: nine of ten draws lie on one side, by more than hand-made machines of one drawing differ; small: on one side, but
 * by less than that; open: on both sides; none: nothing differs in any draw.
 */
export type DifferenceVerdict = 'told' | 'small' | 'open' | 'none'

export interface DifferenceSpread {
  /** With every guess at its best value: the second over the first. */
  readonly difference: number
  /** Nine of ten draws of the difference lie between; draws in which one of both never happens are left out. */
  readonly low: number
  readonly high: number
  /** Half of the distance between low and high, and the same of each machine alone. */
  readonly spread: number
  readonly alone: readonly [from: number, to: number]
  /** Share of the draws in which it never happens in one of both. */
  readonly never: number
  readonly verdict: DifferenceVerdict
}

export interface PairedSpread {
  readonly results: Readonly<Record<SpreadOutput, DifferenceSpread>>
  readonly samples: number
  /** Guesses that move both together, and those that move one alone. */
  readonly shared: readonly string[]
  readonly own: readonly string[]
}

export interface PairedOptions {
  /** A power of two; where none is asked for, 128. */
  readonly samples?: number
  readonly seed?: number
}

const usualPairs = 128

/**
 * Two documents of one machine, something changed between them: a guess that stands unchanged in both is one fact of the
 * world. That of the winding and its cooling too, unlike between rival machines, as long as it is the same kind of winding.
 */
function factOf({ guess, path }: Drawn, { machine }: Chain): string {
  if (guess === undefined) return path
  if (guess.fact !== undefined) return guess.fact
  const { shape, value, halfWidth } = guess
  return JSON.stringify([
    path,
    shape,
    value,
    halfWidth,
    machine.stator.winding.kind,
    machine.rotor.arrangement,
  ])
}

interface Side {
  readonly chain: Chain
  readonly plan: SpreadPlan
  readonly facts: readonly string[]
}

function sideOf(chain: Chain, options: Required<PairedOptions>): Side {
  const plan = spreadPlan(chain, options)
  return { chain, plan, facts: plan.drawn.map((drawn) => factOf(drawn, chain)) }
}

/** Both plans on one set of points: a fact has one column, held still for a state where either machine needs it so. */
function pairedPlans(sides: readonly [Side, Side], seed: number): readonly [SpreadPlan, SpreadPlan] {
  const [{ plan: one }, { plan: other }] = sides
  const still = new Set(sides.flatMap(({ plan, facts }) => facts.slice(0, plan.stateDimensions)))
  const all = new Set([...still, ...sides.flatMap(({ facts }) => facts)])
  const columns = new Map([...all].map((fact, k) => [fact, k]))
  const samples = one.samples
  const perState = Math.min(one.perState, other.perState)
  const dimensions = columns.size
  const common = nestedPoints({ samples, perState, seed, dimensions, state: still.size })
  const planOf = ({ plan, facts }: Side): SpreadPlan => ({
    ...plan,
    perState,
    asked: other.asked,
    points: Float64Array.from({ length: samples * facts.length }, (_, k) => {
      const n = Math.floor(k / facts.length)
      return common[n * dimensions + columns.get(facts[k - n * facts.length]!)!]!
    }),
  })
  return [planOf(sides[0]), planOf(sides[1])]
}

/** Warmth counts from the air's. */
const warmths: ReadonlySet<SpreadOutput> = new Set(['copperTemperature', 'hottestCopper'])

/** More draws in which it never happens than this leave the difference open. */
const mostNever = 0.1

/** Rounding apart, the same in both. */
const alike = (a: number, b: number): boolean => a === b || Math.abs(a - b) <= 1e-9 * Math.abs(a)

/** `from` and `to` of one result. */
type Both = readonly [number, number]

function verdictOf(pairs: readonly Both[], [low, high]: Both, origin: number): DifferenceVerdict {
  if (pairs.every(([a, b]) => alike(a, b))) return 'none'
  if (!(low > 0 || high < 0)) return 'open'
  const [a, b] = pairs[0]!
  const size = Math.max(Math.abs(a - origin), Math.abs(b - origin))
  return Math.abs(b - a) > workshopMargin * size ? 'told' : 'small'
}

/** Where one of both never happens, whatever is drawn, or neither does. */
function verdictOfNever(pairs: readonly Both[]): DifferenceVerdict {
  if (pairs.every(([a, b]) => a === b)) return 'none'
  const [a, b] = pairs[0]!.map(Number.isFinite)
  return pairs.every((pair) => Number.isFinite(pair[0]) === a && Number.isFinite(pair[1]) === b)
    ? 'told'
    : 'open'
}

/** `pairs` begins with the best values; sizes count from `origin`. */
function differenceSpread(pairs: readonly Both[], samples: number, origin: number): DifferenceSpread {
  const [a, b] = pairs[0]!
  const difference = a === b ? 0 : b - a
  const both = pairs.slice(1).filter((pair) => pair.every(Number.isFinite))
  const never = 1 - both.length / samples
  if (both.length === 0 || !Number.isFinite(difference)) {
    const ends = { low: difference, high: difference }
    return { difference, ...ends, spread: 0, alone: [0, 0], never, verdict: verdictOfNever(pairs) }
  }
  const ends = (values: readonly number[]): Both => {
    const [low, , high] = intervalEnds(values)
    return [low, high]
  }
  const half = ([low, high]: Both) => (high - low) / 2
  const interval = ends(both.map(([one, other]) => other - one))
  return {
    difference,
    low: interval[0],
    high: interval[1],
    spread: half(interval),
    alone: [half(ends(both.map(([one]) => one))), half(ends(both.map(([, other]) => other)))],
    never,
    verdict: never > mostNever ? 'open' : verdictOf([pairs[0]!, ...both], interval, origin),
  }
}

/** Both machines put through the same draws of their guesses. Yields the fraction done. */
export function* pairedSpread(from: Chain, to: Chain, options: PairedOptions = {}): Steps<PairedSpread> {
  const { samples = usualPairs, seed = 1 } = options
  const sides = [sideOf(from, { samples, seed }), sideOf(to, { samples, seed })] as const
  const plans = pairedPlans(sides, seed)
  const count = spreadOutputNames.length
  const drawn: Float64Array[] = []
  for (const [k, { chain }] of sides.entries()) {
    const plan = plans[k]!
    const best = plainOutputs(chain, plan)
    // nothing to draw: every draw is the best value
    const values =
      plan.drawn.length === 0
        ? Float64Array.from({ length: samples * count }, (_, n) => best[n % count]!)
        : yield* within(spreadSamples(chain, plan, [0, samples]), k / 2, 1 / 2)
    drawn.push(Float64Array.from([...best, ...values]))
  }
  const [a, b] = drawn as [Float64Array, Float64Array]
  const results = spreadOutputNames.map((name, k) => {
    const pairs = Array.from({ length: samples + 1 }, (_, n): Both => [a[n * count + k]!, b[n * count + k]!])
    const origin = warmths.has(name) ? to.machine.site.ambient : 0
    return [name, differenceSpread(pairs, samples, origin)] as const
  })
  const pathsOf = ({ plan, facts }: Side, other: Side, together: boolean) =>
    plan.drawn.filter((_, k) => other.facts.includes(facts[k]!) === together).map(({ path }) => path)
  return {
    results: Object.fromEntries(results) as PairedSpread['results'],
    samples,
    shared: pathsOf(sides[1], sides[0], true).filter((path) => path !== twoStates),
    own: [...new Set([...pathsOf(sides[0], sides[1], false), ...pathsOf(sides[1], sides[0], false)])],
  }
}
