/** Checks of steps up and down. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { steppedNumber } from './number-step.ts'

const free = { least: undefined, most: undefined }

describe('law: steps are round, small, and keep within the bounds', () => {
  test('as a hand means them', () => {
    expect(steppedNumber(4.2, 1, free)).toBe(4.3)
    expect(steppedNumber(4.2, -1, free)).toBe(4.1)
    expect(steppedNumber(4.23, 1, free)).toBe(4.3)
    expect(steppedNumber(4.23, -1, free)).toBe(4.2)
    expect(steppedNumber(40, 1, free)).toBe(41)
    expect(steppedNumber(40, 10, free)).toBe(50)
    expect(steppedNumber(-40, 1, free)).toBe(-39)
    expect(steppedNumber(7, 1, { ...free, whole: true })).toBe(8)
    expect(steppedNumber(7, -10, { least: 1, most: 9, whole: true })).toBe(1)
    expect(steppedNumber(0, 1, { least: 0, most: 60 })).toBe(1)
  })
  test('inches go from mark to mark of the ruler', () => {
    expect(steppedNumber(0.5, 1, { ...free, ruler: true })).toBe(0.515625)
    expect(steppedNumber(2, 1, { ...free, ruler: true })).toBe(2.0625)
    expect(steppedNumber(0.236, 1, { ...free, ruler: true })).toBe(0.24)
  })
  test('up and down again is where it was, on the round numbers', () => {
    fc.assert(
      fc.property(fc.integer({ min: 21, max: 199 }), (tenths) => {
        const value = tenths / 10
        expect(steppedNumber(steppedNumber(value, 1, free), -1, free)).toBe(value)
      }),
    )
  })
  test('a step always moves, and not by more than a twentieth and a bit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), fc.boolean(), (value, ruler) => {
        const next = steppedNumber(value, 1, { ...free, ruler })
        expect(next).toBeGreaterThan(value)
        if (!(ruler && value >= 0.25)) expect(next - value).toBeLessThanOrEqual(0.0501 * value)
      }),
    )
  })
})
