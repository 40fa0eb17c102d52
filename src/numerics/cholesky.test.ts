/** Checks of the factorisation of positive definite matrices. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { choleskyFactor, choleskySolve, solveDefinite } from './cholesky.ts'
import { linearSolve } from './linear-solve.ts'

describe('agrees: elimination with pivoting', () => {
  test('Cᵀ C + I of random C', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 9 })
          .chain((n) =>
            fc.tuple(
              fc.constant(n),
              fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: n * n, maxLength: n * n }),
              fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: n, maxLength: n }),
            ),
          ),
        ([n, C, b]) => {
          const A = new Float64Array(n * n)
          for (let i = 0; i < n; i++)
            for (let j = 0; j < n; j++) {
              let sum = i === j ? 1 : 0
              for (let k = 0; k < n; k++) sum += C[k * n + i]! * C[k * n + j]!
              A[i * n + j] = sum
            }
          const x = choleskySolve(choleskyFactor(A, n), b)
          linearSolve(A, b).forEach((wanted, i) => {
            expect(Math.abs(x[i]! - wanted)).toBeLessThan(1e-10)
          })
          const y = Float64Array.from(b)
          solveDefinite(Float64Array.from(A), y)
          x.forEach((wanted, i) => {
            expect(Math.abs(y[i]! - wanted)).toBeLessThan(1e-10)
          })
        },
      ),
    )
  })
})

describe('law: refusals', () => {
  test('a matrix with a negative or missing direction, lists that do not match', () => {
    expect(() => choleskyFactor([1, 2, 2, 1], 2)).toThrow(RangeError)
    expect(() => choleskyFactor([0], 1)).toThrow(RangeError)
    expect(() => choleskyFactor([Number.NaN], 1)).toThrow(RangeError)
    expect(() => choleskyFactor([1, 0], 2)).toThrow(RangeError)
    expect(() => choleskySolve(choleskyFactor([4], 1), [1, 2])).toThrow(RangeError)
    expect(() => solveDefinite(Float64Array.of(1, 2, 2, 1), Float64Array.of(1, 1))).toThrow(RangeError)
    expect(() => solveDefinite(Float64Array.of(Number.NaN), Float64Array.of(1))).toThrow(RangeError)
  })
})
