/** Checks of the air's viscosity. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { airViscosity } from './air-viscosity.ts'

describe('source: icao7488, main table, dynamic viscosity (from memory, not opened)', () => {
  check('0 m, 288.15 K', airViscosity(288.15), '1.7894e-5')
  check('11 000 m, 216.65 K', airViscosity(216.65), '1.4216e-5')
})

describe('law: viscosity of a gas grows with temperature', () => {
  test('from 100 to 1900 K', () => {
    for (let T = 100; T < 1900; T += 50) expect(airViscosity(T + 50)).toBeGreaterThan(airViscosity(T))
    expect(() => airViscosity(0)).toThrow(/below-minimum/)
  })
})
