/** Checks of Prandtl's loss factor. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { leastLossFactor, lossFactor } from './tip-loss.ts'

const at = { bladeCount: 3, distance: 0.8, radius: 1, hubRadius: 0, inflowAngle: 0.12 }

describe('agrees: arctangent form, F = (2/π) arctan √(e^(2f) − 1)', () => {
  test('tip and hub', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 0.25, max: 0.99, noNaN: true }),
        fc.double({ min: 0.02, max: 1.5, noNaN: true }),
        (bladeCount, distance, inflowAngle) => {
          const end = (f: number) => (2 / Math.PI) * Math.atan(Math.sqrt(Math.expm1(2 * Math.min(f, 300))))
          const s = Math.sin(inflowAngle)
          const tip = end((bladeCount * (1 - distance)) / (2 * distance * s))
          const hub = end((bladeCount * (distance - 0.2)) / (2 * 0.2 * s))
          expect(lossFactor({ bladeCount, distance, radius: 1, hubRadius: 0.2, inflowAngle })).toBeCloseTo(
            tip * hub,
            9,
          )
        },
      ),
    )
  })
  test('f = ln 2 gives two thirds', () => {
    const distance = 0.9
    const inflowAngle = Math.asin((3 * 0.1) / (2 * 0.9 * Math.LN2))
    expect(lossFactor({ ...at, distance, inflowAngle })).toBeCloseTo(2 / 3, 12)
  })
})

describe('law: limits', () => {
  test('many blades lose nothing, the tip loses all, flat inflow loses little', () => {
    expect(lossFactor({ ...at, bladeCount: 500 })).toBeCloseTo(1, 12)
    expect(lossFactor({ ...at, distance: 1 })).toBe(leastLossFactor)
    expect(lossFactor({ ...at, inflowAngle: 1e-9 })).toBeCloseTo(1, 12)
    expect(lossFactor({ ...at, inflowAngle: 0 })).toBeCloseTo(1, 12)
  })
  test('same for both signs of the angle and for any size', () => {
    expect(lossFactor({ ...at, inflowAngle: -0.12 })).toBe(lossFactor(at))
    expect(lossFactor({ ...at, distance: 8e-3, radius: 1e-2 })).toBeCloseTo(lossFactor(at), 12)
  })
  test('refuses places outside the blade', () => {
    expect(() => lossFactor({ ...at, distance: 1.1 })).toThrow(/above-maximum/)
    expect(() => lossFactor({ ...at, hubRadius: 0.9 })).toThrow(/below-minimum/)
  })
})
