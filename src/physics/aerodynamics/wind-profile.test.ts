/** Checks of the wind profile. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { shearExponent, windSpeedByLogLaw, windSpeedByPowerLaw } from './wind-profile.ts'

describe('source: manwell2009, section 2.3, one-seventh power law (from memory, not opened)', () => {
  // "doubling the height raises the wind by a tenth and the power by about a third"
  const ratio = windSpeedByPowerLaw({ windSpeed: 1, from: 10, to: 20, exponent: 1 / 7 })
  check('speed', ratio, '1.10')
  check('power', ratio ** 3, '1.35')
})

describe('agrees: hand arithmetic, 10 to 18 m with exponent 0.2', () => {
  const ratio = windSpeedByPowerLaw({ windSpeed: 1, from: 10, to: 18, exponent: 0.2 })
  check('e^(0.2 ln 1.8)', ratio, '1.1247')
  check('its cube', ratio ** 3, '1.4229')
})

describe('agrees: both laws have one slope where α = 1 / ln(h/z0)', () => {
  for (const z0 of [0.001, 0.03, 0.1, 0.5])
    test(`roughness ${z0} m`, () => {
      const at = { windSpeed: 7, from: 10, to: 10.01 }
      const log = windSpeedByLogLaw({ ...at, roughness: z0 })
      const power = windSpeedByPowerLaw({ ...at, exponent: 1 / Math.log(10 / z0) })
      expect((log - power) / (log - 7)).toBeCloseTo(0, 2)
    })
})

describe('law: there and back, steps, inverse', () => {
  const height = fc.double({ min: 2, max: 200, noNaN: true })
  test('two steps are one', () => {
    fc.assert(
      fc.property(
        height,
        height,
        height,
        fc.double({ min: -0.3, max: 0.6, noNaN: true }),
        (a, b, c, exponent) => {
          const middle = windSpeedByPowerLaw({ windSpeed: 6, from: a, to: b, exponent })
          const twice = windSpeedByPowerLaw({ windSpeed: middle, from: b, to: c, exponent })
          expect(twice).toBeCloseTo(windSpeedByPowerLaw({ windSpeed: 6, from: a, to: c, exponent }), 9)
          const up = windSpeedByLogLaw({ windSpeed: 6, from: a, to: b, roughness: 0.05 })
          expect(windSpeedByLogLaw({ windSpeed: up, from: b, to: a, roughness: 0.05 })).toBeCloseTo(6, 9)
        },
      ),
    )
  })
  test('shearExponent undoes windSpeedByPowerLaw', () => {
    for (const exponent of [-0.1, 0, 0.14, 0.4]) {
      const highSpeed = windSpeedByPowerLaw({ windSpeed: 5, from: 10, to: 30, exponent })
      expect(shearExponent({ lowSpeed: 5, highSpeed, low: 10, high: 30 })).toBeCloseTo(exponent, 12)
    }
  })
  test('displacement only shifts the heights', () => {
    expect(
      windSpeedByLogLaw({ windSpeed: 5, from: 12, to: 22, roughness: 0.1, displacement: 2 }),
    ).toBeCloseTo(windSpeedByLogLaw({ windSpeed: 5, from: 10, to: 20, roughness: 0.1 }), 12)
  })
  test('refuses the meaningless', () => {
    expect(() => windSpeedByLogLaw({ windSpeed: 5, from: 0.05, to: 10, roughness: 0.1 })).toThrow(
      /below-minimum/,
    )
    expect(() => windSpeedByPowerLaw({ windSpeed: 5, from: 0, to: 10, exponent: 0.2 })).toThrow(
      /below-minimum/,
    )
    expect(() => shearExponent({ lowSpeed: 4, highSpeed: 5, low: 10, high: 10 })).toThrow(/conflict/)
  })
})
