/** Checks of the yearly energy. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { annualEnergy, annualEnergyByBins, meanPower, yearSeconds } from './annual-energy.ts'
import { energyPatternFactor, windDistribution, windSpeedDensity } from './weibull.ts'
import { windPower } from './wind-power.ts'

const grid = (from: number, to: number, step: number) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step)

/** 1.5 m, a quarter of the wind's power, from 3 m/s, held from 11 m/s on. */
const quarterCurve = (step: number) => {
  const windSpeed = grid(3, 11, step)
  const area = Math.PI * 0.75 ** 2
  return { windSpeed, power: windSpeed.map((speed) => 0.25 * windPower({ density: 1.225, area, speed })) }
}

describe('agrees: sum over a fine grid of the density, curve held above 11 m/s', () => {
  const rows = [
    [3, '111'],
    [4, '279'],
    [5, '529'],
    [6, '824'],
  ] as const
  const curve = quarterCurve(0.05)
  for (const [mean, kWh] of rows) {
    const d = windDistribution({ mean, shape: 2 })
    check(`${mean} m/s, Rayleigh, kWh`, annualEnergy(curve, d) / 3.6e6, kWh)
    test(`${mean} m/s, midpoints of 1 cm/s to 60 m/s`, () => {
      let sum = 0
      for (let v = 3.005; v < 60; v += 0.01)
        sum +=
          0.01 *
          windSpeedDensity(d, v) *
          0.25 *
          windPower({ density: 1.225, area: Math.PI * 0.75 ** 2, speed: Math.min(v, 11) })
      expect(Math.abs((sum * yearSeconds) / annualEnergy(curve, d) - 1)).toBeLessThan(5e-4)
    })
  }
})

describe('agrees: method of bins of 0.5 m/s, iec61400-12-1', () => {
  for (const mean of [4, 6, 8, 10])
    test(`${mean} m/s`, () => {
      const d = windDistribution({ mean, shape: 2 })
      const windSpeed = grid(3, 25, 0.5)
      const power = windSpeed.map((v) => Math.min(1000, 0.7 * (v ** 3 - 27)))
      const exact = annualEnergy({ windSpeed, power, above: 'stop' }, d)
      expect(Math.abs(annualEnergyByBins({ windSpeed, power }, d) / exact - 1)).toBeLessThan(0.006)
    })
})

describe('law: simple curves', () => {
  const anyShape = fc.double({ min: 0.3, max: 20, noNaN: true })
  test('constant power is its own mean, however the wind blows', () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: 0.1, max: 30, noNaN: true }), (shape, scale) => {
        expect(meanPower({ windSpeed: [0, 3, 30], power: [7, 7, 7] }, { scale, shape })).toBeCloseTo(7, 10)
      }),
    )
  })
  test('power in proportion to the wind has the mean of the wind', () => {
    for (const shape of [0.8, 1.5, 2, 5]) {
      const d = windDistribution({ mean: 6, shape })
      expect(meanPower({ windSpeed: [0, 2000], power: [0, 2000] }, d)).toBeCloseTo(6, 7)
    }
  })
  test('the cube of the wind has the energy pattern factor', () => {
    const windSpeed = grid(0, 80, 0.02)
    const d = windDistribution({ mean: 5, shape: 2 })
    const mean = meanPower({ windSpeed, power: windSpeed.map((v) => v ** 3) }, d)
    expect(mean / 125 / energyPatternFactor(2)).toBeCloseTo(1, 4)
  })
  test('a step on and a step off are shares of the time', () => {
    const d = { scale: 6, shape: 2 }
    const share = Math.exp(-((3 / 6) ** 2)) - Math.exp(-((9 / 6) ** 2))
    expect(meanPower({ windSpeed: [3, 9], power: [5, 5], above: 'stop' }, d)).toBeCloseTo(5 * share, 12)
  })
  test('more cuts of the same curve change nothing', () => {
    const d = { scale: 6, shape: 2.3 }
    const coarse = meanPower({ windSpeed: [3, 11], power: [0, 800] }, d)
    const windSpeed = grid(3, 11, 0.01)
    expect(meanPower({ windSpeed, power: windSpeed.map((v) => (v - 3) * 100) }, d)).toBeCloseTo(coarse, 7)
  })
  test('refuses the meaningless', () => {
    const d = { scale: 6, shape: 2 }
    expect(() => meanPower({ windSpeed: [], power: [] }, d)).toThrow(/wrong-length/)
    expect(() => meanPower({ windSpeed: [3, 2], power: [0, 1] }, d)).toThrow(/not-increasing/)
    expect(() => meanPower({ windSpeed: [3, 4], power: [0, Number.NaN] }, d)).toThrow(/not-finite/)
    expect(() => meanPower({ windSpeed: [3, 4], power: [0, 1] }, { scale: 6, shape: 0 })).toThrow(
      /below-minimum/,
    )
  })
})
