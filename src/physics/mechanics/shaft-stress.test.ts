/** Checks of shafts and keys. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { keyStress, shaftStress } from './shaft-stress.ts'

describe('source: jindal2010, example 15-2, page 421 — shaft of two gears, 67.5 MPa shear at the printed 17.73 mm', () => {
  const tan = Math.tan((20 * Math.PI) / 180)
  const [W, P] = [400, (400 * 75) / 125]
  const across = (W * 120 - P * 320) / 440
  const along = ((W * 120 - P * 320) / 440) * tan
  const moment = Math.hypot((W - across - P) * 0.12, ((W - P) * tan - along) * 0.12)
  // Shock factors 1.5 on bending and 2 on torque are the example's.
  const { tresca } = shaftStress({ moment: 1.5 * moment, torque: 2 * 30, diameter: 0.01773 })
  // The printed diameter is rounded to 0.01 mm, and stress goes with its cube.
  check('greatest shear', tresca / 2e6, '67.5', { relative: 1e-3 })
})

describe('source: khurmi2005, square key of a muff coupling, from an excerpt that does not name its book — 1100 N m, MPa', () => {
  const { shear, pressure } = keyStress({
    torque: 1100,
    diameter: 0.055,
    width: 0.018,
    height: 0.018,
    length: 0.0975,
  })
  check('shear', shear / 1e6, '22.8')
  check('crushing', pressure / 1e6, '45.6')
})

describe('agrees: section integrals over the ring', () => {
  test('bending and torsion against sums of thin rings', () => {
    const [D, d, n] = [0.04, 0.025, 20000]
    let J = 0
    for (let i = 0; i < n; i++) {
      const r = d / 2 + ((D - d) / 2) * ((i + 0.5) / n)
      J += 2 * Math.PI * r ** 3 * ((D - d) / 2 / n)
    }
    const { normal, shear } = shaftStress({ moment: 30, torque: 50, diameter: D, bore: d })
    expect(shear / ((50 * D) / 2 / J)).toBeCloseTo(1, 7)
    expect(normal / ((30 * D) / J)).toBeCloseTo(1, 7)
  })
})

describe('law: shaft stress', () => {
  test('von Mises is between 0.866 and 1 of Tresca, and both keep to the larger part', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (moment, torque, q) => {
          const one = shaftStress({ moment, torque, diameter: 0.03, bore: 0.03 * q })
          expect(one.vonMises).toBeLessThanOrEqual(one.tresca * (1 + 1e-12))
          expect(one.vonMises).toBeGreaterThanOrEqual(one.tresca * (Math.sqrt(3) / 2) * (1 - 1e-12))
          expect(one.vonMises).toBeGreaterThanOrEqual(one.normal)
        },
      ),
    )
  })
  test('a bore as wide as the shaft is refused', () => {
    expect(() => shaftStress({ moment: 1, torque: 1, diameter: 0.02, bore: 0.02 })).toThrow('below diameter')
  })
})
