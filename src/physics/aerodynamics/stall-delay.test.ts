/** Checks of the stall delayed by rotation; its check against a measured rotor stands with the rotor's coefficients. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { stallDelayFade, stallDelayShare } from './stall-delay.ts'

describe('source: snel1994, f = 3 (c/r)² (from memory, not opened)', () => {
  check('c/r = 0.5', stallDelayShare({ chord: 0.5, distance: 1, speedRatio: 2 }), '0.75')
  check('c/r = 0.1', stallDelayShare({ chord: 0.1, distance: 1, speedRatio: 2 }), '0.03')
})

describe('law: limits', () => {
  test('none at rest, all from a speed ratio of one half, never more than the lift lost', () => {
    const at = (chord: number, speedRatio: number) => stallDelayShare({ chord, distance: 1, speedRatio })
    expect(at(0.5, 0)).toBe(0)
    expect(at(0.5, 0.25)).toBeCloseTo(0.25 * at(0.5, 0.5), 12)
    expect(at(0.5, 0.5)).toBe(at(0.5, 9))
    expect(at(5, 9)).toBe(1)
  })
  test('all of it to 30°, none at 90° and beyond', () => {
    expect([0, 0.3, Math.PI / 6].map(stallDelayFade)).toEqual([1, 1, 1])
    expect(stallDelayFade(Math.PI / 3)).toBeCloseTo(0.25, 12)
    expect(stallDelayFade(2)).toBe(0)
  })
  test('refuses the meaningless', () => {
    expect(() => stallDelayShare({ chord: 0, distance: 1, speedRatio: 1 })).toThrow(/below-minimum/)
    expect(() => stallDelayShare({ chord: 1, distance: 1, speedRatio: -1 })).toThrow(/below-minimum/)
  })
})
