/** Checks of the solver for small dense systems. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { linearSolve } from './linear-solve.ts'

describe('source: ciarlet1989, section 2.2 — the badly conditioned matrix of Wilson (from memory, not opened)', () => {
  const wilson = [10, 7, 8, 7, 7, 5, 6, 5, 8, 6, 10, 9, 7, 5, 9, 10]
  // The condition number is 2984: some thousand rounding errors are the machine's, not the method's.
  const tolerance = { absolute: 1e-11 }
  for (const [i, x] of ['1', '1', '1', '1'].entries())
    check(
      `right side 32, 23, 33, 31: x${i + 1}`,
      () => linearSolve(wilson, [32, 23, 33, 31])[i]!,
      x,
      tolerance,
    )
  for (const [i, x] of ['9.2', '-12.6', '4.5', '-1.1'].entries())
    check(
      `right side changed by 0.1: x${i + 1}`,
      () => linearSolve(wilson, [32.1, 22.9, 33.1, 30.9])[i]!,
      x,
      tolerance,
    )
})

describe('agrees: first column of the inverse Hilbert matrix, which is whole numbers', () => {
  test('n = 4: 16, −120, 240, −140', () => {
    const hilbert = Array.from({ length: 16 }, (_, k) => 1 / ((k % 4) + Math.floor(k / 4) + 1))
    const x = linearSolve(hilbert, [1, 0, 0, 0])
    for (const [i, wanted] of [16, -120, 240, -140].entries()) expect(x[i]).toBeCloseTo(wanted, 8)
  })
})

describe('law: the residual vanishes', () => {
  test('random diagonally dominant systems', () => {
    const entry = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }).chain((n) =>
          fc.record({
            A: fc.array(entry, { minLength: n * n, maxLength: n * n }),
            b: fc.array(entry, { minLength: n, maxLength: n }),
          }),
        ),
        ({ A, b }) => {
          const n = b.length
          const dominant = A.map((value, k) => (k % (n + 1) === 0 ? value + 2 * n : value))
          const x = linearSolve(dominant, b)
          for (let row = 0; row < n; row++) {
            let sum = 0
            for (let k = 0; k < n; k++) sum += dominant[row * n + k]! * x[k]!
            expect(Math.abs(sum - b[row]!)).toBeLessThan(1e-13)
          }
        },
      ),
    )
  })
  test('a zero on the diagonal is pivoted away, and nothing given is changed', () => {
    const A = [0, 1, 1, 0]
    const b = [3, 5]
    expect([...linearSolve(A, b)]).toEqual([5, 3])
    expect(A).toEqual([0, 1, 1, 0])
    expect(b).toEqual([3, 5])
  })
  test('no unknowns, no answer', () => expect(linearSolve([], []).length).toBe(0))
})

describe('law: what has no meaning is refused', () => {
  test('a singular matrix', () => expect(() => linearSolve([1, 2, 2, 4], [1, 1])).toThrow('(no-convergence)'))
  test('a zero matrix', () => expect(() => linearSolve([0], [1])).toThrow('(no-convergence)'))
  test('a matrix of another size', () =>
    expect(() => linearSolve([1, 2, 3], [1, 1])).toThrow('(wrong-length)'))
  test('what is not a number', () => {
    expect(() => linearSolve([Number.NaN], [1])).toThrow('(no-convergence)')
    expect(() => linearSolve([1], [Number.NaN])).toThrow('(not-finite)')
  })
})
