/** Checks of the plan: how it draws, on models whose answer is printed or known in closed form. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { exampleChain } from '../../test/example.ts'
import { sampleMoments } from '../numerics/sample-moment.ts'
import { sampleQuantile, sortedSample } from '../numerics/sample-quantile.ts'
import { varianceShares } from '../numerics/variance-share.ts'
import { Refusal } from '../refusal/require.ts'
import { drawnShift, nestedPoints, ninety, spreadPlan } from './spread-plan.ts'

const plan = (samples: number, dimensions: number, seed = 1) =>
  nestedPoints({ samples, perState: 16, seed, dimensions, state: 2 })

/** Half-widths at 90 % of inputs of deviation one. */
const normal = drawnShift({ shape: 'normal', limits: () => [-2, 2] })
const flat = drawnShift({ shape: 'rectangular', limits: () => [-1, 1] })

const sums = (shift: (p: number) => number, unit: number, samples: number, seed = 1): Float64Array => {
  const points = plan(samples, 4, seed)
  return Float64Array.from({ length: samples }, (_, n) =>
    [0, 1, 2, 3].reduce((sum, k) => sum + unit * shift(points[4 * n + k]!), 0),
  )
}
const quantile = (values: Float64Array, p: number) => sampleQuantile(sortedSample(values), p).value

describe('source: jcgm101, 9.2, tables 2 and 3 — sums of four inputs, two of them shared by sixteen draws (from memory, not opened)', () => {
  const gaussian = sums(normal, ninety, 16384)
  check('four normal: u', sampleMoments(gaussian).deviation, '2.0')
  // 1024 states of the shared two: ends are good to some 2 %; tails beyond 3.29 deviations of each input are cut
  check('four normal: low', quantile(gaussian, 0.025), '-3.92', { absolute: 0.08 })
  check('four normal: high', quantile(gaussian, 0.975), '3.92', { absolute: 0.08 })
  const rectangular = sums(flat, Math.sqrt(3), 16384)
  // 1024 states of the shared two
  check('four rectangular: u', sampleMoments(rectangular).deviation, '2.00')
  check('four rectangular: low', quantile(rectangular, 0.025), '-3.88', { absolute: 0.08 })
  check('four rectangular: high', quantile(rectangular, 0.975), '3.88', { absolute: 0.08 })
})

describe('source: ishigami1990, a = 7, b = 0.1 — first-order shares by the draws of a plan', () => {
  const points = plan(4096, 3)
  const at = (n: number, k: number) => Math.PI * flat(points[3 * n + k]!)
  const values = Float64Array.from(
    { length: 4096 },
    (_, n) => Math.sin(at(n, 0)) + 7 * Math.sin(at(n, 1)) ** 2 + 0.1 * at(n, 2) ** 4 * Math.sin(at(n, 0)),
  )
  const { shares } = varianceShares(points, values, ['legendre', 'legendre', 'legendre'], 10)
  // 256 states of the first two inputs
  const fine = { absolute: 0.02 }
  check('S₁', shares[0]!, '0.3139', fine)
  check('S₂', shares[1]!, '0.4424', fine)
  check('S₃', shares[2]!, '0', fine)
})

describe('law: draws of a plan', () => {
  test('four times the draws, less than half the error of the ends', () => {
    const exact = 2 * 1.6448536269514722
    const error = (samples: number) => {
      const misses = Array.from(
        { length: 16 },
        (_, seed) => quantile(sums(normal, ninety, samples, seed), 0.95) - exact,
      )
      return Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length)
    }
    expect(error(1024)).toBeLessThan(0.5 * error(256))
  })
  test('a rectangular guess stays in its range, a normal one within its limits, lopsided or not', () => {
    for (const p of [1e-9, 0.3, 1 - 1e-9]) expect(Math.abs(flat(p))).toBeLessThanOrEqual(1)
    const cut = drawnShift({ shape: 'normal', limits: () => [-0.4, 2] })
    expect(cut(1e-9)).toBeGreaterThanOrEqual(-0.4)
    expect(cut(1 - 1e-9)).toBeLessThanOrEqual(2)
    expect(cut(0.2)).toBeLessThan(cut(0.3))
  })
  test('a normal guess is one half-width off at 5 % and 95 %', () => {
    expect(normal(0.95)).toBeCloseTo(1, 2)
    expect(normal(0.05)).toBeCloseTo(-1, 2)
    expect(normal(0.5)).toBeCloseTo(0, 9)
  })
  test('what moves the magnets, the wire or the blades comes first and is shared by the draws of a state', () => {
    const { drawn, stateDimensions, points, perState } = spreadPlan(exampleChain('hen-house-drum'), {
      samples: 512,
    })
    expect(drawn.slice(0, stateDimensions).map(({ path }) => path)).toEqual([
      'rotor.magnet.grade',
      'drag of the blade sections',
    ])
    const d = drawn.length
    for (let k = 0; k < stateDimensions; k++) expect(points[k]).toBe(points[(perState - 1) * d + k])
    expect(points[0]).not.toBe(points[perState * d])
  })
  test('a number of samples that fills no cube evenly is refused', () => {
    const chain = exampleChain('class-room-fan')
    try {
      spreadPlan(chain, { samples: 1000 })
      expect.unreachable()
    } catch (error) {
      expect(error instanceof Refusal && error.code).toBe('not-a-choice')
    }
  })
})
