/** Checks of energy and moments by a measured histogram. */
import { describe, expect, test } from 'vitest'
import { meanPower } from './annual-energy.ts'
import { energyPatternFactor, meanWindSpeed, windSpeedShare } from './weibull.ts'
import { histogramMeanPower, histogramMoment, histogramShare } from './wind-histogram.ts'

const distribution = { scale: 6, shape: 1.8 }
/** The distribution as a fine histogram. */
const fine = (binWidth: number) => ({
  binWidth,
  count: Array.from(
    { length: Math.ceil(45 / binWidth) },
    (_, i) => windSpeedShare(distribution, (i + 1) * binWidth) - windSpeedShare(distribution, i * binWidth),
  ),
})
const curve = { windSpeed: [3, 7, 11], power: [0, 150, 800] }

describe('agrees: a fine histogram of a Weibull distribution and the distribution itself', () => {
  test('mean, pattern factor, share, mean power', () => {
    const h = fine(0.1)
    expect(histogramMoment(h, 1) / meanWindSpeed(distribution)).toBeCloseTo(1, 4)
    expect(histogramMoment(h, 3) / histogramMoment(h, 1) ** 3 / energyPatternFactor(1.8)).toBeCloseTo(1, 3)
    expect(histogramShare(h, 5.03)).toBeCloseTo(windSpeedShare(distribution, 5.03), 4)
    expect(histogramMeanPower(curve, h) / meanPower(curve, distribution)).toBeCloseTo(1, 3)
  })
  test('bins of 0.5 m/s are as good as 0.2 % of the energy', () =>
    expect(histogramMeanPower(curve, fine(0.5)) / meanPower(curve, distribution)).toBeCloseTo(1, 2))
})

describe('law: histogram', () => {
  test('constant power gives itself; a stop above gives none there; any unit of count will do', () => {
    const h = { binWidth: 1, count: [0, 3, 5, 2] }
    expect(histogramMeanPower({ windSpeed: [0, 9], power: [40, 40] }, h)).toBeCloseTo(40, 12)
    expect(histogramMeanPower({ windSpeed: [0, 2], power: [40, 40], above: 'stop' }, h)).toBeCloseTo(12, 12)
    expect(histogramMeanPower(curve, { binWidth: 1, count: [0, 300, 500, 200] })).toBe(
      histogramMeanPower(curve, h),
    )
    expect(histogramMoment(h, 0)).toBeCloseTo(1, 12)
    expect(histogramShare(h, 4)).toBe(1)
    expect(histogramShare(h, 400)).toBe(1)
    expect(histogramShare(h, 0)).toBe(0)
  })
  test('nothing counted, or less than nothing, is refused', () => {
    for (const count of [[], [0, 0], [1, -1], [Number.NaN]])
      expect(() => histogramShare({ binWidth: 1, count }, 1)).toThrow(RangeError)
    expect(() => histogramMoment({ binWidth: 0, count: [1] }, 1)).toThrow(RangeError)
  })
})
