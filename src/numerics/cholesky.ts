/** Symmetric positive definite systems of linear equations. */
import { refuse, requireLength } from '../refusal/require.ts'

/**
 * L with A = L Lᵀ, in the lower triangle of the returned n × n matrix, row by row; `A` is read there only and not
 * changed. Refuses a pivot that is not above zero.
 */
export function choleskyFactor(A: ArrayLike<number>, n: number): Float64Array {
  requireLength('matrix', A, n * n)
  const L = new Float64Array(A)
  for (let i = 0; i < n; i++) {
    const row = i * n
    for (let j = 0; j <= i; j++) {
      const other = j * n
      let sum = L[row + j]!
      for (let k = 0; k < j; k++) sum -= L[row + k]! * L[other + k]!
      if (j < i) L[row + j] = sum / L[other + j]!
      else {
        if (!(sum > 0 && sum < Number.POSITIVE_INFINITY))
          refuse({
            name: 'matrix',
            condition: `positive definite (pivot ${i} above zero)`,
            value: sum,
            code: 'no-convergence',
          })
        L[row + i] = Math.sqrt(sum)
      }
    }
  }
  return L
}

/** x with L Lᵀ x = b for a factor from `choleskyFactor`. */
export function choleskySolve(L: Float64Array, b: ArrayLike<number>): Float64Array {
  const n = b.length
  requireLength('factor', L, n * n)
  const x = new Float64Array(b)
  for (let i = 0; i < n; i++) {
    let sum = x[i]!
    for (let k = 0; k < i; k++) sum -= L[i * n + k]! * x[k]!
    x[i] = sum / L[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    const value = x[i]! / L[i * n + i]!
    x[i] = value
    for (let k = 0; k < i; k++) x[k] = x[k]! - L[i * n + k]! * value
  }
  return x
}

/**
 * x with A x = b, for systems that are solved so often that nothing may be set aside: `A` (its lower triangle) and `b`
 * are overwritten, `b` with x. As A = L D Lᵀ, without roots. Refuses a pivot that is not above zero.
 */
export function solveDefinite(A: Float64Array, b: Float64Array): void {
  const n = b.length
  for (let j = 0; j < n; j++) {
    const row = j * n
    let pivot = A[row + j]!
    for (let k = 0; k < j; k++) {
      const scaled = A[row + k]!
      const l = scaled / A[k * n + k]!
      A[row + k] = l
      pivot -= l * scaled
    }
    if (!(pivot > 0 && pivot < Number.POSITIVE_INFINITY))
      refuse({
        name: 'matrix',
        condition: `positive definite (pivot ${j} above zero)`,
        value: pivot,
        code: 'no-convergence',
      })
    A[row + j] = pivot
    for (let i = j + 1; i < n; i++) {
      const other = i * n
      let sum = A[other + j]!
      for (let k = 0; k < j; k++) sum -= A[other + k]! * A[row + k]!
      A[other + j] = sum
    }
    let x = b[j]!
    for (let k = 0; k < j; k++) x -= A[row + k]! * b[k]!
    b[j] = x
  }
  for (let i = n - 1; i >= 0; i--) {
    let x = b[i]! / A[i * n + i]!
    for (let k = i + 1; k < n; k++) x -= A[k * n + i]! * b[k]!
    b[i] = x
  }
}
