/** Eigenvalues and eigenvectors of symmetric tridiagonal matrices. */
import { refuse, requireFinite, requireLength } from '../refusal/require.ts'
import type { SymmetricEigen } from './symmetric-eigen.ts'

/**
 * QL rotations with implicit shifts (Golub & Van Loan, Matrix Computations, section 8.3; from memory, not opened).
 * `diagonal` holds n entries, `beside` the n − 1 next to it; neither is changed. O(n³), a small multiple of it.
 */
export function tridiagonalEigen(diagonal: ArrayLike<number>, beside: ArrayLike<number>): SymmetricEigen {
  const n = diagonal.length
  requireLength('beside', beside, Math.max(0, n - 1))
  const d = Float64Array.from(diagonal)
  const e = new Float64Array(n)
  for (let i = 0; i < n; i++) requireFinite(`diagonal[${i}]`, d[i]!)
  for (let i = 0; i + 1 < n; i++) {
    requireFinite(`beside[${i}]`, beside[i]!)
    e[i] = beside[i]!
  }
  // Rows of z are the eigenvectors while they are turned: two neighbouring rows at a time stay in cache
  const z = new Float64Array(n * n)
  for (let i = 0; i < n; i++) z[i * n + i] = 1
  for (let l = 0; l < n; l++) {
    for (let sweep = 0; ; sweep++) {
      let m = l
      while (m + 1 < n && Math.abs(e[m]!) > Number.EPSILON * (Math.abs(d[m]!) + Math.abs(d[m + 1]!))) m++
      if (m === l) break
      if (sweep === 60)
        refuse({ name: 'eigenvalue', condition: 'found in 60 sweeps', value: e[l], code: 'no-convergence' })
      let g = (d[l + 1]! - d[l]!) / (2 * e[l]!)
      let r = Math.hypot(g, 1)
      g = d[m]! - d[l]! + e[l]! / (g + (g >= 0 ? r : -r))
      let s = 1
      let c = 1
      let p = 0
      let i = m - 1
      for (; i >= l; i--) {
        const f = s * e[i]!
        const b = c * e[i]!
        r = Math.hypot(f, g)
        e[i + 1] = r
        if (r === 0) {
          d[i + 1] = d[i + 1]! - p
          e[m] = 0
          break
        }
        s = f / r
        c = g / r
        g = d[i + 1]! - p
        r = (d[i]! - g) * s + 2 * c * b
        p = s * r
        d[i + 1] = g + p
        g = c * r - b
        const upper = i * n
        const lower = upper + n
        for (let k = 0; k < n; k++) {
          const x = z[lower + k]!
          const y = z[upper + k]!
          z[lower + k] = s * y + c * x
          z[upper + k] = c * y - s * x
        }
      }
      if (r === 0 && i >= l) continue
      d[l] = d[l]! - p
      e[l] = g
      e[m] = 0
    }
  }
  const vectors = new Float64Array(n * n)
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) vectors[j * n + i] = z[i * n + j]!
  return { values: d, vectors }
}
