/** Checks the ratio of Bessel functions against their own series and against its limits. */
import { describe, expect, test } from 'vitest'
import { besselRatio } from './bessel-ratio.ts'

type Complex = readonly [number, number]
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c]
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const size = c * c + d * d
  return [(a * c + b * d) / size, (b * c - a * d) / size]
}

/** J_n by its power series (Abramowitz and Stegun 9.1.10). */
function bessel(n: 0 | 1, z: Complex): Complex {
  const quarter = times(z, z).map((part) => -part / 4) as unknown as Complex
  let term: Complex = n === 0 ? [1, 0] : [z[0] / 2, z[1] / 2]
  let sum = term
  for (let m = 1; m < 80; m++) {
    const next = times(term, quarter)
    term = [next[0] / (m * (m + n)), next[1] / (m * (m + n))]
    sum = [sum[0] + term[0], sum[1] + term[1]]
  }
  return sum
}

describe('agrees: power series of J0 and J1', () => {
  for (const x of [0, 0.01, 0.3, 1, 2.5, 6, 10])
    test(`x = ${x}`, () => {
      const z: Complex = [x, -x]
      const [re, im] = over(bessel(1, z), bessel(0, z))
      const ratio = besselRatio(x)
      expect(ratio[0]).toBeCloseTo(re, 9)
      expect(ratio[1]).toBeCloseTo(im, 9)
    })
})

describe('law: limits', () => {
  test('z/2 for a small z, −j for a large one, no jump between the two ways', () => {
    const [re, im] = besselRatio(1e-6)
    expect(re / 5e-7).toBeCloseTo(1, 9)
    expect(im / -5e-7).toBeCloseTo(1, 9)
    const near = besselRatio(299.999)
    const far = besselRatio(300.001)
    expect(Math.hypot(near[0] - far[0], near[1] - far[1])).toBeLessThan(2e-6)
    expect(besselRatio(1e8)[1]).toBeCloseTo(-1, 8)
    expect(() => besselRatio(-1)).toThrow('below-minimum')
  })
})
