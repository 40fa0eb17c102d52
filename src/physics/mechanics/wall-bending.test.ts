/** Checks of a pocket's wall that bends. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import reference from '../../../test/reference/mechanics/wall.json' with { type: 'json' }
import { pocketWallStress } from './retention.ts'
import { type WallTop, wallBending } from './wall-bending.ts'

/** Pressure, height, thickness and modulus 1. */
const unit = (width: number, top: WallTop, poisson = 0.35) =>
  wallBending({ force: width, width, height: 1, thickness: 1, modulus: 1, poisson, top })

// The table is rounded, and six polynomials each way are within 0.3 % here.
const ritz = { relative: 3e-3 }

describe('source: roark, table 11.4, case 8a (from memory, not opened) — all edges held, ν = 0.3', () => {
  check('square, stress', unit(1, 'clamped', 0.3).stress, '0.3078', ritz)
  check('square, deflection', unit(1, 'clamped', 0.3).deflection, '0.0138', ritz)
  check('1.4 : 1, stress', unit(1.4, 'clamped', 0.3).stress, '0.4356', ritz)
  check('1.4 : 1, deflection', unit(1.4, 'clamped', 0.3).deflection, '0.0226', ritz)
  check('2 : 1, stress', unit(2, 'clamped', 0.3).stress, '0.4974', ritz)
  check('2 : 1, deflection', unit(2, 'clamped', 0.3).deflection, '0.0277', ritz)
})

describe('agrees: bicubic finite elements, test/reference/mechanics/wall.py', () => {
  for (const [name, { stress, deflection }] of Object.entries(reference)) {
    const [top, width] = name.split(' ') as [WallTop, string]
    // where a clamped end meets a free top the stress has a peak that polynomials overshoot
    const allowed = top === 'free' ? 0.06 : 0.01
    test(name, () => {
      const own = unit(Number(width), top)
      expect(Math.abs(own.stress / stress - 1)).toBeLessThan(allowed)
      expect(Math.abs(own.deflection / deflection - 1)).toBeLessThan(0.01)
    })
  }
})

describe('law: limits and scaling', () => {
  test('a wide wall with a free top nears a cantilever, σ = 3 p h²/t² and w = 3 p h⁴ (1 − ν²)/(2 E t³)', () => {
    const { stress, deflection } = unit(5, 'free')
    expect(stress).toBeGreaterThan(0.9 * 3)
    expect(stress).toBeLessThan(1.02 * 3)
    expect(deflection / (1.5 * (1 - 0.35 ** 2))).toBeGreaterThan(0.9)
    expect(deflection / (1.5 * (1 - 0.35 ** 2))).toBeLessThan(1)
  })
  test('a tall wall with a free top is a strip between its ends, σ = p w²/2t²', () => {
    expect(unit(0.25, 'free').stress / (0.5 * 0.25 ** 2)).toBeCloseTo(1, 0)
  })
  test('the better the top is held, the less it bends; stress falls with the square of the thickness', () => {
    for (const width of [0.5, 1, 2.5]) {
      const [free, supported, clamped] = (['free', 'supported', 'clamped'] as const).map((top) =>
        unit(width, top),
      )
      expect(free!.deflection).toBeGreaterThan(supported!.deflection)
      expect(supported!.deflection).toBeGreaterThan(clamped!.deflection)
      expect(free!.stress).toBeGreaterThan(clamped!.stress)
    }
    const wall = { force: 100, width: 0.02, height: 0.01, modulus: 2e9, top: 'free' } as const
    const thin = wallBending({ ...wall, thickness: 0.002 })
    const thick = wallBending({ ...wall, thickness: 0.004 })
    expect(thin.stress / thick.stress).toBeCloseTo(4, 9)
    expect(thin.deflection / thick.deflection).toBeCloseTo(8, 9)
  })
  test('all edges held, turned by a quarter or taken from the table: the same', () => {
    const wall = { force: 100, thickness: 0.002, modulus: 2e9 }
    const own = wallBending({ ...wall, width: 0.02, height: 0.014, poisson: 0.3, top: 'clamped' })
    const turned = wallBending({ ...wall, width: 0.014, height: 0.02, poisson: 0.3, top: 'clamped' })
    expect(own.stress / turned.stress).toBeCloseTo(1, 2)
    expect(own.stress / pocketWallStress({ ...wall, length: 0.02, width: 0.014 }).stress).toBeCloseTo(1, 2)
  })
  test('meaningless sizes are refused', () => {
    for (const bad of [{ width: 0 }, { height: -1 }, { thickness: 0 }, { force: -1 }, { poisson: 0.5 }])
      expect(() =>
        wallBending({ force: 1, width: 1, height: 1, thickness: 1, modulus: 1, top: 'free', ...bad }),
      ).toThrow(RangeError)
  })
})
