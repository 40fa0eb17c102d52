/** Checks linear least squares against a printed calibration and by its own laws. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { weightedLeastSquares } from './weighted-least-squares.ts'

describe('source: jcgm100, example H.3 — calibration of a thermometer, line through eleven corrections', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
  const A = t.flatMap((reading) => [1, reading - 20])
  // the source takes the deviation of one correction from the scatter about the line, with 11 − 2 degrees of freedom
  const unit = weightedLeastSquares(
    A,
    b,
    b.map(() => 1),
  )
  const s = Math.sqrt(unit.residuals.reduce((sum, r) => sum + r * r, 0) / 9)
  const fit = weightedLeastSquares(
    A,
    b,
    b.map(() => s),
  )
  const [u1, u2] = [Math.sqrt(fit.covariance[0]!), Math.sqrt(fit.covariance[3]!)]
  // values as printed in the example; those of the answer are from memory, the data as transcribed
  check('s', s, '0.0035')
  check('y1', fit.estimate[0]!, '-0.1712')
  check('s(y1)', u1, '0.0029')
  check('y2', fit.estimate[1]!, '0.00218')
  check('s(y2)', u2, '0.00067')
  check('r(y1, y2)', fit.covariance[1]! / u1 / u2, '-0.930')
  check('correction at 30 °C', fit.estimate[0]! + 10 * fit.estimate[1]!, '-0.1494')
})

describe('law: least squares', () => {
  test('two observations of one number: mean weighted by 1/σ², its variance, its gains', () => {
    const { estimate, covariance, gains, leverages } = weightedLeastSquares([1, 1], [10, 13], [1, 2])
    expect(estimate[0]).toBeCloseTo((10 + 13 / 4) / (1 + 1 / 4), 14)
    expect(covariance[0]).toBeCloseTo(1 / (1 + 1 / 4), 14)
    expect([...gains].reduce((sum, g) => sum + g, 0)).toBeCloseTo(1, 14)
    expect([...leverages].reduce((sum, g) => sum + g, 0)).toBeCloseTo(1, 14)
  })
  test('the estimate moves with an observation as its gain says', () => {
    const A = [1, 2, 1, 5, 1, 11, 0, 1]
    const y = [3, 4, 9, 0.5]
    const σ = [1, 0.5, 2, 0.3]
    const before = weightedLeastSquares(A, y, σ)
    const after = weightedLeastSquares(A, [3, 4.7, 9, 0.5], σ)
    for (let k = 0; k < 2; k++)
      expect(after.estimate[k]! - before.estimate[k]!).toBeCloseTo(0.7 * before.gains[4 * k + 1]!, 13)
    expect(before.leverages.reduce((sum, h) => sum + h, 0)).toBeCloseTo(2, 12)
  })
  test('unknowns of unlike size do not disturb each other', () => {
    const { estimate } = weightedLeastSquares([1e9, 1e-9, 1e9, -1e-9], [3, 1], [1e-3, 1e-3])
    expect(estimate[0]! * 1e9).toBeCloseTo(2, 12)
    expect(estimate[1]! * 1e-9).toBeCloseTo(1, 12)
  })
  test('unknowns that nothing tells, and lists that do not match, are refused', () => {
    expect(() => weightedLeastSquares([1, 0, 1, 0], [1, 1], [1, 1])).toThrow(RangeError)
    expect(() => weightedLeastSquares([1, 1, 1, 1], [1, 1], [1, 1])).toThrow(RangeError)
    expect(() => weightedLeastSquares([1, 1], [1, 1], [1])).toThrow(RangeError)
    expect(() => weightedLeastSquares([1], [1], [0])).toThrow(RangeError)
    expect(() => weightedLeastSquares([], [], [])).toThrow(RangeError)
  })
})
