/** Checks of the one-sided pull of a ring out of the middle. */
import { describe, expect, test } from 'vitest'
import { eccentricPull } from './eccentric-pull.ts'

const ring = { pull: 2000, decay: 0.009 }

describe('agrees: the local pressure summed round the circumference', () => {
  for (const eccentricity of [1e-4, 1e-3, 4e-3])
    test(`${eccentricity} m`, () => {
      const n = 720
      let sum = 0
      for (let k = 0; k < n; k++) {
        const θ = (2 * Math.PI * k) / n
        sum += (ring.pull / n) * Math.exp((eccentricity * Math.cos(θ)) / ring.decay) * Math.cos(θ)
      }
      expect(eccentricPull({ ...ring, eccentricity }) / sum).toBeCloseTo(1, 9)
    })
})

describe('law: small and large offsets', () => {
  test('P e/2ℓ at first, more than that beyond, nothing in the middle', () => {
    const slope = ring.pull / (2 * ring.decay)
    expect(eccentricPull({ ...ring, eccentricity: 1e-6 }) / (slope * 1e-6)).toBeCloseTo(1, 6)
    expect(eccentricPull({ ...ring, eccentricity: 1e-13 }) / (slope * 1e-13)).toBeCloseTo(1, 9)
    expect(eccentricPull({ ...ring, eccentricity: 0.005 })).toBeGreaterThan(slope * 0.005)
    expect(eccentricPull({ ...ring, eccentricity: 0 })).toBe(0)
  })
  test('meaningless numbers are refused', () => {
    for (const bad of [{ pull: -1 }, { decay: 0 }, { eccentricity: -1 }])
      expect(() => eccentricPull({ ...ring, eccentricity: 0.001, ...bad })).toThrow(RangeError)
  })
})
