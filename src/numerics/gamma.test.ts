/** Checks of the gamma function. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { gamma, logGamma } from './gamma.ts'

describe('source: abramowitz1964, section 6.1, values of Γ (from memory, not opened)', () => {
  check('Γ(1/4)', gamma(0.25), '3.6256099082')
  check('Γ(1/3)', gamma(1 / 3), '2.6789385347')
  check('Γ(1/2) = √π', gamma(0.5), '1.7724538509')
  check('Γ(3/2)', gamma(1.5), '0.8862269255')
})

describe('law: recurrence, factorials, reflection', () => {
  test('Γ(x + 1) = x Γ(x)', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 100, noNaN: true }), (x) => {
        expect(logGamma(x + 1) - logGamma(x) - Math.log(x)).toBeCloseTo(0, 11)
      }),
    )
  })
  test('factorials to 15!', () => {
    let factorial = 1
    for (let n = 1; n <= 15; n++) {
      factorial *= n
      expect(Math.abs(gamma(n + 1) / factorial - 1)).toBeLessThan(1e-14)
    }
  })
  test('Γ(x) Γ(1 − x) = π / sin πx', () => {
    for (const x of [0.1, 0.3, 0.45])
      expect((gamma(x) * gamma(1 - x) * Math.sin(Math.PI * x)) / Math.PI).toBeCloseTo(1, 13)
  })
  test('zero and below are refused', () => {
    expect(() => gamma(0)).toThrow(RangeError)
    expect(() => gamma(-1.5)).toThrow(/below-minimum/)
  })
})
