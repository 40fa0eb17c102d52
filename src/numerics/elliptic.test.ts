/** Checks of the complete elliptic integrals against printed values and quadrature. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { completeElliptic } from './elliptic.ts'
import { gaussLegendreOn } from './quadrature.ts'

describe('source: abramowitz1964, table 17.1 — K and E by parameter m = k² (digits from memory, not opened)', () => {
  const rows = [
    [0, '1.570796326794897', '1.570796326794897'],
    [0.5, '1.854074677301372', '1.350643881047676'],
  ] as const
  for (const [m, K, E] of rows) {
    check(`K, m = ${m}`, completeElliptic(Math.sqrt(m)).K, K, { absolute: 2e-15 })
    check(`E, m = ${m}`, completeElliptic(Math.sqrt(m)).E, E, { absolute: 2e-15 })
  }
})

describe('agrees: Gauss–Legendre quadrature of the defining integrals', () => {
  for (const k of [0.1, 0.5, 0.8, 0.95])
    test(`k = ${k}`, () => {
      const { nodes, weights } = gaussLegendreOn(64, 0, Math.PI / 2)
      let K = 0
      let E = 0
      for (let i = 0; i < 64; i++) {
        const root = Math.sqrt(1 - (k * Math.sin(nodes[i])) ** 2)
        K += weights[i] / root
        E += weights[i] * root
      }
      const found = completeElliptic(k)
      expect(Math.abs(found.K - K)).toBeLessThan(1e-13)
      expect(Math.abs(found.E - E)).toBeLessThan(1e-13)
      expect(Math.abs(found.difference - (K - E))).toBeLessThan(1e-13)
    })
})

describe('law: relation of Legendre and the limits of small and large modulus', () => {
  test('K E′ + K′ E − K K′ = π/2', () => {
    for (const k of [1e-6, 0.01, 0.3, Math.SQRT1_2, 0.99, 0.999999]) {
      const a = completeElliptic(k)
      const complement = Math.sqrt((1 - k) * (1 + k))
      const b = completeElliptic(complement, k)
      expect(Math.abs(a.K * b.E + b.K * a.E - a.K * b.K - Math.PI / 2)).toBeLessThan(1e-12)
    }
  })
  test('K − E → π k²/4 without loss of digits', () => {
    expect(completeElliptic(1e-9).difference / ((Math.PI * 1e-18) / 4)).toBeCloseTo(1, 12)
  })
  test('K → ln(4/k′)', () => {
    expect(Math.abs(completeElliptic(1, 1e-9).K - Math.log(4e9))).toBeLessThan(1e-9)
  })
  test('refuses k = 1 and k outside 0…1', () => {
    expect(() => completeElliptic(1)).toThrow(/below-minimum/)
    expect(() => completeElliptic(1.2)).toThrow(/above-maximum/)
    expect(() => completeElliptic(Number.NaN)).toThrow(/not-finite/)
  })
})
