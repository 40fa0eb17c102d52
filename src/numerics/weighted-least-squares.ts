/** Linear least squares with a standard deviation for every observation. */
import { refuse, requireFinite, requireLength, requirePositive } from '../refusal/require.ts'
import { linearSolve } from './linear-solve.ts'

export interface LeastSquares {
  readonly estimate: Float64Array
  /** Unknown × unknown, row by row, from the deviations alone (not scaled by the fit). */
  readonly covariance: Float64Array
  /** Observed minus fitted, over the observation's deviation. */
  readonly residuals: Float64Array
  /** Share of each observation's own weight in its fitted value, 0 … 1. */
  readonly leverages: Float64Array
  /** Unknown × observation, row by row: how far the estimate moves with an observation. */
  readonly gains: Float64Array
}

/**
 * The x that makes Σ ((y − A x)/σ)² least; A is observations × unknowns, row by row (JCGM 100:2008, H.3). A prior is
 * one more observation of an unknown. Unknowns are scaled to like size before the normal equations are solved.
 */
export function weightedLeastSquares(
  A: ArrayLike<number>,
  y: ArrayLike<number>,
  σ: ArrayLike<number>,
): LeastSquares {
  const m = y.length
  if (m === 0 || A.length % m !== 0 || A.length === 0)
    refuse({ name: 'A', condition: 'a whole number of columns', value: A.length, code: 'wrong-length' })
  requireLength('σ', σ, m)
  const n = A.length / m
  const W = new Float64Array(m * n)
  const scale = new Float64Array(n)
  for (let i = 0; i < m; i++) {
    requirePositive(`σ[${i}]`, σ[i]!)
    requireFinite(`y[${i}]`, y[i]!)
    for (let k = 0; k < n; k++) {
      requireFinite(`A[${i * n + k}]`, A[i * n + k]!)
      W[i * n + k] = A[i * n + k]! / σ[i]!
      scale[k] = Math.hypot(scale[k]!, W[i * n + k]!)
    }
  }
  for (let k = 0; k < n; k++)
    if (!(scale[k]! > 0))
      refuse({ name: `unknown ${k}`, condition: 'seen by an observation', value: 0, code: 'no-convergence' })
  const normal = new Float64Array(n * n)
  for (let i = 0; i < m; i++)
    for (let k = 0; k < n; k++)
      for (let l = 0; l < n; l++)
        normal[k * n + l]! += (W[i * n + k]! / scale[k]!) * (W[i * n + l]! / scale[l]!)
  const covariance = new Float64Array(n * n)
  for (let l = 0; l < n; l++) {
    const unit = new Float64Array(n)
    unit[l] = 1
    const column = linearSolve(normal, unit)
    for (let k = 0; k < n; k++) covariance[k * n + l] = column[k]! / scale[k]! / scale[l]!
  }
  const gains = new Float64Array(n * m)
  for (let k = 0; k < n; k++)
    for (let i = 0; i < m; i++) {
      let sum = 0
      for (let l = 0; l < n; l++) sum += covariance[k * n + l]! * W[i * n + l]!
      gains[k * m + i] = sum / σ[i]!
    }
  const estimate = Float64Array.from({ length: n }, (_, k) => {
    let sum = 0
    for (let i = 0; i < m; i++) sum += gains[k * m + i]! * y[i]!
    return sum
  })
  const residuals = new Float64Array(m)
  const leverages = new Float64Array(m)
  for (let i = 0; i < m; i++) {
    let fitted = 0
    let own = 0
    for (let k = 0; k < n; k++) {
      fitted += A[i * n + k]! * estimate[k]!
      own += A[i * n + k]! * gains[k * m + i]!
    }
    residuals[i] = (y[i]! - fitted) / σ[i]!
    leverages[i] = Math.min(1, Math.max(0, own))
  }
  return { estimate, covariance, residuals, leverages, gains }
}
