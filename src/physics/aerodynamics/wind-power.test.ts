/** Checks of the power in the wind. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { betzLimit } from './induction.ts'
import { idealDiscPower, rotorSpeed, tipSpeedRatio, windPower, windThrust } from './wind-power.ts'

describe('source: manwell2009, table 2.1, power per square metre at 1.225 kg/m³ (from memory, not opened)', () => {
  // The table prints three digits, the last rounded freely: held to 0.5 %, at 5 m/s to its tens.
  const rows = [
    [5, '80', 5],
    [10, '610', 5],
    [15, '2070', 5],
    [20, '4900', 10],
    [25, '9560', 15],
    [30, '16550', 15],
  ] as const
  for (const [speed, printed, absolute] of rows)
    check(`${speed} m/s`, windPower({ density: 1.225, area: 1, speed }), printed, { absolute })
})

describe('agrees: hand arithmetic, a rotor of 1.5 m', () => {
  const area = Math.PI * 0.75 ** 2
  const rows = [
    [3, '29.22'],
    [5, '135.3'],
    [10, '1082'],
    [15, '3653'],
    [25, '16912'],
  ] as const
  for (const [speed, printed] of rows)
    check(`power at ${speed} m/s`, windPower({ density: 1.225, area, speed }), printed)
  check('thrust 8/9 at 10 m/s', windThrust({ density: 1.225, area, speed: 10, coefficient: 8 / 9 }), '96')
  check('thrust 8/9 at 25 m/s', windThrust({ density: 1.225, area, speed: 25, coefficient: 8 / 9 }), '601')
  check(
    'r/min at λ 6, 4 m/s',
    (rotorSpeed({ tipSpeedRatio: 6, windSpeed: 4, radius: 0.75 }) * 30) / Math.PI,
    '305.6',
  )
  check(
    'r/min at λ 10, 15 m/s',
    (rotorSpeed({ tipSpeedRatio: 10, windSpeed: 15, radius: 0.75 }) * 30) / Math.PI,
    '1910',
  )
})

describe('source: betz1920 — greatest power of a disc', () => {
  check('16/27', betzLimit, '0.592593')
  check('at a third', idealDiscPower(1 / 3), '0.592593')
  test('law: no other induction gives more', () => {
    for (let a = 0; a <= 1; a += 0.001) expect(idealDiscPower(a)).toBeLessThanOrEqual(betzLimit + 1e-15)
  })
})

describe('agrees: energy of the air before and behind the disc', () => {
  for (const a of [0.05, 0.2, 1 / 3, 0.45])
    test(`a = ${a.toFixed(2)}`, () => {
      const [ρ, A, v] = [1.2, 2, 8]
      const flow = ρ * A * v * (1 - a)
      const taken = (flow / 2) * (v ** 2 - (v * (1 - 2 * a)) ** 2)
      expect(windPower({ density: ρ, area: A, speed: v }) * idealDiscPower(a)).toBeCloseTo(taken, 9)
    })
})

describe('law: cube and square of the wind, ratio there and back', () => {
  test('double wind', () => {
    const at = (speed: number) => ({ density: 1.1, area: 3, speed, coefficient: 0.8 })
    expect(windPower(at(8)) / windPower(at(4))).toBeCloseTo(8, 12)
    expect(windThrust(at(8)) / windThrust(at(4))).toBeCloseTo(4, 12)
    const speed = rotorSpeed({ tipSpeedRatio: 7.3, windSpeed: 5, radius: 0.9 })
    expect(tipSpeedRatio({ speed, windSpeed: 5, radius: 0.9 })).toBeCloseTo(7.3, 12)
    expect(() => tipSpeedRatio({ speed, windSpeed: 0, radius: 0.9 })).toThrow(/below-minimum/)
    expect(() => windPower({ density: 1, area: -1, speed: 1 })).toThrow(/below-minimum/)
  })
})
