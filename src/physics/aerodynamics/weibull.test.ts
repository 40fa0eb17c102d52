/** Checks of the Weibull distribution. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { logGamma } from '../../numerics/gamma.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import {
  energyPatternFactor,
  meanWindSpeed,
  windBins,
  windDistribution,
  windDistributionFromMoments,
  windSpeedDensity,
  windSpeedShare,
} from './weibull.ts'

describe('source: manwell2009, table 2.4, deviation and energy pattern factor by shape (from memory, not opened)', () => {
  const rows = [
    // k   σ/v̄      K_e
    [1.2, '0.837', '3.99'],
    [2, '0.523', '1.91'],
    [3, '0.363', '1.40'],
    [5, '0.229', '1.15'],
  ] as const
  for (const [k, σ, K] of rows) {
    check(`energy pattern factor, k = ${k}`, energyPatternFactor(k), K)
    check(
      `shape back from σ/v̄ = ${σ}`,
      () => windDistributionFromMoments({ mean: 1, deviation: Number(σ) }).shape,
      String(k),
      { relative: 0.005 }, // σ/v̄ is printed to three digits
    )
  }
})

describe('agrees: Rayleigh distribution in closed form', () => {
  check('6/π', energyPatternFactor(2), '1.9099')
  test('scale 2 v̄/√π, share above the mean e^(−π/4)', () => {
    const d = windDistribution({ mean: 5, shape: 2 })
    expect(d.scale).toBeCloseTo(10 / Math.sqrt(Math.PI), 12)
    expect(1 - windSpeedShare(d, 5)).toBeCloseTo(Math.exp(-Math.PI / 4), 12)
  })
})

const anyDistribution = fc.record({
  scale: fc.double({ min: 0.5, max: 20, noNaN: true }),
  shape: fc.double({ min: 0.8, max: 8, noNaN: true }),
})

describe('law: density, share, moments', () => {
  test('the slope of the share is the density', () => {
    fc.assert(
      fc.property(anyDistribution, fc.double({ min: 0.05, max: 2.5, noNaN: true }), (d, x) => {
        const v = x * d.scale
        const h = 1e-4 * v
        const slope = (windSpeedShare(d, v + h) - windSpeedShare(d, v - h)) / (2 * h)
        expect(Math.abs(slope - windSpeedDensity(d, v)) * d.scale).toBeLessThan(2e-5)
      }),
    )
  })
  test('the mean of the density is the mean asked for', () => {
    for (const shape of [1.2, 2, 3.5]) {
      const d = windDistribution({ mean: 6, shape })
      const { nodes, weights } = gaussLegendreOn(200, 0, 60)
      let mean = 0
      nodes.forEach((v, i) => {
        mean += weights[i]! * v * windSpeedDensity(d, v)
      })
      expect(mean).toBeCloseTo(6, 4)
      expect(meanWindSpeed(d)).toBeCloseTo(6, 12)
    }
  })
  test('shares of the bins sum to one and each is the difference of the share', () => {
    fc.assert(
      fc.property(
        anyDistribution,
        fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), { minLength: 1 }),
        (d, steps) => {
          let at = 0
          const edges = steps.map((step) => {
            at += step
            return at
          })
          const bins = windBins(d, edges)
          expect(bins.share.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
          expect(bins.from[0]).toBe(0)
          expect(bins.share[0]).toBeCloseTo(windSpeedShare(d, edges[0]!), 12)
          for (const share of bins.share) expect(share).toBeGreaterThanOrEqual(0)
        },
      ),
    )
  })
  test('moments there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.35, max: 90, noNaN: true }), (shape) => {
        const square = Math.exp(logGamma(1 + 2 / shape) - 2 * logGamma(1 + 1 / shape)) - 1
        const back = windDistributionFromMoments({ mean: 7, deviation: 7 * Math.sqrt(square) })
        expect(Math.abs(back.shape / shape - 1)).toBeLessThan(1e-6)
      }),
    )
  })
  test('always finite, at shapes of both ends and at calm', () => {
    for (const shape of [0.3, 1, 100]) {
      const d = windDistribution({ mean: 5, shape })
      for (const v of [0, 1e-9, 5, 1000]) {
        expect(Number.isFinite(windSpeedDensity(d, v))).toBe(true)
        expect(Number.isFinite(windSpeedShare(d, v))).toBe(true)
      }
      expect(Number.isFinite(energyPatternFactor(shape))).toBe(true)
    }
  })
  test('refuses the meaningless', () => {
    expect(() => windDistribution({ mean: 0, shape: 2 })).toThrow(/below-minimum/)
    expect(() => energyPatternFactor(0.1)).toThrow(/below-minimum/)
    expect(() => windBins({ scale: 6, shape: 2 }, [3, 3])).toThrow(/not-increasing/)
    expect(() => windDistributionFromMoments({ mean: 1, deviation: 1e6 })).toThrow(/above-maximum/)
  })
})
