/** Checks of sample quantiles, coverage intervals and moments, and of whole propagations of distributions. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { type InputShape, shapeQuantile } from './input-shape.ts'
import { sobolPoints } from './low-discrepancy.ts'
import { sampleMoments } from './sample-moment.ts'
import { coverageInterval, sampleQuantile, sortedSample } from './sample-quantile.ts'

const propagated = (
  shapes: readonly InputShape[],
  model: (x: readonly number[]) => number,
  count = 2 ** 16,
) => {
  const points = sobolPoints(count, shapes.length, 1)
  const outputs = Float64Array.from({ length: count }, (_, n) =>
    model(shapes.map((shape, j) => shapeQuantile(shape, points[n * shapes.length + j]!))),
  )
  const sorted = sortedSample(outputs)
  return {
    ...sampleMoments(outputs),
    shortest: coverageInterval(sorted, 0.95, 'shortest'),
    symmetric: coverageInterval(sorted, 0.95, 'symmetric'),
  }
}
const sum = (x: readonly number[]) => x.reduce((a, b) => a + b)
const normal = (mean: number, deviation: number): InputShape => ({ kind: 'normal', mean, deviation })
/** By standard deviation. */
const rectangular = (u: number): InputShape => ({
  kind: 'rectangular',
  from: -u * Math.sqrt(3),
  to: u * Math.sqrt(3),
})
// Ends wander by the sample's own chance: 65 536 independent draws would leave ±0.02 on an end at 3.9 (one standard
// error). The shortest interval has a flat optimum besides: its ends wander where its length does not.
const wander = (absolute: number) => ({ absolute })

describe('source: jcgm101, 9.2 — sums of four inputs (from memory, not opened)', () => {
  const gaussian = propagated(Array(4).fill(normal(0, 1)), sum)
  check('table 2, four normal: u', gaussian.deviation, '2.0')
  check('table 2, four normal: low', gaussian.symmetric[0], '-3.92', wander(0.02))
  check('table 2, four normal: high', gaussian.symmetric[1], '3.92', wander(0.02))
  const flat = propagated(Array(4).fill(rectangular(1)), sum)
  check('table 3, four rectangular: mean', flat.mean, '0.00')
  check('table 3, four rectangular: u', flat.deviation, '2.00')
  check('table 3, four rectangular: low', flat.symmetric[0], '-3.88', wander(0.01))
  check('table 3, four rectangular: high', flat.symmetric[1], '3.88', wander(0.01))
  check('table 3, four rectangular: shortest low', flat.shortest[0], '-3.88', wander(0.08))
  check(
    'table 3, four rectangular: shortest length',
    flat.shortest[1] - flat.shortest[0],
    '7.76',
    wander(0.02),
  )
  const one = propagated([rectangular(1), rectangular(1), rectangular(1), rectangular(10)], sum)
  check('table 4, one of them tenfold: u', one.deviation, '10.1')
  check('table 4, one of them tenfold: low', one.symmetric[0], '-17.0')
  check('table 4, one of them tenfold: high', one.symmetric[1], '17.0')
})

describe('source: jcgm101, 9.3, table 6 — mass calibration, milligrams (from memory, not opened)', () => {
  const mass = propagated(
    [
      normal(100_000, 0.05),
      normal(1.234, 0.02),
      { kind: 'rectangular', from: 1.1, to: 1.3 },
      { kind: 'rectangular', from: 7000, to: 9000 },
      { kind: 'rectangular', from: 7950, to: 8050 },
    ],
    ([mR = 0, δm = 0, ρa = 0, ρW = 1, ρR = 1]) => (mR + δm) * (1 + (ρa - 1.2) * (1 / ρW - 1 / ρR)) - 100_000,
  )
  check('mean', mass.mean, '1.2340')
  // The table's u is itself drawn: ± 6e-5 from its 0.72 million trials; the closed form gives 0.075479.
  check('u', mass.deviation, '0.0754', wander(0.00012))
  test('u in closed form', () => {
    const diff = (Math.log(9 / 7) / 2000 / 100) * Math.log(8050 / 7950)
    const squares = 1 / (7000 * 9000) + 1 / (7950 * 8050) - 2 * diff
    expect(mass.deviation).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.02 ** 2 + (0.01 / 3) * 1e10 * squares), 5)
  })
  check('shortest low', mass.shortest[0], '1.0834', wander(0.006))
  check('shortest high', mass.shortest[1], '1.3825', wander(0.006))
  check('shortest length', mass.shortest[1] - mass.shortest[0], '0.2991', wander(0.0012))
})

