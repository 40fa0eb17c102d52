/** Shares of variance by exchanging one input at a time between two samples: also what inputs do together. */
import { refuse, requireFinite } from '../refusal/require.ts'
import { sobolPoints } from './low-discrepancy.ts'
import { sampleMoments } from './sample-moment.ts'
import { sobolDimensions } from './sobol-direction.ts'

export interface PickFreezeShares {
  readonly variance: number
  /** Var(E[Y | X_i])/Var(Y): what input i does alone. */
  readonly first: Float64Array
  /** E[Var(Y | all but X_i)]/Var(Y): what would go if input i were known. */
  readonly total: Float64Array
}

/**
 * First-order and total Sobol' indices of `model`, a function of `dimensions` numbers strictly between 0 and 1, for
 * inputs of any kind of interplay.
 *
 *   S_i = mean f(B)(f(A_B^i) − f(A)) / V,   T_i = mean (f(A) − f(A_B^i))² / 2V
 *
 * (Saltelli et al. 2010, Computer Physics Communications 181, 259, table 2, b and f), A and B the halves of scrambled
 * Sobol' points of 2 × `dimensions`, A_B^i the point of A with coordinate i of B. The mean of f is taken off first,
 * which changes no expectation and lessens the scatter. Costs count × (dimensions + 2) calls of the model; up to
 * 32 dimensions.
 *
 * Accuracy: on Ishigami's function at count 4096 most seeds come within 0.005; about one in thirty misses by 0.02, as
 * some triples of dimensions are evenly filled only by longer sequences. Compare two seeds.
 */
export function pickFreezeShares(
  model: (u: Float64Array) => number,
  dimensions: number,
  count: number,
  seed: number,
): PickFreezeShares {
  const d = dimensions
  if (!Number.isInteger(d) || d < 1 || 2 * d > sobolDimensions)
    refuse({
      name: 'dimensions',
      condition: `a whole number from 1 to ${sobolDimensions / 2}`,
      value: d,
      code: 'not-a-choice',
    })
  const points = sobolPoints(count, 2 * d, seed)
  const call = (u: Float64Array): number => {
    const y = model(u)
    requireFinite('the model', y)
    return y
  }
  const both = new Float64Array(2 * count)
  for (let n = 0; n < count; n++) {
    both[n] = call(points.slice(2 * d * n, 2 * d * n + d))
    both[count + n] = call(points.slice(2 * d * n + d, 2 * d * (n + 1)))
  }
  const { mean, deviation } = sampleMoments(both)
  const first = new Float64Array(d)
  const total = new Float64Array(d)
  if (deviation <= 8 * Number.EPSILON * Math.abs(mean)) return { variance: 0, first, total }
  const mixed = new Float64Array(d)
  for (let n = 0; n < count; n++) {
    const a = (both[n]! - mean) / deviation
    const b = (both[count + n]! - mean) / deviation
    for (let i = 0; i < d; i++) {
      mixed.set(points.subarray(2 * d * n, 2 * d * n + d))
      mixed[i] = points[2 * d * n + d + i]!
      const change = (call(mixed) - mean) / deviation - a
      first[i]! += (b * change) / count
      total[i]! += (change * change) / (2 * count)
    }
  }
  return { variance: deviation * deviation, first, total }
}
