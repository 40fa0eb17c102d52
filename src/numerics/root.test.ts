/** Checks of the root search. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { root } from './root.ts'

describe('source: oeis, decimal expansions of roots (from memory, not opened)', () => {
  check('A007493: x³ − 2x − 5', () => root((x) => x ** 3 - 2 * x - 5, [2, 3]), '2.0945514815')
  check('A003957: cos x = x', () => root((x) => Math.cos(x) - x, [0, 1]), '0.7390851332')
  check('A030178: x eˣ = 1', () => root((x) => x * Math.exp(x) - 1, [0, 1]), '0.5671432904')
  check('A002193: x² = 2', () => root((x) => x * x - 2, [0, 2], 1e-15), '1.4142135623731')
})

describe('law: the root is where the sign changes', () => {
  test('straight lines, any end first', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.boolean(), (zero, turned) => {
        const ends = [zero - 7, zero + 5] as const
        const found = root((x) => 3 * (x - zero), turned ? [ends[1], ends[0]] : ends)
        expect(Math.abs(found - zero)).toBeLessThan(1e-11)
      }),
    )
  })
  test('odd powers, flat at the root', () => {
    for (const power of [3, 5, 9])
      expect(Math.abs(root((x) => (x - 0.3) ** power, [-1, 4]) - 0.3)).toBeLessThan(1e-9)
  })
  test('steep, stepped and one-sided functions', () => {
    expect(root((x) => Math.tan(x) - 1e6, [0, 1.5707963])).toBeCloseTo(Math.atan(1e6), 9)
    expect(root((x) => (x < 0.25 ? -1 : 1), [0, 1])).toBeCloseTo(0.25, 11)
    expect(root((x) => Math.exp(50 * x) - 2, [-10, 10])).toBeCloseTo(Math.LN2 / 50, 11)
    expect(root((x) => 1 / x - 1e-3, [1, 1e6])).toBeCloseTo(1000, 8)
  })
  test('tiny values: the product of the ends would be zero', () => {
    expect(root((x) => 1e-200 * (x - 0.5), [0, 2])).toBeCloseTo(0.5, 11)
  })
  test('a root at an end is returned as it is', () => {
    expect(root((x) => x - 1, [1, 2])).toBe(1)
    expect(root((x) => x - 2, [1, 2])).toBe(2)
  })
  test('few evaluations on a smooth function', () => {
    let calls = 0
    root(
      (x) => {
        calls++
        return Math.exp(x) - 5
      },
      [0, 4],
    )
    expect(calls).toBeLessThan(20)
  })
})

describe('law: what has no meaning is refused', () => {
  test('equal signs', () => expect(() => root((x) => x * x + 1, [-1, 1])).toThrow('(no-convergence)'))
  test('not a number at an end', () => {
    expect(() => root(() => Number.NaN, [0, 1])).toThrow('(no-convergence)')
  })
  test('not a number between the ends', () => {
    expect(() => root((x) => (x === 0 ? -1 : x === 1 ? 2 : Number.NaN), [0, 1])).toThrow('(not-finite)')
  })
  test('too wide a search says how far it got', () => {
    expect(() => root((x) => (x < 1e-8 ? -1 : 1), [-1e300, 1e300], 1e-300)).toThrow(
      /200 steps; received .*\(no-conv/,
    )
  })
})
