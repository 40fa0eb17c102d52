/** Checks of the cuboid's demagnetizing factor: sum rule, limits, average of the closed-form field. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { identityFrame } from '../../numerics/vector.ts'
import { blockFluxDensity } from './block-magnet.ts'
import { cuboidDemagnetizingFactor } from './demagnetizing-factor.ts'

const edge = fc.double({ min: 0.05, max: 1, noNaN: true })

describe('law: the three factors sum to one', () => {
  test('any cuboid', () => {
    fc.assert(
      fc.property(edge, edge, edge, (a, b, c) => {
        const sum =
          cuboidDemagnetizingFactor([a, b, c]) +
          cuboidDemagnetizingFactor([b, c, a]) +
          cuboidDemagnetizingFactor([c, a, b])
        expect(Math.abs(sum - 1)).toBeLessThan(1e-11)
      }),
    )
  })
  test('a cube has a third, scale and the order of the cross edges do not matter', () => {
    expect(cuboidDemagnetizingFactor([1e-9, 1e-9, 1e-9])).toBeCloseTo(1 / 3, 13)
    expect(cuboidDemagnetizingFactor([4, 2, 1])).toBeCloseTo(cuboidDemagnetizingFactor([2e6, 4e6, 1e6]), 13)
  })
  test('a thin plate tends to one, a long rod to nothing', () => {
    expect(cuboidDemagnetizingFactor([1000, 1000, 1])).toBeGreaterThan(0.99)
    expect(cuboidDemagnetizingFactor([1, 1, 1000])).toBeLessThan(1e-3)
    fc.assert(
      fc.property(edge, edge, edge, (a, b, c) => {
        expect(cuboidDemagnetizingFactor([a, b, c * 0.9])).toBeGreaterThan(
          cuboidDemagnetizingFactor([a, b, c]),
        )
      }),
    )
  })
})

describe('agrees: average over the volume of the closed-form field', () => {
  // ⟨μ0 H⟩/J + 1 = ⟨B⟩/J by Gauss points; graded towards the edges, where B has logarithms
  for (const size of [
    [0.02, 0.02, 0.02],
    [0.04, 0.02, 0.01],
    [0.05, 0.012, 0.004],
    [0.01, 0.01, 0.04],
  ] as const)
    test(size.join(' × '), () => {
      // t ↦ (3t − t³)/2 crowds points at both ends
      const graded = (half: number) => {
        const { nodes, weights } = gaussLegendreOn(20, -1, 1)
        return {
          nodes: nodes.map((t) => (half * (3 * t - t ** 3)) / 2),
          weights: nodes.map((t, i) => (weights[i]! * 3 * (1 - t * t)) / 4),
        }
      }
      const [X, Y, Z] = size.map((e) => graded(e / 2)) as [
        ReturnType<typeof graded>,
        ReturnType<typeof graded>,
        ReturnType<typeof graded>,
      ]
      const points = new Float64Array(3 * 20 ** 3)
      let at = 0
      for (const x of X.nodes)
        for (const y of Y.nodes)
          for (const z of Z.nodes) {
            points.set([x, y, z], at)
            at += 3
          }
      const magnet = { centre: [0, 0, 0], frame: identityFrame, size, polarization: 1 } as const
      const B = blockFluxDensity([magnet], points)
      let mean = 0
      at = 2
      for (const u of X.weights)
        for (const v of Y.weights)
          for (const w of Z.weights) {
            mean += u * v * w * B[at]!
            at += 3
          }
      expect(Math.abs(1 - mean - cuboidDemagnetizingFactor(size))).toBeLessThan(3e-5)
    })
})

describe('refusals', () => {
  test('law: an edge must be above zero', () => {
    expect(() => cuboidDemagnetizingFactor([1, 0, 1])).toThrow(RangeError)
    expect(() => cuboidDemagnetizingFactor([1, 1, Number.POSITIVE_INFINITY])).toThrow(RangeError)
  })
})
