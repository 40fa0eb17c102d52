/** Checks of the air's density. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { airDensity, airDensityAtAltitude, standardPressure, standardTemperature } from './air-density.ts'

describe('source: icao7488, main table over geopotential height (from memory, not opened)', () => {
  const rows = [
    //  m      Pa        K         kg/m³
    [0, '101325', '288.150', '1.22500'],
    [1000, '89874.6', '281.650', '1.11164'],
    [2000, '79495.2', '275.150', '1.00649'],
    [3000, '70108.5', '268.650', '0.90912'],
    [5000, '54019.9', '255.650', '0.73612'],
    [11000, '22632', '216.650', '0.36392'],
  ] as const
  for (const [h, p, T, ρ] of rows) {
    check(`pressure at ${h} m`, standardPressure(h), p)
    check(`temperature at ${h} m`, standardTemperature(h), T)
    check(`density at ${h} m`, airDensityAtAltitude({ altitude: h }), ρ)
  }
})

describe('agrees: vapour pressure by the Magnus formula in the mixture of two ideal gases', () => {
  // e_s = 6.112 hPa exp(17.62 t / (243.12 + t)), WMO No. 8, annex 4.B (from memory, not opened)
  // The standard's exponential is 9 % above Magnus at 40 °C.
  for (const [t, share] of [
    [-10, 1e-3],
    [0, 1e-3],
    [10, 1e-3],
    [20, 1e-3],
    [30, 1.5e-3],
    [40, 3e-3],
  ] as const)
    test(`${t} °C, saturated`, () => {
      const T = 273.15 + t
      const e = 611.2 * Math.exp((17.62 * t) / (243.12 + t))
      const ρ = (101325 - e) / (287.05 * T) + e / (461.5 * T)
      expect(Math.abs(airDensity({ pressure: 101325, temperature: T, humidity: 1 }) / ρ - 1)).toBeLessThan(
        share,
      )
    })
})

describe('law: meaning of the inputs', () => {
  test('moist air is lighter, and never negative however hot', () => {
    const dry = airDensity({ pressure: 1e5, temperature: 303 })
    expect(airDensity({ pressure: 1e5, temperature: 303, humidity: 1 })).toBeLessThan(dry)
    expect(airDensity({ pressure: 1e5, temperature: 2000, humidity: 1 })).toBeGreaterThan(0)
  })
  test('inverse to temperature, in proportion to pressure', () => {
    const ρ = airDensity({ pressure: 1e5, temperature: 300 })
    expect(airDensity({ pressure: 2e5, temperature: 600 })).toBeCloseTo(ρ, 12)
  })
  test('refuses the meaningless', () => {
    expect(() => airDensity({ pressure: 0, temperature: 300 })).toThrow(/below-minimum/)
    expect(() => airDensity({ pressure: 1e5, temperature: 300, humidity: 1.2 })).toThrow(/above-maximum/)
    expect(() => standardPressure(20000)).toThrow(/above-maximum/)
    expect(() => airDensityAtAltitude({ altitude: Number.NaN })).toThrow(/not-finite/)
  })
})
