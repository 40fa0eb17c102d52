/** Checks of the shares that two inputs bear together. */
import { describe, expect, test } from 'vitest'
import { sobolPoints } from './low-discrepancy.ts'
import { pairShares } from './pair-share.ts'
import { basisVariable, type ShareBasis, varianceShares } from './variance-share.ts'

const bases: readonly ShareBasis[] = ['legendre', 'hermite', 'legendre', 'legendre']
const count = 1024
const points = sobolPoints(count, 4, 5)
const x = (n: number, k: number) => basisVariable(bases[k]!, points[4 * n + k]!)

/** What is left of a model when each input's own effect is taken off. */
function leftover(model: (n: number) => number) {
  const values = Float64Array.from({ length: count }, (_, n) => model(n))
  const { variance, effect, rest } = varianceShares(points, values, bases)
  const mean = values.reduce((sum, value) => sum + value / count, 0)
  const residual = values.map((value, n) =>
    bases.reduce((left, _, k) => left - effect(k, x(n, k)), value - mean),
  )
  return { residual, variance, rest }
}
const apart = () => count

describe('law: shares of pairs', () => {
  test('a product beside sums: its share by variances, 3 + 1 + 1/3 in all', () => {
    // Var(x₁ z) = 1/3 for x₁ in −1 … 1 and z standard normal; the sums have 3 and 1
    const { residual, variance, rest } = leftover((n) => 3 * x(n, 2) + x(n, 1) + x(n, 0) * x(n, 1))
    const [first] = pairShares(points, residual, { bases, variance, apart })
    expect(first!.pair).toEqual([0, 1])
    expect(first!.share).toBeCloseTo(1 / 3 / (3 + 1 + 1 / 3), 2)
    expect(rest).toBeCloseTo(first!.share, 2)
  })
  test('Ishigami’s inputs 1 and 3: the bilinear part of sin a · c⁴ is nothing, so no pair is told', () => {
    const { residual, variance } = leftover(
      (n) => Math.sin(Math.PI * x(n, 0)) * (1 + 0.1 * (Math.PI * x(n, 2)) ** 4),
    )
    expect(pairShares(points, residual, { bases, variance, apart })).toEqual([])
  })
  test('a sum has no pairs, and the effect of each input is the input itself', () => {
    const values = Float64Array.from({ length: count }, (_, n) => 5 + 2 * x(n, 0) - x(n, 1))
    const { effect } = varianceShares(points, values, bases)
    for (const at of [-0.7, 0, 0.4]) {
      expect(effect(0, at)).toBeCloseTo(2 * at, 9)
      expect(effect(1, at)).toBeCloseTo(-at, 9)
      expect(effect(2, at)).toBeCloseTo(0, 9)
    }
    const { residual, variance } = leftover((n) => 5 + 2 * x(n, 0) - x(n, 1))
    for (const { share } of pairShares(points, residual, { bases, variance, apart }))
      expect(share).toBeLessThan(1e-12)
  })
})
