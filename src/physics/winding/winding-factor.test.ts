/** Checks of the textbook winding factors. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  distributionFactor,
  pitchFactor,
  placementFactor,
  skewFactor,
  spreadFactor,
} from './winding-factor.ts'

describe('source: pyrhonen2014, section 2.6 — textbook factors (values worked by hand from the formulas; book from memory, not opened)', () => {
  check('pitch 5/6, n = 1: sin 75°', pitchFactor({ span: (5 / 6) * Math.PI, harmonic: 1 }), '0.966')
  check(
    'pitch 5/6, n = 5: |sin 375°|',
    Math.abs(pitchFactor({ span: (5 / 6) * Math.PI, harmonic: 5 })),
    '0.259',
  )
  check(
    'q = 3 slots of 20°, n = 1',
    distributionFactor({ coils: 3, step: Math.PI / 9, harmonic: 1 }),
    '0.960',
  )
  check(
    'q = 2 slots of 30°, n = 1: cos 15°',
    distributionFactor({ coils: 2, step: Math.PI / 6, harmonic: 1 }),
    '0.966',
  )
  check('belt of 60°, q → ∞: 3/π', spreadFactor({ width: Math.PI / 3, harmonic: 1 }), '0.955')
})

describe('law: groups placed 5, 10, 20 electrical degrees apart keep cos(δ/2)', () => {
  const rows = [
    [5, '0.9990'],
    [10, '0.9962'],
    [20, '0.9848'],
  ] as const
  for (const [δ, printed] of rows)
    check(`${δ}°`, placementFactor({ apart: (δ * Math.PI) / 180, harmonic: 1 }), printed)
})

describe('agrees: phasor sums written out', () => {
  test('distribution factor', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 24 }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.integer({ min: 1, max: 13 }),
        (q, step, n) => {
          let re = 0
          let im = 0
          for (let k = 0; k < q; k++) {
            re += Math.cos(n * k * step) / q
            im += Math.sin(n * k * step) / q
          }
          expect(
            Math.abs(Math.abs(distributionFactor({ coils: q, step, harmonic: n })) - Math.hypot(re, im)),
          ).toBeLessThan(1e-6)
        },
      ),
    )
  })
})

describe('law: limits', () => {
  test('full pitch and thin belts lose nothing; even orders vanish at full pitch', () => {
    expect(pitchFactor({ span: Math.PI, harmonic: 1 })).toBe(1)
    expect(Math.abs(pitchFactor({ span: Math.PI, harmonic: 2 }))).toBeLessThan(1e-15)
    expect(distributionFactor({ coils: 4, step: 0, harmonic: 3 })).toBe(1)
    expect(distributionFactor({ coils: 4, step: 2 * Math.PI, harmonic: 1 })).toBeCloseTo(-1, 12)
    expect(spreadFactor({ width: 0, harmonic: 5 })).toBe(1)
  })
  test('many coils over a belt tend to the spread factor; a third of the pitch removes order 3', () => {
    const q = 4000
    const belt = Math.PI / 3
    const d = distributionFactor({ coils: q, step: belt / q, harmonic: 5 })
    expect(d).toBeCloseTo(spreadFactor({ width: belt, harmonic: 5 }), 6)
    expect(Math.abs(pitchFactor({ span: (2 / 3) * Math.PI, harmonic: 3 }))).toBeLessThan(1e-15)
    expect(Math.abs(skewFactor({ skew: (2 / 3) * Math.PI, harmonic: 3 }))).toBeLessThan(1e-15)
  })
  test('orders that are no whole numbers from 1 are refused', () => {
    for (const harmonic of [0, -1, 1.5, Number.NaN])
      expect(() => skewFactor({ skew: 1, harmonic })).toThrow(/not-a-choice/)
    expect(() => distributionFactor({ coils: 0, step: 1, harmonic: 1 })).toThrow(/not-a-choice/)
  })
})
