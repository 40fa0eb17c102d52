/** How far the guesses in a design let its results be off together, which of them bear it, and what to measure next. */
import { pairShares } from '../numerics/pair-share.ts'
import { sampleQuantile, sortedSample } from '../numerics/sample-quantile.ts'
import { basisVariable, varianceShares } from '../numerics/variance-share.ts'
import type { Chain } from './compute.ts'
import { type NextMeasurement, nextMeasurements } from './measure-next.ts'
import { sampleOf } from './sampled-chain.ts'
import { type AskedWinds, type SpreadOutput, spreadOutputNames, usefulCurve } from './spread-output.ts'
import { type SpreadOptions, type SpreadPlan, spreadPlan } from './spread-plan.ts'
import { drawWidth, plainOutputs, spreadSamples } from './spread-sample.ts'
import type { Steps } from './step.ts'

export interface SpreadCause {
  /** Where the guess stands in the document; an assumption of the engine has a plain name. */
  readonly path: string
  /** Share of the variance that it bears alone, 0…1. */
  readonly share: number
}

export interface ResultSpread {
  /** With every guess at its best value. */
  readonly value: number
  /** Nine of ten draws lie between; as many below as above. Draws in which it never happens are left out. */
  readonly low: number
  readonly high: number
  readonly median: number
  /** Half of the distance between low and high; 0 where no guess moves it. */
  readonly spread: number
  /** Share of the draws in which the thing never happens (no current, no start). */
  readonly never: number
  /** The largest first; causes under one per cent are left out. */
  readonly causes: readonly SpreadCause[]
  /** Share of the variance that guesses bear only together, or in shapes finer than the fit. */
  readonly together: number
  /** The two that do most together; undefined where no pair bears one per cent of the variance. */
  readonly pair: readonly [string, string] | undefined
  /** Worth measuring, by gain over effort. */
  readonly next: readonly NextMeasurement[]
}

export type Spreads = Readonly<Record<SpreadOutput, ResultSpread>>

export interface SpreadStudy {
  readonly results: Spreads
  readonly samples: number
  /** Draws of the costly parts among them. */
  readonly states: number
  readonly seed: number
  /** Everything that was drawn. */
  readonly drawn: readonly string[]
  readonly asked: AskedWinds
  /** Undefined where the draws were not asked for it. */
  readonly curve: SpreadCurve | undefined
}

/** Useful power wind by wind: nine of ten draws lie between low and high. */
export interface SpreadCurve {
  /** [m/s] */
  readonly wind: Float64Array
  /** [W] */
  readonly low: Float64Array
  readonly median: Float64Array
  readonly high: Float64Array
}

const leastShare = 0.01

/** Ends of the interval: as many draws below as above. */
const tail = 0.05

/** Fewer finite draws than this tell no interval. */
const fewestFinite = 8

/** Highest order of an input's own effect that so many draws can carry. */
function degreeFor({ drawn, stateDimensions, perState }: SpreadPlan, finite: number): number {
  // nothing that a state holds is drawn: no number of states is too small
  const states = stateDimensions === 0 ? finite : finite / perState
  const fits = (degree: number) =>
    2 * (1 + degree * drawn.length) <= finite && 2 * (1 + degree * stateDimensions) <= states
  return [3, 2, 1].find(fits) ?? 0
}

/** Low end, median and high end of nine in ten. */
export const intervalEnds = (values: ArrayLike<number>): readonly [number, number, number] => {
  const sorted = sortedSample(values)
  const at = (p: number) => sampleQuantile(sorted, p).value
  return [at(tail), at(0.5), at(1 - tail)]
}

const unmoved = (value: number, never: number): ResultSpread => ({
  value,
  low: value,
  high: value,
  median: value,
  spread: 0,
  never,
  causes: [],
  together: 0,
  pair: undefined,
  next: [],
})

/** Which draws bear a result's scatter, and what is left of it when one guess is measured. */
function causesOf(plan: SpreadPlan, rows: readonly number[], values: Float64Array) {
  const { drawn, points, stateDimensions, samples, perState } = plan
  const d = drawn.length
  const degree = degreeFor(plan, rows.length)
  if (degree === 0) return undefined
  const own = Float64Array.from({ length: rows.length * d }, (_, k) => {
    const n = Math.floor(k / d)
    return points[rows[n]! * d + (k - n * d)]!
  })
  const bases = drawn.map(({ basis }) => basis)
  const x = own.map((u, k) => basisVariable(bases[k % d]!, u))
  const { shares, rest, variance, effect } = varianceShares(own, values, bases, degree)
  const mean = values.reduce((sum, value) => sum + value / values.length, 0)
  const residual = values.map((value, n) =>
    bases.reduce((left, _, k) => left - effect(k, x[n * d + k]!), value - mean),
  )
  const apart = (_: number, j: number) => (j < stateDimensions ? samples / perState : rows.length)
  const [pair] = variance > 0 ? pairShares(own, residual, { bases, variance, apart }) : []
  const intervalWith = (input: number, part: number): readonly [number, number] => {
    // the measurement finds the best value: every draw keeps `part` of its way from there
    const moved = values.map((value, n) => {
      const from = x[n * d + input]!
      return value - effect(input, from) + effect(input, part * from)
    })
    const [low, , high] = intervalEnds(moved)
    return [low, high]
  }
  return {
    shares,
    rest,
    pair: pair !== undefined && pair.share >= leastShare ? pair : undefined,
    intervalWith,
  }
}

