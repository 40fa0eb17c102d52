/** Checks of the yawed rotor. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { furlYaw, furlYawAgainst, yawReduction, yawReductionHeck2023 } from './yaw.ts'

const rad = Math.PI / 180

/** Full equations of the yawed disc (heck2023, equation 2.15), sideways wake included, by fixed point. */
const fullDisc = (C: number, γ: number) => {
  const c = Math.cos(γ)
  let a = (C * c * c) / (4 + C * c * c)
  for (let k = 0; k < 2000; k++) {
    const u = 1 - 0.5 * C * (1 - a) * c * c
    const v = -0.25 * C * (1 - a) ** 2 * Math.sin(γ) * c * c
    a += 0.3 * (1 - Math.sqrt(1 - u * u - v * v) / (Math.sqrt(C) * c) - a)
  }
  return a
}

describe('source: burton2001, equation 3.91 and its text: the power goes as the cube of the cosine', () => {
  check('60°: 1/8', yawReduction(60 * rad).power, '0.125')
  check('45°: 1/√8', yawReduction(45 * rad).power, '0.35355')
})

describe('agrees: greatest C_P = 4a (cos γ − a)², searched over a, and the thrust 4a (cos γ − a) there', () => {
  for (const degrees of [10, 25, 40, 70])
    test(`${degrees}°`, () => {
      const c = Math.cos(degrees * rad)
      let best = { power: 0, thrust: 0 }
      for (let a = 0; a < c; a += 1e-5) {
        const power = 4 * a * (c - a) ** 2
        if (power > best.power) best = { power, thrust: 4 * a * (c - a) }
      }
      const kept = yawReduction(degrees * rad)
      expect(kept.power * (16 / 27)).toBeCloseTo(best.power, 8)
      expect(kept.thrust * (8 / 9)).toBeCloseTo(best.thrust, 4)
    })
})

describe('agrees: the full equations of the yawed disc, heck2023', () => {
  for (const degrees of [0, 10, 20, 30, 40])
    for (const C of [0.5, 1, 2])
      test(`${degrees}°, C_T′ ${C}: 1.5 % of the wind`, () => {
        const γ = degrees * rad
        const full = (Math.cos(γ) * (1 - fullDisc(C, γ))) / (1 - C / (4 + C))
        const kept = yawReductionHeck2023({ yawAngle: γ, thrustCoefficient: (16 * C) / (4 + C) ** 2 })
        expect(Math.abs(kept.wind / full - 1)).toBeLessThan(0.015)
      })
})

describe('source: gebraad2016, exponent 1.88 of a large rotor in large-eddy simulation (from memory, not opened)', () => {
  test('it lies between the two rules at every yaw to 40°', () => {
    for (let degrees = 5; degrees <= 40; degrees += 5) {
      const power = Math.cos(degrees * rad) ** 1.88
      expect(yawReduction(degrees * rad).power).toBeLessThan(power)
      expect(
        yawReductionHeck2023({ yawAngle: degrees * rad, thrustCoefficient: 8 / 9 }).power,
      ).toBeGreaterThan(power)
    }
  })
})

describe('law: symmetry, bounds, balance', () => {
  test('any yaw, either side, finite, between nothing and all; without thrust both rules are one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (γ, C) => {
          const one = yawReduction(γ)
          const other = yawReductionHeck2023({ yawAngle: γ, thrustCoefficient: C })
          expect(one.power).toBe(yawReduction(-γ).power)
          expect(one.wind).toBeGreaterThanOrEqual(0)
          expect(other.wind).toBeGreaterThanOrEqual(one.wind)
          expect(other.wind).toBeLessThanOrEqual(1)
          expect(yawReductionHeck2023({ yawAngle: γ, thrustCoefficient: 0 }).wind).toBe(one.wind)
        },
      ),
    )
  })
  test('held wind: what the yawed rotor sees never exceeds it until the stop', () => {
    for (const windSpeed of [0, 5, 10, 10.1, 18, 60]) {
      const γ = furlYaw({ windSpeed, heldWind: 10 })
      expect(windSpeed * yawReduction(γ).wind).toBeCloseTo(Math.min(windSpeed, 10), 9)
    }
    expect(furlYaw({ windSpeed: 60, heldWind: 10, greatest: 1 })).toBe(1)
  })
  test('moments balance; a steady moment holds the thrust, so the same yaw as a held wind', () => {
    for (const v of [12, 20, 40])
      expect(furlYawAgainst({ thrustMoment: v ** 2, restoring: () => 100 })).toBeCloseTo(
        furlYaw({ windSpeed: v, heldWind: 10 }),
        8,
      )
    const spring = (γ: number) => 1 + 2 * γ
    const γ = furlYawAgainst({ thrustMoment: 3, restoring: spring })
    expect(3 * Math.cos(γ) ** 2).toBeCloseTo(spring(γ), 7)
    expect(furlYawAgainst({ thrustMoment: 0.9, restoring: spring })).toBe(0)
    expect(furlYawAgainst({ thrustMoment: 1e9, restoring: spring, greatest: 1.2 })).toBe(1.2)
  })
  test('refuses the meaningless', () => {
    expect(() => yawReduction(Number.NaN)).toThrow(/not-finite/)
    expect(() => yawReductionHeck2023({ yawAngle: 0, thrustCoefficient: -1 })).toThrow(/below-minimum/)
    expect(() => furlYaw({ windSpeed: 5, heldWind: 0 })).toThrow(/below-minimum/)
    expect(() => furlYawAgainst({ thrustMoment: 1, restoring: () => Number.NaN })).toThrow(/not-finite/)
  })
})
