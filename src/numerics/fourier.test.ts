/** Checks of the Fourier series. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import {
  type FourierSeries,
  fourierSeries,
  harmonicAmplitude,
  harmonicPhase,
  seriesDelayed,
  seriesDerivative,
  seriesPeak,
  seriesRms,
  seriesSamples,
  seriesScaled,
  seriesSum,
  seriesValue,
} from './fourier.ts'

const sampled = (f: (x: number) => number, N: number, orders: number) =>
  fourierSeries(
    Array.from({ length: N }, (_, k) => f((2 * Math.PI * k) / N)),
    orders,
  )

const entry = fc.double({ min: -10, max: 10, noNaN: true })
const series: fc.Arbitrary<FourierSeries> = fc
  .array(fc.tuple(entry, entry), { minLength: 1, maxLength: 9 })
  .map((rows) => ({
    cos: Float64Array.from(rows, ([a]) => a),
    sin: Float64Array.from(rows, ([, b], h) => (h === 0 ? 0 : b)),
  }))
const angle = fc.double({ min: -20, max: 20, noNaN: true })

describe('source: kreyszig2011, sections 11.1 and 11.2 — square and triangle wave (from memory, not opened)', () => {
  // Square wave sampled at half steps off its jumps: sine amplitudes 4/(π h), h odd.
  const square = sampled((x) => Math.sign(Math.sin(x + Math.PI / 65536)), 65536, 9)
  check('square wave, order 1: 4/π', () => harmonicAmplitude(square, 1), '1.2732395')
  check('square wave, order 3: 4/(3π)', () => harmonicAmplitude(square, 3), '0.4244132')
  check('square wave, order 9: 4/(9π)', () => harmonicAmplitude(square, 9), '0.1414711')
  // Triangle wave between ±1: cosine amplitudes 8/(π h)², h odd.
  const triangle = sampled((x) => Math.abs(2 - (2 * x) / Math.PI) - 1, 65536, 5)
  check('triangle wave, order 1: 8/π²', () => harmonicAmplitude(triangle, 1), '0.8105695')
  check('triangle wave, order 5: 8/(25π²)', () => harmonicAmplitude(triangle, 5), '0.0324228')
})

describe('source: abramowitz1964, chapter 5 — the sine integral Si(π) (from memory, not opened)', () => {
  // Gibbs: the partial sums of the square wave rise to (2/π) Si(π), Si(π) = 1.851937.
  const partial = (orders: number): FourierSeries => ({
    cos: new Float64Array(orders + 1),
    sin: Float64Array.from({ length: orders + 1 }, (_, h) => (h % 2 === 1 ? 4 / (Math.PI * h) : 0)),
  })
  check('overshoot of 201 odd orders, times π/2', () => (seriesPeak(partial(401)) * Math.PI) / 2, '1.852')
})

describe('law: Parseval', () => {
  test('mean square of the samples equals that of the series', () => {
    fc.assert(
      fc.property(series, (f) => {
        const samples = seriesSamples(f, 32)
        const mean = samples.reduce((s, y) => s + y * y, 0) / 32
        expect(Math.abs(Math.sqrt(mean) - seriesRms(f))).toBeLessThan(1e-11)
      }),
    )
  })
})

describe('law: what is sampled comes back', () => {
  test('any band-limited series', () => {
    fc.assert(
      fc.property(series, (f) => {
        const back = fourierSeries(seriesSamples(f, 2 * f.cos.length + 1), f.cos.length - 1)
        for (let h = 0; h < f.cos.length; h++) {
          expect(Math.abs(back.cos[h]! - f.cos[h]!)).toBeLessThan(1e-12 * 100)
          expect(Math.abs(back.sin[h]! - f.sin[h]!)).toBeLessThan(1e-12 * 100)
        }
      }),
    )
  })
})

describe('agrees: values by recurrence against cosines and sines one by one', () => {
  test('order 300', () => {
    const f = {
      cos: Float64Array.from({ length: 301 }, (_, h) => 1 / (1 + h)),
      sin: Float64Array.from({ length: 301 }, (_, h) => h / 90_000),
    }
    for (const x of [0, 0.1, 1, Math.PI, 6, -50]) {
      let sum = 0
      for (let h = 0; h <= 300; h++) sum += f.cos[h]! * Math.cos(h * x) + f.sin[h]! * Math.sin(h * x)
      expect(Math.abs(seriesValue(f, x) - sum)).toBeLessThan(1e-11)
    }
  })
})

describe('law: series add, scale, shift and differentiate as waves do', () => {
  test('a delay moves the wave', () => {
    fc.assert(
      fc.property(series, angle, angle, (f, lag, x) => {
        expect(Math.abs(seriesValue(seriesDelayed(f, lag), x) - seriesValue(f, x - lag))).toBeLessThan(1e-10)
      }),
    )
  })
  test('a delay keeps amplitudes and adds order × lag to the phase', () => {
    const f: FourierSeries = { cos: Float64Array.of(0, 3, 0), sin: Float64Array.of(0, 0, 2) }
    const later = seriesDelayed(f, 0.4)
    expect(harmonicAmplitude(later, 1)).toBeCloseTo(3, 14)
    expect(harmonicPhase(later, 1)).toBeCloseTo(0.4, 14)
    expect(harmonicPhase(later, 2) - harmonicPhase(f, 2)).toBeCloseTo(0.8, 14)
  })
  test('sum and scale are linear, also for unlike lengths', () => {
    fc.assert(
      fc.property(series, series, entry, angle, (f, g, k, x) => {
        const both = seriesValue(seriesSum([f, seriesScaled(g, k)]), x)
        expect(Math.abs(both - seriesValue(f, x) - k * seriesValue(g, x))).toBeLessThan(1e-10)
      }),
    )
  })
  test('the derivative is the slope', () => {
    fc.assert(
      fc.property(series, angle, (f, x) => {
        const slope = (seriesValue(f, x + 1e-5) - seriesValue(f, x - 1e-5)) / 2e-5
        expect(Math.abs(seriesValue(seriesDerivative(f), x) - slope)).toBeLessThan(1e-5)
      }),
    )
  })
  test('nothing to add is zero; an order beyond the end is zero', () => {
    expect([...seriesSum([]).cos]).toEqual([0])
    expect(harmonicAmplitude(seriesSum([]), 7)).toBe(0)
    expect(harmonicPhase(seriesSum([]), 7)).toBe(0)
  })
})

describe('law: the peak is the largest magnitude', () => {
  test('one sine at any phase, any order', () => {
    for (const order of [1, 3, 17, 60])
      for (const phase of [0, 0.123, 1, 2.5]) {
        const f = { cos: new Float64Array(order + 1), sin: new Float64Array(order + 1) }
        f.cos[order] = 2 * Math.cos(phase)
        f.sin[order] = 2 * Math.sin(phase)
        expect(Math.abs(seriesPeak(f) - 2)).toBeLessThan(1e-13)
      }
  })
  test('never below any sample, and the finest sampling comes close to it', () => {
    fc.assert(
      fc.property(series, (f) => {
        const fine = seriesSamples(f, 4096).reduce((peak, y) => Math.max(peak, Math.abs(y)), 0)
        expect(seriesPeak(f)).toBeGreaterThanOrEqual(fine * (1 - 1e-12) - 1e-12)
        expect(seriesPeak(f) - fine).toBeLessThan(1e-4 * fine + 1e-12)
      }),
      { numRuns: 1000 },
    )
  })
  test('a constant', () => expect(seriesPeak({ cos: Float64Array.of(-4), sin: new Float64Array(1) })).toBe(4))
})

describe('law: what has no meaning is refused', () => {
  test('more orders than the samples carry', () => {
    expect(() => fourierSeries([1, 2, 3, 4], 2)).toThrow('(above-maximum)')
    expect(() => fourierSeries([1, 2, 3, 4], -1)).toThrow('(above-maximum)')
    expect(() => fourierSeries([], 0)).toThrow('(above-maximum)')
  })
})
