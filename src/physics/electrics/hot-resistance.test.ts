/** Checks of the resistance of hot elements. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { root } from '../../numerics/root.ts'
import { filamentResistance, heaterResistance } from './hot-resistance.ts'

const lamp = { ratedVoltage: 12, ratedPower: 21 }

/** Power of the lamp at a share of its volts, the resistance found from its own power. */
function powerAt(share: number): number {
  const U = share * lamp.ratedVoltage
  return root((P) => U * U - P * filamentResistance(lamp, P), [1e-3, 100], 1e-12)
}

describe('source: fink1978, page 22-8 — a lamp off its rated volts (quoted by an encyclopaedia): power to 1.6, current to 0.55', () => {
  // the printed exponent of the power is rounded: 1 + 0.55
  check('exponent of the power', () => Math.log(powerAt(0.8) / 21) / Math.log(0.8), '1.6', {
    absolute: 0.0501,
  })
  check('exponent of the current', () => Math.log(powerAt(0.7) / 0.7 / 21) / Math.log(0.7), '0.55')
})

describe('agrees: tungsten that radiates, R ∝ T^1.2 and P ∝ T⁴, from memory, not opened', () => {
  test('resistance at half to full power within 3 %', () => {
    for (const share of [0.5, 0.7, 0.85, 1, 1.2]) {
      const radiating = (144 / 21) * share ** (1.2 / 4)
      expect(Math.abs(filamentResistance(lamp, 21 * share) / radiating - 1)).toBeLessThan(0.03)
    }
  })
  test('an element that only radiates misses the straight line by a third of the rise at most', () => {
    const [T0, Th] = [293, 923]
    let most = 0
    for (let T = T0; T <= Th; T += 5) {
      const power = (T ** 4 - T0 ** 4) / (Th ** 4 - T0 ** 4)
      const true_ = 1 + (0.08 * (T - T0)) / (Th - T0)
      most = Math.max(most, (true_ - heaterResistance({ cold: 1, hot: 1.08, ratedPower: 1 }, power)) / 0.08)
    }
    expect(most).toBeGreaterThan(0.3)
    expect(most).toBeLessThan(1 / 3)
  })
})

describe('law: hotter never conducts better', () => {
  test('both rise with power, from cold to label', () => {
    const heater = { cold: 2, hot: 2.2, ratedPower: 100 }
    expect(heaterResistance(heater, 0)).toBe(2)
    expect(heaterResistance(heater, 100)).toBe(2.2)
    let before = 0
    for (let P = 0; P <= 40; P += 0.5) {
      const R = filamentResistance(lamp, P)
      expect(R).toBeGreaterThanOrEqual(before)
      before = R
    }
    expect(filamentResistance(lamp, 0)).toBeCloseTo(144 / 21 / 14, 12)
  })
})
