/** Eigenvalues and eigenvectors of small real symmetric matrices. */
import { refuse } from '../refusal/require.ts'

export interface SymmetricEigen {
  /** n eigenvalues, in no particular order. */
  readonly values: Float64Array
  /** n × n, row by row; column j belongs to value j, orthonormal. */
  readonly vectors: Float64Array
}

/**
 * Cyclic Jacobi rotations (Golub & Van Loan, Matrix Computations, section 8.5; from memory, not opened).
 * `A` is n × n, row by row, and is not changed; only its symmetric part counts.
 */
export function symmetricEigen(A: ArrayLike<number>, n: number): SymmetricEigen {
  const a = new Float64Array(n * n)
  const v = new Float64Array(n * n)
  let size = 0
  for (let i = 0; i < n; i++) {
    v[i * n + i] = 1
    for (let j = 0; j < n; j++) {
      a[i * n + j] = (A[i * n + j]! + A[j * n + i]!) / 2
      size = Math.max(size, Math.abs(a[i * n + j]!))
    }
  }
  if (!Number.isFinite(size))
    refuse({ name: 'matrix', condition: 'of finite numbers', value: size, code: 'not-finite' })
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = a[p * n + q]!
        const app = a[p * n + p]!
        const aqq = a[q * n + q]!
        // An entry too small to change either diagonal neighbour by half a unit of rounding is zero.
        if (apq === 0 || Math.abs(apq) < 1e-17 * Math.sqrt(Math.abs(app * aqq))) continue
        off = Math.max(off, Math.abs(apq))
        const τ = (aqq - app) / (2 * apq)
        const t = (τ >= 0 ? 1 : -1) / (Math.abs(τ) + Math.hypot(1, τ))
        const c = 1 / Math.hypot(1, t)
        const s = t * c
        for (let k = 0; k < n; k++) {
          const akp = a[k * n + p]!
          const akq = a[k * n + q]!
          a[k * n + p] = c * akp - s * akq
          a[k * n + q] = s * akp + c * akq
        }
        for (let k = 0; k < n; k++) {
          const apk = a[p * n + k]!
          const aqk = a[q * n + k]!
          a[p * n + k] = c * apk - s * aqk
          a[q * n + k] = s * apk + c * aqk
          const vkp = v[k * n + p]!
          const vkq = v[k * n + q]!
          v[k * n + p] = c * vkp - s * vkq
          v[k * n + q] = s * vkp + c * vkq
        }
        a[p * n + q] = 0
        a[q * n + p] = 0
      }
    if (off <= 1e-16 * size) break
  }
  const values = new Float64Array(n)
  for (let i = 0; i < n; i++) values[i] = a[i * n + i]!
  return { values, vectors: v }
}
