/** Checks of the modified Bessel functions against printed values, their integrals, the Wronskian and recurrences. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { modifiedBessel } from './bessel.ts'
import { gaussLegendreOn } from './quadrature.ts'

describe('source: abramowitz1964, table 9.8 — I and K of orders 0 and 1 (digits from memory, not opened)', () => {
  // printed there times e^−x or e^x; here the functions themselves
  check('I0(1)', () => Math.exp(modifiedBessel(0, 1).lnI), '1.266065878')
  check('I1(1)', () => Math.exp(modifiedBessel(1, 1).lnI), '0.5651591040')
  check('K0(1)', () => Math.exp(modifiedBessel(0, 1).lnK), '0.4210244382')
  check('K1(1)', () => Math.exp(modifiedBessel(1, 1).lnK), '0.6019072302')
  check('I0(2)', () => Math.exp(modifiedBessel(0, 2).lnI), '2.279585302')
  check('K0(2)', () => Math.exp(modifiedBessel(0, 2).lnK), '0.113893873')
})

describe('agrees: quadrature of the integral representations', () => {
  const integral = (f: (t: number) => number, to: number) => {
    let sum = 0
    for (let panel = 0; panel < 24; panel++) {
      const { nodes, weights } = gaussLegendreOn(20, (to * panel) / 24, (to * (panel + 1)) / 24)
      for (let i = 0; i < 20; i++) sum += weights[i]! * f(nodes[i]!)
    }
    return sum
  }
  for (const n of [0, 1, 3, 7, 12, 15, 16, 20, 30])
    for (const x of [0.5, 3, 20, 90])
      test(`order ${n} at ${x}`, () => {
        const { lnI, lnK } = modifiedBessel(n, x)
        // K_n = ∫ exp(−x cosh t) cosh nt dt, e^x taken out
        const K = integral(
          (t) => (Math.exp(n * t - x * (Math.cosh(t) - 1)) + Math.exp(-n * t - x * (Math.cosh(t) - 1))) / 2,
          Math.acosh(1 + (60 + 8 * n) / x),
        )
        expect(lnK + x).toBeCloseTo(Math.log(K), 8)
        // I_n = ∫ exp(x cos t) cos nt dt / π over 0 … π: digits cancel where n² outweighs x
        if (n * n > 12 * x) return
        const I = integral((t) => Math.exp(x * (Math.cos(t) - 1)) * Math.cos(n * t), Math.PI) / Math.PI
        expect(lnI - x).toBeCloseTo(Math.log(I), 8)
      })
})

const argument = fc.double({ min: -460, max: 14, noNaN: true }).map(Math.exp)

describe('law: recurrences and the Wronskian', () => {
  test('I′/I − K′/K = 1/(x I K)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), argument, (n, x) => {
        const { lnI, lnK, slopeI, slopeK } = modifiedBessel(n, x)
        const jump = Math.exp(-Math.log(x) - lnI - lnK)
        expect(Math.abs(slopeI - slopeK - jump) / (slopeI - slopeK)).toBeLessThan(
          1e-9 * Math.max(1, Math.abs(lnI) / 1e3),
        )
      }),
    )
  })
  test('the slopes lead from each order to the next, over the seam of the two methods', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        (n, x) => {
          const here = modifiedBessel(n, x)
          const next = modifiedBessel(n + 1, x)
          expect(Math.exp(next.lnI - here.lnI) / (here.slopeI - n / x)).toBeCloseTo(1, 6)
          expect(Math.exp(next.lnK - here.lnK) / (n / x - here.slopeK)).toBeCloseTo(1, 8)
        },
      ),
    )
  })
  test('near zero I is (x/2)^n/n!, far away both are exponentials', () => {
    for (const n of [1, 9, 40]) {
      let lnFactorial = 0
      for (let j = 2; j <= n; j++) lnFactorial += Math.log(j)
      const small = modifiedBessel(n, 1e-100)
      expect(small.lnI / (n * Math.log(0.5e-100) - lnFactorial)).toBeCloseTo(1, 9)
      expect(small.slopeI * 1e-100).toBeCloseTo(n, 8)
      expect(small.slopeK * 1e-100).toBeCloseTo(-n, 8)
      const large = modifiedBessel(n, 1e7)
      expect(large.slopeI).toBeCloseTo(1, 6)
      expect(large.slopeK).toBeCloseTo(-1, 6)
    }
  })
  test('meaningless input is refused', () => {
    expect(() => modifiedBessel(1.5, 1)).toThrow('whole number')
    expect(() => modifiedBessel(-1, 1)).toThrow('whole number')
    for (const x of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-300, 1e200])
      expect(() => modifiedBessel(1, x)).toThrow(RangeError)
  })
})
