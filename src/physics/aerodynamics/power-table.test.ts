/** Checks of power coefficients given by hand. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { betzLimit } from './induction.ts'
import { powerTableCoefficients } from './power-table.ts'

const table = { tipSpeedRatio: [0, 2, 4, 6, 8, 11], power: [0, 0.05, 0.25, 0.4, 0.3, 0] }

describe('source: betz1920 — thrust of the ideal disc', () => {
  const ideal = powerTableCoefficients({ tipSpeedRatio: [0, 5, 10], power: [0, 16 / 27, 0] })
  check('8/9 at the limit', ideal(5).thrust, '0.8889')
})

describe('agrees: C_p = 4a(1 − a)², C_t = 4a(1 − a)', () => {
  for (const a of [0.01, 0.1, 0.2, 0.3])
    test(`a = ${a}`, () => {
      const at = powerTableCoefficients({ tipSpeedRatio: [0, 5, 10], power: [0, 4 * a * (1 - a) ** 2, 0] })
      expect(at(5).thrust).toBeCloseTo(4 * a * (1 - a), 12)
    })
})

describe('law: the curve', () => {
  const at = powerTableCoefficients(table)
  test('meets its points, C_q λ = C_p, zero at both ends', () => {
    table.tipSpeedRatio.forEach((λ, i) => {
      expect(at(λ).power).toBeCloseTo(table.power[i]!, 12)
      expect(at(λ).torque * λ).toBeCloseTo(table.power[i]!, 12)
    })
  })
  test('never above its greatest point nor above Betz', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (λ) => {
        expect(at(λ).power).toBeLessThanOrEqual(0.4)
        expect(at(λ).thrust).toBeLessThanOrEqual(1.5 * betzLimit + 1e-12)
      }),
    )
  })
  test('torque at rest is the slope there', () => {
    expect(at(0).torque).toBeCloseTo(0.025, 12)
    expect(at(1e-6).torque).toBeCloseTo(at(0).torque, 5)
  })
  test('past runaway the rotor is braked', () => {
    expect(at(12).power).toBeCloseTo(-0.1, 12)
    expect(at(12).torque).toBeLessThan(0)
  })
  test('a thrust column is used', () => {
    const thrust = [0.1, 0.3, 0.6, 0.8, 0.9, 1]
    expect(powerTableCoefficients({ ...table, thrust })(11).thrust).toBe(1)
  })
})

describe('law: refusals', () => {
  test('what cannot be', () => {
    const of =
      (power: number[], tipSpeedRatio = [0, 5, 10]) =>
      () =>
        powerTableCoefficients({ tipSpeedRatio, power })
    expect(of([0, 0.6, 0])).toThrow(/Betz/)
    expect(of([0, 0.4, 0.1])).toThrow(/conflict/)
    expect(of([0.1, 0.4, 0])).toThrow(/conflict/)
    expect(of([0, 0.4, 0], [1, 5, 10])).toThrow(/conflict/)
    expect(of([0, 0.4, 0], [0, 5, 5])).toThrow(/not-increasing/)
    expect(of([0, 0])).toThrow(/wrong-length/)
    expect(of([0, -0.1, 0])).toThrow(/below-minimum/)
    expect(() => powerTableCoefficients(table)(-1)).toThrow(/below-minimum/)
  })
})
