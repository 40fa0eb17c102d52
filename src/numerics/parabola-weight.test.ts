/** Checks of the parabola's weights. */
import { describe, expect, test } from 'vitest'
import { parabolaWeights } from './parabola-weight.ts'

describe('law: a parabola is met everywhere, and the weights sum to one', () => {
  const nodes = [-1, 0.5, 4] as const
  const parabola = (x: number) => 3 - 2 * x + 0.7 * x * x
  for (const x of [-3, -1, 0, 0.5, 2, 4, 9])
    test(`x = ${x}`, () => {
      const w = parabolaWeights(x, nodes)
      expect(w[0] + w[1] + w[2]).toBeCloseTo(1, 12)
      expect(nodes.reduce((sum, node, k) => sum + w[k]! * parabola(node), 0)).toBeCloseTo(parabola(x), 10)
    })
})
