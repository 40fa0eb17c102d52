/** Checks of the induction of a ring. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  inductionFromLoading,
  optimumInduction,
  sineOverOneMinusInduction,
  thrustFromInduction,
} from './induction.ts'

describe('source: hansen2008, table 4.1, ideal rotor with swirl: a, a′, x (from memory, not opened)', () => {
  const rows = [
    // a      a'       x
    [0.26, '5.5', 0.073],
    [0.27, '2.375', 0.157],
    [0.28, '1.333', 0.255],
    [0.29, '0.812', 0.374],
    [0.3, '0.500', 0.529],
    [0.31, '0.292', 0.753],
    [0.32, '0.143', 1.15],
    [0.33, '0.031', 2.63],
  ] as const
  for (const [a, swirl, x] of rows) {
    // x is printed to three digits: what it leaves open in a is at most 0.0002, in a' 0.7 %.
    check(`a at x = ${x}`, optimumInduction(x).axial, String(a), { absolute: 0.0003 })
    check(`a' at x = ${x}`, optimumInduction(x).tangential, swirl, { relative: 0.02 })
  }
})

describe('agrees: the cubic of the same optimum, 16a³ − 24a² + (9 − 3x²)a + x² − 1 = 0', () => {
  for (const x of [0.1, 1, 3, 5, 8, 30])
    test(`x = ${x}`, () => {
      const { axial: a, tangential, inflowAngle: φ } = optimumInduction(x)
      const residual = 16 * a ** 3 - 24 * a ** 2 + (9 - 3 * x * x) * a + x * x - 1
      expect(Math.abs(residual) / (1 + x * x)).toBeLessThan(1e-14)
      expect(Math.abs(tangential - (1 - 3 * a) / (4 * a - 1))).toBeLessThan(1e-11)
      expect(Math.tan(φ)).toBeCloseTo((1 - a) / (x * (1 + tangential)), 12)
    })
})

const lossFactor = fc.double({ min: 0.02, max: 1, noNaN: true })

describe('source: buhl2005, equation for a from the thrust coefficient (from memory, not opened)', () => {
  test('a = (18F − 20 − 3√(C_T(50 − 36F) + 12F(3F − 4))) / (36F − 50) undoes thrustFromInduction', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 1, noNaN: true }), lossFactor, (a, F) => {
        const C = thrustFromInduction({ induction: a, lossFactor: F })
        const back =
          (18 * F - 20 - 3 * Math.sqrt(Math.max(0, C * (50 - 36 * F) + 12 * F * (3 * F - 4)))) / (36 * F - 50)
        expect(back).toBeCloseTo(a, 6)
      }),
    )
  })
  test('2 at a = 1 and 0.96 F at a = 0.4, whatever F', () => {
    for (const F of [0.1, 0.5, 1]) {
      expect(thrustFromInduction({ induction: 1, lossFactor: F })).toBeCloseTo(2, 12)
      expect(thrustFromInduction({ induction: 0.4, lossFactor: F })).toBeCloseTo(0.96 * F, 12)
    }
  })
})

describe('law: thrust of the momentum is thrust of the blade', () => {
  const loading = fc.double({ min: -0.9, max: 1e4, noNaN: true })
  test('C_T(a(k)) = 4 F k (1 − a)²', () => {
    fc.assert(
      fc.property(loading, lossFactor, (k, F) => {
        const a = inductionFromLoading({ loading: k, lossFactor: F })
        const blade = 4 * F * k * (1 - a) ** 2
        expect(Math.abs(thrustFromInduction({ induction: a, lossFactor: F }) - blade)).toBeLessThan(
          1e-8 * (1 + Math.abs(blade)),
        )
      }),
    )
  })
  test('also with the wind from behind, where that gives a thrust at all', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 1e4, noNaN: true }), lossFactor, (k, F) => {
        const s = -0.1
        const a = 1 - s / sineOverOneMinusInduction(k, F, s)
        expect(a).toBeGreaterThan(1)
        const blade = 4 * F * k * (1 - a) ** 2
        expect(Math.abs(thrustFromInduction({ induction: a, lossFactor: F }) / blade - 1)).toBeLessThan(1e-9)
      }),
    )
  })
  test('no step at any join', () => {
    for (const F of [0.05, 0.3, 1]) {
      const at = (a: number) => thrustFromInduction({ induction: a, lossFactor: F })
      for (const a of [0.4, 1, (1 + Math.sqrt(1 + 2 / F)) / 2])
        expect(Math.abs(at(a + 1e-9) - at(a - 1e-9))).toBeLessThan(1e-6)
      // The angle may pass through zero: k grows without bound on both sides, the quantity does not.
      const small = 1e-6
      const k = 0.3 / small ** 2
      expect(sineOverOneMinusInduction(k, F, small)).toBeCloseTo(sineOverOneMinusInduction(k, F, -small), 4)
    }
  })
  test('refuses the meaningless', () => {
    expect(() => inductionFromLoading({ loading: -1, lossFactor: 1 })).toThrow(/below-minimum/)
    expect(() => thrustFromInduction({ induction: 0.3, lossFactor: 0 })).toThrow(/below-minimum/)
    expect(() => optimumInduction(0)).toThrow(RangeError)
  })
})
