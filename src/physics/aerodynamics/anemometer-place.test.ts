/** Checks of what rotor and mast do to an anemometer. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { mastSpeedError, wakeSector } from './anemometer-place.ts'

const degrees = (distance: number) => (180 / Math.PI) * wakeSector({ diameter: 1, distance })

describe('source: iec61400-12-1, annex A, sector of a mast at 2, 2.5 and 4 diameters (from memory, not opened)', () => {
  check('2 diameters', degrees(2), '81')
  check('2.5 diameters', degrees(2.5), '74')
  check('4 diameters', degrees(4), '59')
})

describe('agrees: potential flow round a cylinder, its velocity by differences of the stream function', () => {
  // ψ = U (r − a²/r) sin θ with U = 1
  const a = 0.03
  const ψ = (x: number, y: number) => {
    const r = Math.hypot(x, y)
    return (r - a ** 2 / r) * (y / r)
  }
  const h = 1e-6
  const along = (x: number, y: number) => (ψ(x, y + h) - ψ(x, y - h)) / (2 * h)
  for (const r of [0.1, 0.25, 0.6])
    test(`${r} m from a mast of 60 mm`, () => {
      const error = mastSpeedError({ diameter: 2 * a, distance: r })
      expect(1 - along(-r, 0)).toBeCloseTo(error, 7)
      expect(along(0, r) - 1).toBeCloseTo(error, 7)
    })
})

describe('law: farther is better', () => {
  test('sector and error fall with distance, and refuse what is no distance', () => {
    expect(degrees(3)).toBeLessThan(degrees(2.9))
    expect(degrees(1e9)).toBeCloseTo(10 + (1.3 * Math.atan(0.15) * 180) / Math.PI, 6)
    const at = (distance: number) => mastSpeedError({ diameter: 0.05, distance })
    expect(at(0.2) / at(0.4)).toBeCloseTo(4, 12)
    expect(at(0.01)).toBe(1)
    expect(() => at(0)).toThrow(/below-minimum/)
    expect(() => wakeSector({ diameter: 0, distance: 1 })).toThrow(/below-minimum/)
  })
})
