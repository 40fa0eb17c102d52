/** Checks of the turbulence figures. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { normalTurbulenceIntensity, turbulenceIntensity } from './turbulence.ts'

describe('source: burton2001, page 22 — turbulence at 15 m/s of the higher turbulence sites', () => {
  check('I_15 at 15 m/s', () => normalTurbulenceIntensity(15), '0.18')
})

describe('law: turbulence', () => {
  test('the model falls with the wind towards a/(a + 1) of its value at 15 m/s', () => {
    expect(normalTurbulenceIntensity(5)).toBeGreaterThan(normalTurbulenceIntensity(25))
    expect(normalTurbulenceIntensity(1e9)).toBeCloseTo(0.12, 6)
  })
  test('deviation over mean, in any unit', () => {
    expect(turbulenceIntensity({ deviation: 3.6, mean: 36 })).toBeCloseTo(0.1, 12)
    expect(() => turbulenceIntensity({ deviation: 1, mean: 0 })).toThrow(RangeError)
  })
})
describe('agrees: the model and its own formula of the deviation', () => {
  test('σ_1 = I_15 (15 + a v)/(a + 1)', () => {
    for (const v of [3, 8, 20])
      expect(turbulenceIntensity({ deviation: (0.18 * (15 + 2 * v)) / 3, mean: v })).toBeCloseTo(
        normalTurbulenceIntensity(v),
        12,
      )
  })
})
