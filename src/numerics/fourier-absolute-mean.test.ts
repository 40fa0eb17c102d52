/** Checks the mean of |f| against closed forms and against plain sums. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type FourierSeries, seriesSamples } from './fourier.ts'
import { seriesAbsoluteMean } from './fourier-absolute-mean.ts'

const series = (cos: number[], sin: number[]): FourierSeries => ({
  cos: Float64Array.from(cos),
  sin: Float64Array.from(sin),
})

describe('agrees: closed forms', () => {
  test('sine of any phase: 2/π', () => {
    for (const φ of [0, 0.3, 1, 2, 5])
      expect(seriesAbsoluteMean(series([0, Math.cos(φ)], [0, Math.sin(φ)]))).toBeCloseTo(2 / Math.PI, 13)
  })
  test('1 + 2 cos x: zeros at ±2π/3', () =>
    expect(seriesAbsoluteMean(series([1, 2], [0, 0]))).toBeCloseTo(1 / 3 + (2 * Math.sqrt(3)) / Math.PI, 13))
})

describe('agrees: plain sum over many samples', () => {
  test('any series', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2, maxLength: 12 }),
        (a) => {
          const f = series(
            a,
            a.map((x, h) => (h === 0 ? 0 : x * x - 0.3)),
          )
          const samples = seriesSamples(f, 8192)
          const plain = samples.reduce((sum, x) => sum + Math.abs(x), 0) / samples.length
          expect(Math.abs(seriesAbsoluteMean(f) - plain)).toBeLessThan(2e-5 * (1 + plain))
        },
      ),
      { numRuns: 40 },
    )
  })
})

describe('law: bounds and degenerate series', () => {
  test('nothing gives nothing; one sign gives the mean', () => {
    expect(seriesAbsoluteMean(series([0, 0], [0, 0]))).toBe(0)
    expect(seriesAbsoluteMean(series([-3, 1], [0, 1]))).toBeCloseTo(3, 13)
    expect(seriesAbsoluteMean(series([0, 1e-300], [0, 0]))).toBeGreaterThan(0)
  })
})
