/** Checks of the Weibull fit by maximum likelihood. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { windBins, windDistribution } from './weibull.ts'
import { likeliestWindDistribution } from './weibull-fit.ts'

// biome-ignore format: a table
const lives = [
  17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.4, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12, 93.12,
  98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
]

describe('source: scipy, stats.weibull_min.fit(data, floc=0) of the 23 lives of lieblein-zelen1956', () => {
  check('shape', () => likeliestWindDistribution({ speed: lives }).shape, '2.10185', { relative: 3e-5 }) // its search stops at 1e-5
  check('scale', () => likeliestWindDistribution({ speed: lives }).scale, '81.8745', { relative: 3e-5 })
})

describe('law: what the fit must do', () => {
  const quantiles = (shape: number, mean: number, n = 4000) => {
    const { scale } = windDistribution({ mean, shape })
    return Float64Array.from({ length: n }, (_, i) => scale * (-Math.log1p(-(i + 0.5) / n)) ** (1 / shape))
  }
  test('quantiles of a distribution give it back; other units scale the scale alone; calms do not matter', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.9, max: 6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        (shape, mean) => {
          const speed = quantiles(shape, mean)
          const found = likeliestWindDistribution({ speed })
          expect(found.shape).toBeCloseTo(shape, 1)
          expect(found.scale / windDistribution({ mean, shape }).scale).toBeCloseTo(1, 2)
          const other = likeliestWindDistribution({ speed: [0, 0, ...speed.map((v) => 3.6 * v)] })
          expect(other.shape / found.shape).toBeCloseTo(1, 8)
          expect(other.scale / found.scale).toBeCloseTo(3.6, 8)
        },
      ),
      { numRuns: 20 },
    ))
  test('weights stand for repeated speeds', () => {
    const twice = likeliestWindDistribution({ speed: [2, 2, 5, 7, 7, 7] })
    const weighed = likeliestWindDistribution({ speed: [2, 5, 7, 9], weight: [2, 1, 3, 0] })
    expect(weighed.shape).toBeCloseTo(twice.shape, 10)
    const bins = windBins(
      { scale: 6, shape: 2 },
      Array.from({ length: 120 }, (_, i) => i * 0.25),
    )
    const speed = Array.from(bins.from, (v) => v + 0.125)
    expect(likeliestWindDistribution({ speed, weight: bins.share }).shape).toBeCloseTo(2, 1)
  })
  test('one speed, none, or a negative one is refused', () => {
    for (const speed of [[], [0, 0], [3, 3], [1, -1], [1, Number.NaN]])
      expect(() => likeliestWindDistribution({ speed })).toThrow(RangeError)
  })
})
