/** Checks of the shapes of uncertain inputs. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { type InputShape, shapeMoments, shapeQuantile } from './input-shape.ts'
import { gaussLegendreOn } from './quadrature.ts'

describe('source: jcgm100, 4.3.7 and 4.3.9 — temperature between 96 °C and 104 °C (from memory, not opened)', () => {
  const limits = { from: 96, to: 104 }
  check('rectangular: u', shapeMoments({ kind: 'rectangular', ...limits }).deviation, '2.3')
  check('triangular: u', shapeMoments({ kind: 'triangular', peak: 100, ...limits }).deviation, '1.6')
  check('triangular: mean', shapeMoments({ kind: 'triangular', peak: 100, ...limits }).mean, '100')
})

describe('agrees: moments against integrals of the quantile over p', () => {
  const shapes: readonly InputShape[] = [
    { kind: 'normal', mean: 3, deviation: 0.5 },
    { kind: 'rectangular', from: -1, to: 4 },
    { kind: 'arcsine', from: -1, to: 4 },
    { kind: 'triangular', from: -1, peak: 0, to: 4 },
    { kind: 'triangular', from: -1, peak: -1, to: 4 },
    { kind: 'triangular', from: -1, peak: 4, to: 4 },
  ]
  for (const shape of shapes)
    test(JSON.stringify(shape), () => {
      // p = t² (3 − 2t) takes the steepness off both ends; cut at the corner of the triangle.
      const corner = shape.kind === 'triangular' ? (shape.peak - shape.from) / (shape.to - shape.from) : 0.5
      let mean = 0
      let square = 0
      for (const [a, b] of [
        [0, corner],
        [corner, 1],
      ] as const) {
        const { nodes, weights } = gaussLegendreOn(128, 0, 1)
        for (const [i, t] of nodes.entries()) {
          const x = shapeQuantile(shape, a + (b - a) * t * t * (3 - 2 * t))
          const w = weights[i]! * (b - a) * 6 * t * (1 - t)
          mean += w * x
          square += w * x * x
        }
      }
      const told = shapeMoments(shape)
      expect(mean).toBeCloseTo(told.mean, 6)
      expect(Math.sqrt(square - mean * mean)).toBeCloseTo(told.deviation, 5)
    })
})

describe('law: ends, order, degenerate limits, refusals', () => {
  test('p = 0 and 1 are the limits', () => {
    for (const kind of ['rectangular', 'arcsine'] as const)
      expect([0, 1].map((p) => shapeQuantile({ kind, from: -2, to: 5 }, p))).toEqual([-2, 5])
    for (const peak of [-2, 1, 5])
      expect([0, 1].map((p) => shapeQuantile({ kind: 'triangular', from: -2, peak, to: 5 }, p))).toEqual([
        -2, 5,
      ])
  })
  test('limits that meet give their value', () => {
    expect(shapeQuantile({ kind: 'triangular', from: 2, peak: 2, to: 2 }, 0.3)).toBe(2)
    expect(shapeMoments({ kind: 'triangular', from: 2, peak: 2, to: 2 })).toEqual({ mean: 2, deviation: 0 })
    expect(shapeQuantile({ kind: 'normal', mean: 2, deviation: 0 }, 0.3)).toBe(2)
  })
  test('crossed limits, a peak outside, a negative deviation', () => {
    expect(() => shapeQuantile({ kind: 'rectangular', from: 2, to: 1 }, 0.5)).toThrow(/not-increasing/)
    expect(() => shapeQuantile({ kind: 'triangular', from: 0, peak: 2, to: 1 }, 0.5)).toThrow(RangeError)
    expect(() => shapeQuantile({ kind: 'normal', mean: 0, deviation: -1 }, 0.5)).toThrow(RangeError)
    expect(() => shapeMoments({ kind: 'rectangular', from: -1e308, to: 1e308 })).toThrow(/not-finite/)
  })
})
