/** Checks of scales and ticks. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  linearScale,
  niceDomain,
  type Span,
  spreadApart,
  tickStep,
  ticks,
  tickText,
  widened,
} from './axis.ts'

const span: fc.Arbitrary<Span> = fc
  .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-5, max: 1e6, noNaN: true }))
  .map(([from, width]) => [from, from + width] as const)

describe('law: a scale rises, and meets the ends of its range', () => {
  test('monotone', () =>
    fc.assert(
      fc.property(
        span,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (domain, a, b) => {
          const scale = linearScale(domain, [10, 500])
          const [least, greatest] = domain
          const [low, high] = [Math.min(a, b), Math.max(a, b)].map(
            (share) => least + share * (greatest - least),
          )
          expect(scale(low!)).toBeLessThanOrEqual(scale(high!))
          expect(scale(least)).toBe(10)
          expect(scale(greatest)).toBeCloseTo(500, 9)
        },
      ),
    ))
  test('an empty, reversed or endless domain still gives numbers', () => {
    for (const domain of [
      [0, 0],
      [3, 3],
      [5, 2],
      [0, Number.POSITIVE_INFINITY],
      [Number.NaN, 1],
    ] as const) {
      const [least, greatest] = widened(domain)
      expect(greatest).toBeGreaterThan(least)
      expect(Number.isFinite(linearScale(domain, [0, 1])(least))).toBe(true)
    }
  })
})

describe('law: ticks are round, inside, evenly spaced and few', () => {
  test('of any domain', () =>
    fc.assert(
      fc.property(span, fc.integer({ min: 2, max: 12 }), (domain, count) => {
        const step = tickStep(domain, count)
        const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9)
        expect([1, 2, 5].some((one) => Math.abs(mantissa - one) < 1e-6)).toBe(true)
        const list = ticks(domain, count)
        expect(list.length).toBeLessThanOrEqual(count + 1)
        for (const value of list) {
          expect(value).toBeGreaterThanOrEqual(domain[0] - step * 1e-6)
          expect(value).toBeLessThanOrEqual(domain[1] + step * 1e-6)
          expect(tickText(value, step)).toMatch(/^−?\d+(\.\d+)?(e[+−]?\d+)?$/)
        }
        const [low, high] = niceDomain(domain, count)
        expect(low).toBeLessThanOrEqual(domain[0] + step * 1e-6)
        expect(high).toBeGreaterThanOrEqual(domain[1] - step * 1e-6)
      }),
    ))
  test('texts of neighbours differ', () => {
    for (const domain of [
      [0, 1],
      [0, 0.02],
      [-300, 300],
      [0, 25],
      [0, 1800],
    ] as const) {
      const step = tickStep(domain, 6)
      const texts = ticks(domain, 6).map((value) => tickText(value, step))
      expect(new Set(texts).size).toBe(texts.length)
    }
    expect(tickText(-5, 5)).toBe('−5')
    expect(tickText(0.25, 0.05)).toBe('0.25')
  })
})

describe('law: labels pushed apart keep their order and their distance', () => {
  test('where they fit', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 250, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (wanted) => {
          const placed = spreadApart(wanted, 16, [0, 200])
          const rising = [...placed].sort((a, b) => a - b)
          for (let k = 1; k < rising.length; k++)
            expect(rising[k]! - rising[k - 1]!).toBeGreaterThanOrEqual(16 - 1e-9)
          for (const [a, one] of wanted.entries())
            for (const [b, other] of wanted.entries())
              if (one < other) expect(placed[a]!).toBeLessThan(placed[b]!)
          expect(rising[0]!).toBeGreaterThanOrEqual(-1e-9)
          expect(rising.at(-1)!).toBeLessThanOrEqual(200 + 1e-9)
        },
      ),
    ))
})
