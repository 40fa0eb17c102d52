/** Checks of the operating points on curves whose crossings are known. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bladeMap, settledSpeed, steadyStates } from './match.ts'

describe('law: steady states', () => {
  test('a parabola met by a line once: stable, where the algebra says', () => {
    const states = steadyStates(
      (speed) => speed * (10 - speed),
      (speed) => 4 * speed,
      12,
    )
    expect(states).toHaveLength(1)
    expect(states[0]!.speed).toBeCloseTo(6, 8)
    expect(states[0]!.stable).toBe(true)
  })
  test('three crossings alternate stable, unstable, stable; the past decides which is reached', () => {
    const surplus = (speed: number) => -(speed - 2) * (speed - 5) * (speed - 9)
    const states = steadyStates(surplus, () => 0, 12)
    expect(states.map(({ stable }) => stable)).toEqual([true, false, true])
    const from = (speed: number) => settledSpeed(surplus, () => 0, { from: speed, fastest: 12 })
    expect(from(0)).toBeCloseTo(2, 8)
    expect(from(4.9)).toBeCloseTo(2, 8)
    expect(from(5.1)).toBeCloseTo(9, 8)
    expect(from(11)).toBeCloseTo(9, 8)
  })
  test('a rotor that the load holds from the first turn never leaves rest', () => {
    const states = steadyStates(
      (speed) => speed * speed,
      (speed) => 3 * speed,
      10,
    )
    expect(states[0]!.stable).toBe(false)
    expect(
      settledSpeed(
        (speed) => speed * speed,
        (speed) => 3 * speed,
        { from: 0, fastest: 10 },
      ),
    ).toBe(0)
  })
  test('crossings of random cubics with a root apart from the others are all found', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 4, max: 8, noNaN: true }),
        (a, b) => {
          const states = steadyStates(
            (x) => (a - x) * (b - x) * (x + 1),
            () => 0,
            10,
          )
          expect(states.map(({ speed }) => speed)[0]).toBeCloseTo(a, 6)
          expect(states.map(({ speed }) => speed)[1]).toBeCloseTo(b, 6)
        },
      ),
      { numRuns: 50 },
    )
  })
})

describe('law: map of the blades', () => {
  const curve = {
    tipSpeedRatio: Float64Array.of(0, 2, 4, 6, 8),
    torque: Float64Array.of(0.02, 0.08, 0.1, 0.06, -0.01),
    power: Float64Array.of(0, 0.16, 0.4, 0.36, -0.08),
    thrust: new Float64Array(5),
    best: { tipSpeedRatio: 4, power: 0.4 },
    runaway: 7.8,
    shape: undefined,
  }
  const map = bladeMap(curve, { density: 1.2, radius: 0.5, area: Math.PI * 0.25 })
  test('power is torque times speed and never above what the wind holds', () => {
    for (const wind of [2, 5, 11])
      for (const ratio of [0.5, 3, 5, 7]) {
        const speed = (ratio * wind) / 0.5
        expect(map.power(wind, speed)).toBeCloseTo(speed * map.torque(wind, speed), 9)
        expect(map.power(wind, speed)).toBeLessThan((16 / 27) * map.available(wind))
      }
  })
  test('twice the wind at the same ratio gives eight times the power', () => {
    expect(map.power(8, 64) / map.power(4, 32)).toBeCloseTo(8, 9)
  })
  test('curves of several winds: each at its wind, held beyond, straight in ln v between; thrust likewise', () => {
    const scaled = (wind: number, k: number) => ({
      wind,
      torque: curve.torque.map((value) => k * value),
      power: curve.power.map((value) => k * value),
      thrust: curve.tipSpeedRatio.map(() => 0.1 * k),
    })
    const byWind = [scaled(3, 1), scaled(6, 2), scaled(12, 3)]
    const several = bladeMap({ ...curve, byWind }, { density: 1.2, radius: 0.5, area: Math.PI * 0.25 })
    const factor = (wind: number) => several.power(wind, 8 * wind) / map.power(wind, 8 * wind)
    for (const [wind, k] of [
      [1, 1],
      [3, 1],
      [Math.sqrt(18), 1.5],
      [6, 2],
      [12, 3],
      [30, 3],
    ] as const) {
      expect(factor(wind)).toBeCloseTo(k, 9)
      expect(several.thrust(wind, 8 * wind)).toBeCloseTo(0.1 * k * 0.6 * Math.PI * 0.25 * wind ** 2, 9)
    }
  })
  test('past the table the blades brake harder and harder', () => {
    expect(map.torque(5, (9 * 5) / 0.5)).toBeLessThan(map.torque(5, (8 * 5) / 0.5))
    expect(map.torque(5, (12 * 5) / 0.5)).toBeLessThan(map.torque(5, (9 * 5) / 0.5))
  })
})
