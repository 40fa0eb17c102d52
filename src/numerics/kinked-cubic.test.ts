/** Checks of curves with kinks. */
import { describe, expect, test } from 'vitest'
import { monotoneCubic } from './interpolate.ts'
import { kinkedCubic } from './kinked-cubic.ts'

describe('law: straight lines that meet at a kink stay straight', () => {
  const x = [0, 1, 2, 3, 5]
  const line = (at: number) => (at < 2 ? at : 2 + 7 * (at - 2))
  const curve = kinkedCubic(x, x.map(line), [2])
  test('on both sides, at the kink and beyond the ends of the list', () => {
    for (let at = 0; at <= 5; at += 0.1) expect(curve(at)).toBeCloseTo(line(at), 12)
    expect(monotoneCubic(x, x.map(line))(1.5)).not.toBeCloseTo(line(1.5), 2)
  })
  test('without kinks, or with kinks that are no points, it is the shape-keeping cubic', () => {
    const y = x.map((at) => at ** 2)
    for (const kinks of [[], [0], [2.5], [5]])
      for (let at = 0; at <= 5; at += 0.3) expect(kinkedCubic(x, y, kinks)(at)).toBe(monotoneCubic(x, y)(at))
  })
})