describe('source: jcgm101, 9.4.2 — comparison loss, 1e-6 (from memory, not opened)', () => {
  const loss = (x: number) =>
    propagated([normal(x, 0.005), normal(0, 0.005)], ([a = 0, b = 0]) => (a * a + b * b) * 1e6)
  const zero = loss(0)
  check('x₁ = 0: mean', zero.mean, '50')
  check('x₁ = 0: u', zero.deviation, '50')
  check('x₁ = 0: shortest low', zero.shortest[0], '0')
  check('x₁ = 0: shortest high', zero.shortest[1], '150')
  const ten = loss(0.01)
  check('x₁ = 0.010: mean', ten.mean, '150')
  check('x₁ = 0.010: u', ten.deviation, '112')
  check('x₁ = 0.010: shortest high', ten.shortest[1], '367', wander(2))
})

describe('source: nist-statistics-handbook, 7.2.6.2 — twelve gauge readings (from memory, not opened)', () => {
  const readings = [
    95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
  ]
  check('90th percentile', sampleQuantile(sortedSample(readings), 0.9).value, '95.1981')
})

describe('agrees: closed forms of the sum of four rectangular inputs and of the exponential', () => {
  test('± 2√3 (2 − (3/5)^(1/4)) holds 95 % (the end of the fourfold convolution)', () => {
    const { symmetric } = propagated(Array(4).fill(rectangular(1)), sum)
    const end = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25)
    for (const value of symmetric) expect(Math.abs(Math.abs(value) - end)).toBeLessThan(0.01)
  })
  test('standard error of a quantile: √(p(1 − p)/M)/density, exponential', () => {
    const M = 20_000
    const sorted = Float64Array.from({ length: M }, (_, n) => -Math.log(1 - (n + 0.5) / M))
    for (const p of [0.05, 0.5, 0.95]) {
      const { value, standardError } = sampleQuantile(sorted, p)
      expect(value).toBeCloseTo(-Math.log(1 - p), 3)
      expect((standardError * (1 - p)) / Math.sqrt((p * (1 - p)) / M)).toBeCloseTo(1, 2)
    }
    expect(coverageInterval(sorted, 0.9, 'shortest')[0]).toBe(sorted[0])
    expect(coverageInterval(sorted, 0.9, 'shortest')[1]).toBeCloseTo(Math.log(10), 2)
  })
})

describe('law: order statistics, scale, refusals', () => {
  test('ranks as the clause counts them: M = 10, p = 0.8 keeps the 1st to 9th', () => {
    const sorted = sortedSample([9, 1, 0, 2, 3, 4, 5, 6, 7, 8])
    expect(coverageInterval(sorted, 0.8, 'symmetric')).toEqual([0, 8])
    expect(coverageInterval(sortedSample([0, 5, 6, 7, 30]), 0.4, 'shortest')).toEqual([5, 7])
  })
  test('moments of tiny, huge and equal numbers', () => {
    for (const s of [1e-300, 1, 1e300]) {
      const { mean, deviation } = sampleMoments([1 * s, 2 * s, 3 * s])
      expect([mean / s, deviation / s].map((x) => Math.round(x * 1e12) / 1e12)).toEqual([2, 1])
    }
    expect(sampleMoments([5, 5])).toEqual({ mean: 5, deviation: 0 })
  })
  test('refused: NaN, one value, p outside, a sample too small for p', () => {
    expect(() => sortedSample([1, Number.NaN])).toThrow(/not-finite/)
    expect(() => sortedSample([1])).toThrow(/wrong-length/)
    const sorted = sortedSample([1, 2, 3])
    for (const p of [0, 1, Number.NaN]) expect(() => sampleQuantile(sorted, p)).toThrow(RangeError)
    expect(() => coverageInterval(sorted, 0.95, 'shortest')).toThrow(/wrong-length/)
    expect(() => sampleMoments([1])).toThrow(/wrong-length/)
    for (const p of [1e-9, 1 - 1e-9])
      expect(Number.isFinite(sampleQuantile(sorted, p).standardError)).toBe(true)
  })
})
