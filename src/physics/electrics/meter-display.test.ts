/** Checks the steps and bounds of a display. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { displayBound, displayStep } from './meter-display.ts'

describe('agrees: ranges by hand', () => {
  test('2000 counts: 0.2, 2, 20, 200 V', () => {
    const step = (value: number) => displayStep({ value, counts: 2000, finest: 1e-4 })
    for (const [value, wanted] of [
      [0.05, 1e-4],
      [0.2, 1e-4],
      [0.21, 1e-3],
      [-2, 1e-3],
      [2.01, 1e-2],
      [150, 0.1],
    ] as const)
      expect(step(value)).toBeCloseTo(wanted, 12)
  })
  test('1 % and 3 digits of 12.6 V at 0.01 V', () =>
    expect(displayBound({ value: -12.6, share: 0.01, digits: 3, step: 0.01 })).toBeCloseTo(0.156, 12))
})

describe('law: any value fits its range, and would not fit a finer one', () => {
  test('sizes from a microvolt to a gigavolt', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 9, noNaN: true }),
        fc.constantFrom(1999, 4000, 6000, 50000),
        (size, counts) => {
          const value = 10 ** size
          const step = displayStep({ value, counts, finest: 1e-4 })
          expect(value / step).toBeLessThanOrEqual(counts * (1 + 1e-6))
          if (step > 1e-4) expect(value / (step / 10)).toBeGreaterThan(counts * (1 - 1e-6))
        },
      ),
    )
  })
})
