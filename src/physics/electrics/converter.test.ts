/** Checks of the converter's loss law. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { converterLoss, converterOutput } from './converter.ts'

const efficiencyOf = (a: number, b: number, c: number, voltage: number, power: number) => {
  const I = power / voltage
  return { voltage, power, efficiency: 1 - (a + b * I + c * I * I) / power }
}

describe('agrees: a converter that loses by the law is found again from its efficiencies', () => {
  test('three coefficients from points at two voltages', () => {
    const truth = [0.8, 0.45, 0.02] as const
    const points = [8, 16].flatMap((U) => [10, 40, 120].map((P) => efficiencyOf(...truth, U, P)))
    const { standing, drop, resistance } = converterLoss(points)
    expect(standing).toBeCloseTo(truth[0], 9)
    expect(drop).toBeCloseTo(truth[1], 9)
    expect(resistance).toBeCloseTo(truth[2], 9)
  })
  test('the optimum of that law: P = √(a/c)·U, where standing and copper loss are equal', () => {
    const loss = { standing: 1, drop: 0.4, resistance: 0.04 }
    const best = Math.sqrt(loss.standing / loss.resistance) * 12
    const η = (power: number) => converterOutput(loss, { voltage: 12, power }) / power
    for (const share of [0.9, 0.97, 1.03, 1.1]) expect(η(best * share)).toBeLessThan(η(best))
  })
})

describe('law: no coefficient below zero, no more out than in', () => {
  test('whatever is measured', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            voltage: fc.double({ min: 2, max: 60, noNaN: true }),
            power: fc.double({ min: 1, max: 2000, noNaN: true }),
            efficiency: fc.double({ min: 0.3, max: 0.99, noNaN: true }),
          }),
          { minLength: 3, maxLength: 8 },
        ),
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        (points, voltage, power) => {
          const loss = converterLoss(points)
          for (const value of Object.values(loss)) expect(value).toBeGreaterThanOrEqual(0)
          const out = converterOutput(loss, { voltage, power })
          expect(out).toBeGreaterThanOrEqual(0)
          expect(out).toBeLessThanOrEqual(power)
        },
      ),
    )
  })
  test('one current only: the loss itself is met', () => {
    const points = [12, 12, 12].map((U) => efficiencyOf(1, 0.3, 0.02, U, 60))
    const loss = converterLoss(points)
    expect(converterOutput(loss, { voltage: 12, power: 60 }) / 60).toBeCloseTo(points[0]!.efficiency, 9)
  })
})
