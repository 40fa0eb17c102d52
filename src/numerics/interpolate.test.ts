/** Checks of the curves through given points. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { monotoneCubic, piecewiseLinear } from './interpolate.ts'

const value = fc.double({ min: -1e3, max: 1e3, noNaN: true })
const points = fc
  .array(fc.tuple(fc.double({ min: 1e-3, max: 10, noNaN: true }), value), { minLength: 1, maxLength: 12 })
  .map((steps) => {
    let x = 0
    const xs: number[] = []
    for (const [step] of steps) {
      x += step
      xs.push(x)
    }
    return { x: xs, y: steps.map(([, y]) => y) }
  })

describe('source: fritsch1980, RPN 14 data — the curve rises as the data do (data from memory, not opened)', () => {
  const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20]
  const printed = [
    '0',
    '2.76429e-5',
    '4.37498e-2',
    '0.169183',
    '0.469428',
    '0.943740',
    '0.998636',
    '0.999919',
    '0.999994',
  ]
  const curve = monotoneCubic(x, printed.map(Number))
  for (const [i, y] of printed.entries()) check(`passes through x = ${x[i]}`, () => curve(x[i]!), y)
  test('never falls between the points', () => {
    let before = 0
    for (let at = 7.99; at <= 20; at += 0.001) {
      expect(curve(at)).toBeGreaterThanOrEqual(before - 1e-15)
      before = curve(at)
    }
  })
})

describe('agrees: slope inside by the harmonic mean worked by hand', () => {
  test('chords 1 and 3 over equal steps meet with slope 1.5', () => {
    const curve = monotoneCubic([0, 1, 2], [0, 1, 4])
    expect((curve(1 + 1e-6) - curve(1 - 1e-6)) / 2e-6).toBeCloseTo(1.5, 5)
  })
  test('unequal steps 1 and 2, chords 1 and 2: (5 + 4)/(5/1 + 4/2) = 9/7', () => {
    const curve = monotoneCubic([0, 1, 3], [0, 1, 5])
    expect((curve(1 + 1e-6) - curve(1 - 1e-6)) / 2e-6).toBeCloseTo(9 / 7, 5)
  })
})

for (const [name, through] of [
  ['monotoneCubic', monotoneCubic],
  ['piecewiseLinear', piecewiseLinear],
] as const)
  describe(`law: ${name} keeps to its points`, () => {
    test('passes through them, stays between neighbours, goes on flat beyond the ends', () => {
      fc.assert(
        fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), ({ x, y }, t) => {
          const curve = through(x, y)
          const last = x.length - 1
          for (let i = 0; i <= last; i++) expect(Math.abs(curve(x[i]!) - y[i]!)).toBeLessThan(1e-9)
          for (let i = 0; i < last; i++) {
            const between = curve(x[i]! + t * (x[i + 1]! - x[i]!))
            expect(between).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-9)
            expect(between).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-9)
          }
          expect(curve(x[0]! - 1)).toBe(y[0]!)
          expect(curve(x[last]! + 1)).toBe(y[last]!)
        }),
      )
    })
    test('a straight line stays one', () => {
      const curve = through([0, 1, 4, 6], [1, 3, 9, 13])
      for (const at of [0, 0.3, 2.5, 5, 6]) expect(curve(at)).toBeCloseTo(1 + 2 * at, 12)
    })
    test('one point is a constant', () => expect(through([2], [7])(-5)).toBe(7))
    test('what has no meaning is refused', () => {
      expect(() => through([0, 0], [1, 2])).toThrow('(not-increasing)')
      expect(() => through([0, Number.NaN], [1, 2])).toThrow('(not-increasing)')
      expect(() => through([0, 1], [1])).toThrow('(wrong-length)')
      expect(() => through([], [])).toThrow('(wrong-length)')
      expect(() => through([0, 1], [1, Number.NaN])).toThrow('(not-finite)')
    })
  })
