/** Checks of the normal quantile. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { normalQuantile } from './normal-quantile.ts'

describe('source: wichura1988, test values of PPND16 (from memory, not opened)', () => {
  check('p = 0.25', normalQuantile(0.25), '-0.6744897501960817')
  check('p = 0.001', normalQuantile(0.001), '-3.090232306167814', { absolute: 1e-15 })
  check('p = 1e-20', normalQuantile(1e-20), '-9.262340089798408', { absolute: 4e-15 })
})

describe('agrees: mpmath at 60 digits, root of ½ erfc(−z/√2) = p for the double nearest p', () => {
  const roots: readonly (readonly [number, number])[] = [
    [0.5000001, 2.506628273311648e-7],
    [0.6, 0.2533471031357997],
    [0.925, 1.4395314709384561],
    [0.0749, -1.4402382675279637],
    [0.02, -2.053748910631823],
    [1e-5, -4.264890793922825],
    [1.4e-11, -6.656723091518184],
    [1e-12, -7.034483825301132],
    [1e-50, -14.933337534788489],
    [1e-300, -37.0470962993612],
  ]
  for (const [p, z] of roots)
    test(`p = ${p}`, () => expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(2e-15))
})

describe('law: odd about ½, rising across the seams, refused at the ends', () => {
  test('z(1 − p) = −z(p) where 1 − p is exact', () => {
    for (let k = 1; k < 64; k++) expect(normalQuantile(1 - k / 64)).toBe(-normalQuantile(k / 64) || 0)
    expect(normalQuantile(0.5)).toBe(0)
  })
  test('no step back at the seams', () => {
    for (const seam of [0.075, 0.925, Math.exp(-25)])
      for (let k = -20; k < 20; k++)
        expect(normalQuantile(seam * (1 + (k + 1) * 1e-14))).toBeGreaterThan(
          normalQuantile(seam * (1 + k * 1e-14)) - 4e-15,
        )
  })
  test('0, 1 and NaN have no quantile', () => {
    expect(() => normalQuantile(0)).toThrow(/below-minimum/)
    expect(() => normalQuantile(1)).toThrow(/above-maximum/)
    expect(() => normalQuantile(Number.NaN)).toThrow(/not-finite/)
  })
})
