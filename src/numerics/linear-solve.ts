/** Small dense systems of linear equations. */
import { refuse, requireFinite, requireLength } from '../refusal/require.ts'

/**
 * x with A x = b, by elimination with row pivoting; A is n × n, row by row, and is not changed.
 * Refuses a matrix whose pivot falls below 1e-14 of its largest entry.
 */
export function linearSolve(A: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const n = b.length
  requireLength('matrix', A, n * n)
  const m = Float64Array.from(A)
  const x = Float64Array.from(b)
  let largest = 0
  for (const value of m) largest = Math.max(largest, Math.abs(value))
  for (let column = 0; column < n; column++) {
    let pivot = column
    for (let row = column + 1; row < n; row++)
      if (Math.abs(m[row * n + column]!) > Math.abs(m[pivot * n + column]!)) pivot = row
    const head = m[pivot * n + column]!
    if (!(Math.abs(head) > 1e-14 * largest))
      refuse({ name: 'matrix', condition: 'regular', value: head, code: 'no-convergence' })
    if (pivot !== column) {
      for (let k = 0; k < n; k++) {
        const swap = m[column * n + k]!
        m[column * n + k] = m[pivot * n + k]!
        m[pivot * n + k] = swap
      }
      const swap = x[column]!
      x[column] = x[pivot]!
      x[pivot] = swap
    }
    for (let row = column + 1; row < n; row++) {
      const factor = m[row * n + column]! / head
      if (factor === 0) continue
      for (let k = column; k < n; k++) m[row * n + k] = m[row * n + k]! - factor * m[column * n + k]!
      x[row] = x[row]! - factor * x[column]!
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = x[row]!
    for (let k = row + 1; k < n; k++) sum -= m[row * n + k]! * x[k]!
    x[row] = sum / m[row * n + row]!
    requireFinite(`x[${row}]`, x[row]!)
  }
  return x
}
