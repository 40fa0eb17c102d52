/** Checks of the statistics of a wind record, its turbulence and its rose, and of what a design takes over. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { drawn } from '../../test/sample-log.ts'
import { parseDesign } from '../machine/parse.ts'
import { energyPatternFactor } from '../physics/aerodynamics/weibull.ts'
import { histogramMoment } from '../physics/aerodynamics/wind-histogram.ts'
import { measuredSite } from './measured-site.ts'
import type { SeriesColumn, WindSeries } from './wind-series.ts'
import { windStatistics } from './wind-statistics.ts'

const column = (values: readonly number[]): SeriesColumn => ({
  value: Float64Array.from(values),
  known: new Uint8Array(values.length).fill(1),
})

/** Winds drawn from a Weibull distribution, one after the other without memory. */
function drawnSeries(
  count: number,
  { step = 3600, scale = 6, shape = 2, from = Date.UTC(2023, 0, 1) / 1000 } = {},
): WindSeries {
  const draw = drawn(11)
  return {
    time: Float64Array.from({ length: count }, (_, k) => from + k * step),
    wind: Float64Array.from({ length: count }, () => scale * (-Math.log1p(-draw())) ** (1 / shape)),
    extra: {},
    step,
  }
}

describe('law: a drawn distribution comes back', () => {
  const found = windStatistics(drawnSeries(8760))
  test('shape, scale, mean and pattern factor within what chance allows', () => {
    // four standard errors of a sample of 8760: 0.78 k/√n and 1.05 A/(k √n)
    expect(Math.abs(found.weibull!.shape - 2)).toBeLessThan((4 * 0.78 * 2) / Math.sqrt(8760))
    expect(Math.abs(found.weibull!.scale - 6)).toBeLessThan((4 * 1.05 * 6) / (2 * Math.sqrt(8760)))
    expect(found.patternFactor / energyPatternFactor(2)).toBeCloseTo(1, 1)
  })
  test('the histogram holds every reading, its mean is that of the readings', () => {
    expect(Array.from(found.histogram.count).reduce((sum, each) => sum + each, 0)).toBe(8760)
    expect(histogramMoment(found.histogram, 1) / found.mean).toBeCloseTo(1, 2)
  })
  test('twelve whole months, twenty-four hours, their means the mean of all', () => {
    expect(found.months.map(({ completeness }) => completeness)).toEqual(Array(12).fill(1))
    const all = found.months.reduce((sum, { mean, readings }) => sum + mean * readings, 0)
    expect(all / 8760 / found.mean).toBeCloseTo(1, 12)
    expect(found.hourlyMean.reduce((sum: number, each) => sum + each!, 0) / 24 / found.mean).toBeCloseTo(
      1,
      12,
    )
  })
  test('a month with under half of its readings has no mean', () => {
    const part = windStatistics(drawnSeries(24 * 40))
    expect(part.monthlyMean[0]).toBeGreaterThan(0)
    expect(part.monthlyMean[1]).toBeUndefined()
    expect(part.monthlyMean[5]).toBeUndefined()
  })
  test('winds all alike, or calm, have no Weibull distribution and no NaN', () => {
    for (const speed of [0, 5]) {
      const still = windStatistics({ ...drawnSeries(50), wind: new Float64Array(50).fill(speed) })
      expect(still.weibull).toBeUndefined()
      expect(JSON.stringify(still)).not.toContain('NaN')
    }
  })
})

describe('law: turbulence', () => {
  test('a sine of amplitude a about a mean has σ = a/√2, by readings of a second and by a column alike', () => {
    const n = 6000
    const wind = Float64Array.from({ length: n }, (_, k) => 8.5 + 2 * Math.sin((2 * Math.PI * k) / 60))
    const time = Float64Array.from({ length: n }, (_, k) => 1.7e9 - (1.7e9 % 600) + k)
    const fast = windStatistics({ time, wind, extra: {}, step: 1 })
    expect(fast.turbulence).toHaveLength(1)
    expect(fast.turbulence[0]!.mean).toBeCloseTo(Math.SQRT2 / 8.5, 3)
    expect(fast.turbulence[0]!.count).toBe(10)
    const slow = windStatistics({
      time: Float64Array.of(0, 600),
      wind: Float64Array.of(8, 8),
      extra: { deviation: column([Math.SQRT2, Math.SQRT2]) },
      step: 600,
    })
    expect(slow.turbulence[0]!.mean).toBeCloseTo(Math.SQRT2 / 8, 12)
    expect(slow.turbulence[0]!.model).toBeCloseTo((0.18 * (15 + 2 * 8.5)) / (3 * 8.5), 12)
  })
  test('readings of ten minutes say nothing of it', () =>
    expect(windStatistics(drawnSeries(1000, { step: 600 })).turbulence).toEqual([]))
})

describe('law: the rose', () => {
  test('shares sum to one; a weak sector between strong ones is told, and north lies around 0', () => {
    const degrees = Array.from({ length: 3600 }, (_, k) => (k * 0.1 + 355) % 360)
    const wind = Float64Array.from(degrees, (d) => (d > 168.75 && d < 191.25 ? 2 : 6))
    const { rose } = windStatistics({
      time: Float64Array.from(wind.keys()),
      wind,
      extra: { direction: column(degrees.map((d) => (d * Math.PI) / 180)) },
      step: 1,
    })
    expect(rose!.sectors.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
    for (const { share } of rose!.sectors) expect(share).toBeCloseTo(1 / 16, 2)
    expect(rose!.shadowed).toEqual(['S'])
  })
})

describe('law: what a design takes over is a design', () => {
  test('a year’s record fills months and histogram; a month’s record is a guess without months', () => {
    for (const [count, known] of [
      [8760, 'measured'],
      [24 * 30, 'guessed'],
    ] as const) {
      const site = measuredSite(windStatistics(drawnSeries(count)))
      const document = fixedDocument('disc')
      document.site = { ...document.site, ...site }
      const parsed = parseDesign(document)
      expect(parsed.ok || parsed.faults).toBe(true)
      expect(site.meanWind_m_per_s).toMatchObject({ known })
      expect(site.monthlyMean_m_per_s?.length).toBe(count === 8760 ? 12 : undefined)
      expect(site.averaging_s).toBe(3600)
    }
  })
})
