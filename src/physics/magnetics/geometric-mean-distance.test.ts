/** Checks of geometric mean distances against classic values and quadrature. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendre, gaussLegendreOn } from '../../numerics/quadrature.ts'
import {
  pointRectangleMeanDistance,
  rectangleMeanDistance,
  roundWireMeanDistance,
  sectionSelfDistances,
} from './geometric-mean-distance.ts'

describe('source: maxwell1891, article 692, and grover1946, chapter 3 — classic values (from memory, not opened)', () => {
  check('square of side 1', rectangleMeanDistance({ width: 1, thickness: 1 }), '0.44705')
  check('line of length 1: exp(−3/2)', rectangleMeanDistance({ width: 1, thickness: 0 }), '0.22313')
  check('round wire of radius 1', roundWireMeanDistance(1), '0.7788')
  // grover's rule ln g = ln(a + b) − 1.5 + ln e, |ln e| ≤ 0.00249: 0.2235 (a + b)
  check('2 : 1 by the rule 0.2235 (a + b)', rectangleMeanDistance({ width: 2, thickness: 1 }), '0.6705', {
    relative: 0.0025,
  })
})

describe('agrees: quadrature of the logarithm', () => {
  test('point inside, cut into four rectangles with the point as a corner', () => {
    const [a, b, x, y] = [2, 0.7, 0.31, -0.12]
    // polar: ∫∫ ln r over a corner rectangle X × Y, radial part in closed form
    const corner = (X: number, Y: number) => {
      const part = (side: number, far: number) => {
        const rule = gaussLegendreOn(48, 0, Math.atan(far / side))
        let sum = 0
        rule.nodes.forEach((φ, i) => {
          const r = side / Math.cos(φ)
          sum += rule.weights[i] * ((r * r * Math.log(r)) / 2 - (r * r) / 4)
        })
        return sum
      }
      return part(X, Y) + part(Y, X)
    }
    const sum =
      corner(a / 2 - x, b / 2 - y) +
      corner(a / 2 + x, b / 2 - y) +
      corner(a / 2 - x, b / 2 + y) +
      corner(a / 2 + x, b / 2 + y)
    const found = pointRectangleMeanDistance({ width: a, thickness: b, across: x, normal: y })
    expect(Math.log(found)).toBeCloseTo(sum / (a * b), 12)
  })
  test('rectangle from itself: mean of the point values', () => {
    for (const [a, b] of [
      [1, 1],
      [3, 0.5],
    ]) {
      const rule = gaussLegendre(24)
      let mean = 0
      for (let i = 0; i < 24; i++)
        for (let k = 0; k < 24; k++)
          mean +=
            ((rule.weights[i] * rule.weights[k]) / 4) *
            Math.log(
              pointRectangleMeanDistance({
                width: a,
                thickness: b,
                across: (rule.nodes[i] * a) / 2,
                normal: (rule.nodes[k] * b) / 2,
              }),
            )
      expect(rectangleMeanDistance({ width: a, thickness: b })).toBeCloseTo(Math.exp(mean), 5)
    }
  })
})

describe('law: symmetry, scale and limits', () => {
  const side = fc.double({ min: 1e-6, max: 1e3, noNaN: true })
  test('sides may change places; lengths scale; the rule 0.2235 (a + b) holds to 0.25 %', () => {
    fc.assert(
      fc.property(side, side, (a, b) => {
        const g = rectangleMeanDistance({ width: a, thickness: b })
        expect(g / rectangleMeanDistance({ width: b, thickness: a })).toBeCloseTo(1, 14)
        expect(rectangleMeanDistance({ width: 7 * a, thickness: 7 * b }) / g).toBeCloseTo(7, 10)
        expect(Math.abs(g / (0.2235 * (a + b)) - 1)).toBeLessThan(0.0025)
      }),
    )
  })
  test('no step where thin strips change their form', () => {
    const at = (q: number) => rectangleMeanDistance({ width: 1, thickness: q })
    expect(at(1.0001e-6) / at(0.9999e-6)).toBeCloseTo(1, 8)
    expect(at(1e-300)).toBeCloseTo(Math.exp(-1.5), 14)
  })
  test('far away a rectangle is its middle', () => {
    for (const far of [100, 9e3, 1.1e4, 1e9])
      expect(
        pointRectangleMeanDistance({ width: 1, thickness: 2, across: far, normal: 0 }) / far,
      ).toBeCloseTo(1, 4)
  })
  test('filaments of one section reproduce its own mean distance', () => {
    const rule = gaussLegendre(3)
    const offsets: [number, number][] = []
    const weights: number[] = []
    rule.nodes.forEach((x, i) => {
      rule.nodes.forEach((y, k) => {
        offsets.push([2 * x, 0.5 * y])
        weights.push((rule.weights[i] * rule.weights[k]) / 4)
      })
    })
    const g = sectionSelfDistances({ width: 4, thickness: 1, offsets, weights })
    let mean = 0
    offsets.forEach((p, i) => {
      offsets.forEach((q, k) => {
        mean += weights[i] * weights[k] * Math.log(i === k ? g[i] : Math.hypot(p[0] - q[0], p[1] - q[1]))
      })
    })
    expect(Math.exp(mean)).toBeCloseTo(rectangleMeanDistance({ width: 4, thickness: 1 }), 12)
    for (const value of g) expect(value).toBeGreaterThan(0)
  })
  test('sections without extent are refused', () => {
    expect(() => rectangleMeanDistance({ width: 0, thickness: 0 })).toThrow(/below-minimum/)
    expect(() => rectangleMeanDistance({ width: 1, thickness: -1 })).toThrow(/below-minimum/)
    expect(() => sectionSelfDistances({ width: 1, thickness: 1, offsets: [], weights: [] })).toThrow(
      /wrong-length/,
    )
    expect(() =>
      sectionSelfDistances({
        width: 1,
        thickness: 1,
        offsets: [
          [0, 0],
          [0, 0],
        ],
        weights: [0.5, 0.5],
      }),
    ).toThrow(/below-minimum/)
  })
})