function curveOf(chain: Chain, plan: SpreadPlan, samples: Float64Array): SpreadCurve | undefined {
  const { curveWinds, drawn } = plan
  if (curveWinds.length === 0) return undefined
  const width = drawWidth(plan)
  const first = width - curveWinds.length
  const plain = usefulCurve({ chain: sampleOf(chain) }, curveWinds)
  const ends = curveWinds.map((_, k) =>
    drawn.length === 0
      ? ([plain[k]!, plain[k]!, plain[k]!] as const)
      : intervalEnds(Float64Array.from({ length: plan.samples }, (_, n) => samples[n * width + first + k]!)),
  )
  const at = (end: 0 | 1 | 2) => Float64Array.from(ends, (each) => each[end])
  return { wind: Float64Array.from(curveWinds), low: at(0), median: at(1), high: at(2) }
}

/** The results' spreads from the samples of a plan, all of them in their order. */
export function spreadStudyFrom(chain: Chain, plan: SpreadPlan, samples: Float64Array): SpreadStudy {
  const { drawn } = plan
  const plain = plainOutputs(chain, plan)
  const count = drawWidth(plan)
  const results = spreadOutputNames.map((name, k): [SpreadOutput, ResultSpread] => {
    const value = plain[k]!
    const column = Float64Array.from({ length: plan.samples }, (_, n) => samples[n * count + k]!)
    const rows = Array.from(column.keys()).filter((n) => Number.isFinite(column[n]!))
    const never = 1 - rows.length / plan.samples
    const values = Float64Array.from(rows, (n) => column[n]!)
    if (drawn.length === 0) return [name, unmoved(value, Number.isFinite(value) ? 0 : 1)]
    if (values.length < fewestFinite) return [name, unmoved(value, never)]
    // a result that nothing moves differs from itself by rounding
    const most = values.reduce((far, each) => Math.max(far, Math.abs(each - values[0]!)), 0)
    if (most <= 1e-9 * Math.abs(values[0]!)) return [name, unmoved(value, never)]
    const [low, median, high] = intervalEnds(values)
    const found = causesOf(plan, rows, values)
    const causes = drawn
      .map(({ path }, n) => ({ path, share: found?.shares[n] ?? 0 }))
      .filter(({ share }) => share >= leastShare)
      .sort((one, other) => other.share - one.share)
    const pair = found?.pair?.pair
    return [
      name,
      {
        value,
        low,
        high,
        median,
        spread: (high - low) / 2,
        never,
        causes,
        together: found?.rest ?? 0,
        pair: pair === undefined ? undefined : [drawn[pair[0]]!.path, drawn[pair[1]]!.path],
        next:
          found === undefined
            ? []
            : nextMeasurements(
                drawn.map(({ guess }) => guess),
                [low, high],
                found.intervalWith,
              ),
      },
    ]
  })
  return {
    results: Object.fromEntries(results) as unknown as Spreads,
    samples: plan.samples,
    states: plan.samples / plan.perState,
    seed: plan.seed,
    drawn: drawn.map(({ path }) => path),
    asked: plan.asked,
    curve: curveOf(chain, plan, samples),
  }
}

/** The results' spreads alone. */
export function* spreadsOf(chain: Chain, options: SpreadOptions = {}): Steps<Spreads> {
  return (yield* spreadStudy(chain, options)).results
}

/**
 * All guesses drawn at once from one scrambled Sobol' sequence and put through the chain, thresholds included: the same
 * digits for the same seed. Yields the fraction done.
 */
export function* spreadStudy(chain: Chain, options: SpreadOptions = {}): Steps<SpreadStudy> {
  const plan = spreadPlan(chain, options)
  const samples =
    plan.drawn.length === 0
      ? new Float64Array(plan.samples * drawWidth(plan))
      : yield* spreadSamples(chain, plan, [0, plan.samples])
  return spreadStudyFrom(chain, plan, samples)
}
