/** Checks eigenvalues of small symmetric matrices. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { symmetricEigen } from './symmetric-eigen.ts'

describe('law: A v = λ v, vectors orthonormal', () => {
  test('random matrices up to 6 × 6', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        (n, s) => {
          const A = new Float64Array(n * n)
          for (let i = 0; i < n; i++)
            for (let j = i; j < n; j++) {
              A[i * n + j] = s.next().value as number
              A[j * n + i] = A[i * n + j]!
            }
          const { values, vectors } = symmetricEigen(A, n)
          for (let j = 0; j < n; j++)
            for (let i = 0; i < n; i++) {
              let Av = 0
              let dot = 0
              for (let k = 0; k < n; k++) {
                Av += A[i * n + k]! * vectors[k * n + j]!
                dot += vectors[k * n + i]! * vectors[k * n + j]!
              }
              expect(Math.abs(Av - values[j]! * vectors[i * n + j]!)).toBeLessThan(1e-13)
              expect(Math.abs(dot - (i === j ? 1 : 0))).toBeLessThan(1e-13)
            }
        },
      ),
    )
  })
  test('the matrix with 2 on the diagonal and 1 beside it has 1 and 3', () => {
    const values = [...symmetricEigen([2, 1, 1, 2], 2).values].sort()
    expect(values[0]).toBeCloseTo(1, 14)
    expect(values[1]).toBeCloseTo(3, 14)
  })
})
