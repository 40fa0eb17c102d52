/** Checks of how far a thrown thing can land. */
import { describe, expect, test } from 'vitest'
import { throwDistance } from './throw-distance.ts'

const gravity = 9.80665

/** Where it lands when thrown at an angle above the level. */
const landed = (speed: number, height: number, angle: number): number => {
  const up = speed * Math.sin(angle)
  const time = (up + Math.sqrt(up * up + 2 * gravity * height)) / gravity
  return speed * Math.cos(angle) * time
}

describe('agrees: the farthest of all angles, one by one', () => {
  for (const [speed, height] of [
    [5, 0.5],
    [20, 10],
    [74, 12],
    [200, 30],
  ] as const)
    test(`${speed} m/s from ${height} m`, () => {
      let most = 0
      for (let k = 0; k <= 20_000; k++)
        most = Math.max(most, landed(speed, height, (k / 20_000) * (Math.PI / 2)))
      expect(throwDistance({ speed, height, gravity }) / most).toBeCloseTo(1, 6)
    })
})

describe('law: a throw', () => {
  test('from the ground goes v²/g far, and farther from higher', () => {
    expect(throwDistance({ speed: 30, height: 0, gravity })).toBeCloseTo(900 / gravity, 9)
    expect(throwDistance({ speed: 30, height: 5, gravity })).toBeGreaterThan(900 / gravity)
    expect(throwDistance({ speed: 0, height: 5, gravity })).toBe(0)
  })
  test('of meaningless speed is refused', () => {
    expect(() => throwDistance({ speed: -1, height: 0, gravity })).toThrow(RangeError)
    expect(() => throwDistance({ speed: 1, height: Number.NaN, gravity })).toThrow(RangeError)
  })
})
