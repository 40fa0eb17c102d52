/** Checks of the tridiagonal eigenvalue solver. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { tridiagonalEigen } from './tridiagonal-eigen.ts'

const sorted = (values: Float64Array) => [...values].sort((a, b) => a - b)

describe('agrees: the string of n equal springs, 2 − 2 cos(πk/(n + 1))', () => {
  test.each([1, 2, 5, 40])('n = %i', (n) => {
    const { values } = tridiagonalEigen(
      new Float64Array(n).fill(2),
      new Float64Array(Math.max(0, n - 1)).fill(-1),
    )
    sorted(values).forEach((value, k) => {
      expect(Math.abs(value - (2 - 2 * Math.cos((Math.PI * (k + 1)) / (n + 1))))).toBeLessThan(1e-14 * n)
    })
  })
})

describe('law: A v = λ v, vectors orthonormal', () => {
  const entry = fc.double({ min: -1e3, max: 1e3, noNaN: true })
  test('random matrices, zeros beside the diagonal included', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(entry, fc.oneof(entry, fc.constant(0))), { minLength: 1, maxLength: 14 }),
        (pairs) => {
          const n = pairs.length
          const d = pairs.map(([a]) => a)
          const e = pairs.slice(1).map(([, b]) => b)
          const { values, vectors } = tridiagonalEigen(d, e)
          const v = (i: number, j: number) => (i < 0 || i >= n ? 0 : vectors[i * n + j]!)
          const size = Math.max(1, ...[...d, ...e].map(Math.abs))
          for (let j = 0; j < n; j++) {
            for (let i = 0; i < n; i++) {
              const Av = d[i]! * v(i, j) + (e[i - 1] ?? 0) * v(i - 1, j) + (e[i] ?? 0) * v(i + 1, j)
              expect(Math.abs(Av - values[j]! * v(i, j))).toBeLessThan(1e-12 * size)
            }
            for (let k = 0; k < n; k++) {
              let dot = 0
              for (let i = 0; i < n; i++) dot += v(i, j) * v(i, k)
              expect(Math.abs(dot - (j === k ? 1 : 0))).toBeLessThan(1e-13)
            }
          }
        },
      ),
    )
  })
  test('refuses what is not finite and lists that do not match', () => {
    expect(() => tridiagonalEigen([1, Number.NaN], [1])).toThrow(RangeError)
    expect(() => tridiagonalEigen([1, 2], [])).toThrow(RangeError)
  })
})
