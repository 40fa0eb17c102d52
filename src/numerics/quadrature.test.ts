/** Checks of the Gauss–Legendre rules. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { gaussLegendre, gaussLegendreOn } from './quadrature.ts'

describe('source: abramowitz1964, table 25.4 — nodes and weights (from memory, not opened)', () => {
  const rows = [
    // n, index from the middle outwards, node, weight
    [2, 1, '0.577350269189626', '1.000000000000000'],
    [3, 2, '0.774596669241483', '0.555555555555556'],
    [5, 2, '0.000000000000000', '0.568888888888889'],
    [5, 3, '0.538469310105683', '0.478628670499366'],
    [5, 4, '0.906179845938664', '0.236926885056189'],
    [10, 9, '0.973906528517172', '0.066671344308688'],
  ] as const
  // Half a unit of the fifteenth decimal is two to five rounding errors of a double near 1: allow four of them.
  const rounding = { absolute: 5e-16 + 4 * Number.EPSILON }
  for (const [n, at, node, weight] of rows) {
    check(`node ${at} of ${n}`, () => gaussLegendre(n).nodes[at]!, node, rounding)
    check(`weight ${at} of ${n}`, () => gaussLegendre(n).weights[at]!, weight, rounding)
  }
})

describe('law: n points integrate degree 2n − 1 exactly', () => {
  for (const n of [1, 2, 3, 5, 8, 16, 64])
    test(`n = ${n}`, () => {
      const { nodes, weights } = gaussLegendre(n)
      for (const degree of new Set([0, 1, n - 1, n, 2 * n - 2, 2 * n - 1])) {
        const sum = nodes.reduce((s, x, i) => s + weights[i]! * x ** degree, 0)
        expect(Math.abs(sum - (degree % 2 === 0 ? 2 / (degree + 1) : 0))).toBeLessThan(4e-15)
      }
    })
  test('degree 2n is not exact', () => {
    const { nodes, weights } = gaussLegendre(2)
    expect(nodes.reduce((s, x, i) => s + weights[i]! * x ** 4, 0)).toBeCloseTo(2 / 9, 12)
  })
})

describe('law: shape of every rule', () => {
  test('nodes rise inside −1…1 and mirror; weights are positive, mirror and sum to 2', () => {
    for (const n of [1, 2, 3, 4, 7, 20, 33, 100, 255, 256]) {
      const { nodes, weights } = gaussLegendre(n)
      for (let i = 0; i < n; i++) {
        expect(Math.abs(nodes[i]!)).toBeLessThan(1)
        if (i > 0) expect(nodes[i]!).toBeGreaterThan(nodes[i - 1]!)
        expect(weights[i]!).toBeGreaterThan(0)
        expect(Math.abs(nodes[i]! + nodes[n - 1 - i]!)).toBeLessThan(1e-15)
        expect(Math.abs(weights[i]! - weights[n - 1 - i]!)).toBeLessThan(1e-13)
      }
      expect(Math.abs(weights.reduce((s, w) => s + w, 0) - 2)).toBeLessThan(1e-12)
    }
  })
  test('carried to another interval, the weights sum to its length and a cubic is exact', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: -100, max: 100, noNaN: true }),
        (from, to) => {
          const { nodes, weights } = gaussLegendreOn(2, from, to)
          const integral = nodes.reduce((s, x, i) => s + weights[i]! * x ** 3, 0)
          expect(Math.abs(integral - (to ** 4 - from ** 4) / 4)).toBeLessThan(1e-6)
          expect(Math.abs(weights[0]! + weights[1]! - (to - from))).toBeLessThan(1e-12)
        },
      ),
    )
  })
})

describe('agrees: ∫ eˣ on 0…1 against e − 1, converging', () => {
  test('error falls below rounding by n = 8', () => {
    const error = (n: number) => {
      const { nodes, weights } = gaussLegendreOn(n, 0, 1)
      return Math.abs(nodes.reduce((s, x, i) => s + weights[i]! * Math.exp(x), 0) - Math.expm1(1))
    }
    expect(error(2)).toBeLessThan(1e-3)
    expect(error(4)).toBeLessThan(1e-9)
    expect(error(8)).toBeLessThan(1e-14)
  })
})

describe('law: what has no meaning is refused', () => {
  for (const n of [0, -1, 1.5, 257, Number.NaN])
    test(`n = ${n}`, () => expect(() => gaussLegendre(n)).toThrow('(not-a-choice)'))
})
