/** Whose doing the scatter of a result is: shares of its variance by input, from one sample. */
import { refuse, requireFinite, requireLength } from '../refusal/require.ts'
import { choleskyFactor, choleskySolve } from './cholesky.ts'
import { normalQuantile } from './normal-quantile.ts'
import { sampleMoments } from './sample-moment.ts'

/** Functions of one input, of mean 0 and mean square 1: Legendre in u, or Hermite in z(u) for normal inputs. */
export type ShareBasis = 'legendre' | 'hermite'

export interface VarianceShares {
  readonly variance: number
  /** First-order share of each input, 0 … 1. */
  readonly shares: Float64Array
  /** Standard error of each share, the unexplained rest taken as noise. */
  readonly standardErrors: Float64Array
  /** What no input explains alone: doings of several at once, and shapes finer than the degree. */
  readonly rest: number
  /** What an input alone does at x, the variable of its basis, in the output's unit and off its mean. */
  readonly effect: (input: number, x: number) => number
}

/** The variable of a basis: 2u − 1 from −1 to 1, or the normal z(u). */
export const basisVariable = (basis: ShareBasis, u: number): number =>
  basis === 'legendre' ? 2 * u - 1 : normalQuantile(u)

/** The first functions of a basis at x, written to `row` from `at`. */
function basisAt(basis: ShareBasis, x: number, degree: number, row: Float64Array, at: number): void {
  let before = 0
  let now = 1
  for (let k = 1; k <= degree; k++) {
    const next =
      basis === 'legendre'
        ? ((2 * k - 1) * x * now - (k - 1) * before) / k
        : (x * now - Math.sqrt(k - 1) * before) / Math.sqrt(k)
    before = now
    now = next
    row[at + k - 1] = basis === 'legendre' ? Math.sqrt(2 * k + 1) * now : now
  }
}

/** Entry (k, k) of the inverse of L Lᵀ: the square of column k of L⁻¹. */
function inverseDiagonal(L: Float64Array, n: number, k: number): number {
  const column = new Float64Array(n)
  let squares = 0
  for (let i = k; i < n; i++) {
    let sum = i === k ? 1 : 0
    for (let j = k; j < i; j++) sum -= L[i * n + j]! * column[j]!
    const value = sum / L[i * n + i]!
    column[i] = value
    squares += value * value
  }
  return squares
}

/**
 * First-order Sobol' indices S_i = Var(E[Y | X_i])/Var(Y) of independent inputs, from one sample that anyone drew.
 *
 *   Y ≈ c₀ + Σ_i Σ_k c_ik φ_k(u_i),   S_i = Σ_k c_ik² / V,   V = ΣΣ c_ik² + s²
 *
 * by least squares over all inputs together (the additive part of a polynomial chaos: Sudret 2008, Reliability
 * Engineering & System Safety 93, 964), each c² lessened by its own variance s² (ΦᵀΦ)⁻¹, s² = residual/(N − P),
 * P = 1 + dimensions × degree, and not below zero; the shares and the rest sum to 1.
 *
 * Accuracy: exact (rounding) for a sum of polynomials of the inputs (in u, or in z for `hermite`) up to `degree`, for
 * any points that determine it; otherwise about the standard error told, if N is some times P. Cost: N P²/2.
 *
 * @param points  u, point after point, each strictly between 0 and 1; the model sees each as the p of a quantile
 * @param outputs the model's result at each point
 * @param bases   one for each input
 */
export function varianceShares(
  points: ArrayLike<number>,
  outputs: ArrayLike<number>,
  bases: readonly ShareBasis[],
  degree = 3,
): VarianceShares {
  const N = outputs.length
  const d = bases.length
  if (!Number.isInteger(degree) || degree < 1 || degree > 20)
    refuse({ name: 'degree', condition: 'a whole number from 1 to 20', value: degree, code: 'not-a-choice' })
  if (d < 1) refuse({ name: 'bases', condition: 'at least 1 long', value: d, code: 'wrong-length' })
  const P = 1 + d * degree
  if (N <= P) refuse({ name: 'outputs', condition: `more than ${P} long`, value: N, code: 'wrong-length' })
  requireLength('points', points, N * d)
  const { mean, deviation } = sampleMoments(outputs)
  const shares = new Float64Array(d)
  const standardErrors = new Float64Array(d)
  // Scatter at the level of rounding has no causes to tell.
  if (deviation <= 8 * Number.EPSILON * Math.abs(mean))
    return { variance: 0, shares, standardErrors, rest: 0, effect: () => 0 }

  const rows = new Float64Array(N * P)
  const normal = new Float64Array(P * P)
  const right = new Float64Array(P)
  for (let n = 0; n < N; n++) {
    const row = rows.subarray(n * P, n * P + P)
    row[0] = 1
    for (let i = 0; i < d; i++) {
      const u = points[n * d + i]!
      requireFinite(`points[${n * d + i}]`, u)
      if (u <= 0) refuse({ name: 'a point', condition: 'above zero', value: u, code: 'below-minimum' })
      if (u >= 1) refuse({ name: 'a point', condition: 'below one', value: u, code: 'above-maximum' })
      basisAt(bases[i]!, basisVariable(bases[i]!, u), degree, row, 1 + i * degree)
    }
    const y = (outputs[n]! - mean) / deviation
    for (let k = 0; k < P; k++) {
      const f = row[k]!
      right[k]! += f * y
      for (let l = 0; l <= k; l++) normal[k * P + l]! += f * row[l]!
    }
  }
  const factor = choleskyFactor(normal, P)
  const c = choleskySolve(factor, right)
  let residual = 0
  for (let n = 0; n < N; n++) {
    let difference = (outputs[n]! - mean) / deviation
    for (let k = 0; k < P; k++) difference -= rows[n * P + k]! * c[k]!
    residual += difference * difference
  }
  const noise = residual / (N - P)
  let total = noise
  for (let i = 0; i < d; i++) {
    let sum = 0
    let scatter = 0
    for (let k = 1 + i * degree; k <= (i + 1) * degree; k++) {
      const own = noise * inverseDiagonal(factor, P, k)
      sum += c[k]! ** 2 - own
      scatter += 4 * c[k]! ** 2 * own + 2 * own * own
    }
    shares[i] = Math.max(0, sum)
    standardErrors[i] = Math.sqrt(scatter)
    total += shares[i]!
  }
  return {
    variance: total * deviation * deviation,
    shares: shares.map((share) => share / total),
    standardErrors: standardErrors.map((error) => error / total),
    rest: noise / total,
    effect: (input, x) => {
      const row = new Float64Array(degree)
      basisAt(bases[input]!, x, degree, row, 0)
      return deviation * row.reduce((sum, f, k) => sum + f * c[1 + input * degree + k]!, 0)
    },
  }
}
