/** Checks the direct voltages of ideal bridges. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { rectifierPoint } from './bridge-rectifier.ts'
import { bridgeMeanVoltage, clampedBatteryEfficiency, cutInPhaseVoltage } from './dc-voltage.ts'

describe('source: mohan2003, section 5-6-1 — mean of the ideal three-phase bridge, 1.35 of the line voltage (from memory, not opened)', () => {
  check('3√2/π', bridgeMeanVoltage(1), '1.35')
})

describe('agrees: integral of the highest line voltage over a sixth of the period', () => {
  test('to rounding', () => {
    const { nodes, weights } = gaussLegendreOn(12, -Math.PI / 6, Math.PI / 6)
    const mean = nodes.reduce((sum, θ, k) => sum + weights[k]! * Math.SQRT2 * Math.cos(θ), 0) / (Math.PI / 3)
    expect(bridgeMeanVoltage(1)).toBeCloseTo(mean, 12)
  })
})

describe('law: cut-in', () => {
  test('14 V peak: 5.715 V in star, 9.899 V in delta', () => {
    expect(cutInPhaseVoltage({ connection: 'star', voltage: 14 })).toBeCloseTo(14 / Math.sqrt(6), 12)
    expect(cutInPhaseVoltage({ connection: 'star', voltage: 14 })).toBeCloseTo(5.715, 3)
    expect(cutInPhaseVoltage({ connection: 'delta', voltage: 14 })).toBeCloseTo(9.899, 3)
    expect(() => cutInPhaseVoltage({ connection: 'wye' as 'star', voltage: 1 })).toThrow('not-a-choice')
  })
})

describe('agrees: peak of three sines by search', () => {
  test('star and delta', () => {
    const phase = (k: number, θ: number) => Math.SQRT2 * Math.cos(θ - (2 * Math.PI * k) / 3)
    let star = 0
    let delta = 0
    for (let θ = 0; θ < 2 * Math.PI; θ += 1e-4) {
      star = Math.max(star, phase(0, θ) - phase(1, θ))
      delta = Math.max(delta, phase(0, θ))
    }
    expect(star * cutInPhaseVoltage({ connection: 'star', voltage: 10 })).toBeCloseTo(10, 6)
    expect(delta * cutInPhaseVoltage({ connection: 'single', voltage: 10 })).toBeCloseTo(10, 6)
  })
})

describe('law: efficiency into a clamped battery', () => {
  test('12.6 V, cut-in at 14.0 V: 0.72, 0.60, 0.45, 0.30 at 1.25, 1.5, 2, 3 times the speed', () => {
    for (const [speedRatio, η] of [
      [1.25, 0.72],
      [1.5, 0.6],
      [2, 0.45],
      [3, 0.3],
    ] as const)
      expect(clampedBatteryEfficiency({ batteryVoltage: 12.6, cutInVoltage: 14, speedRatio })).toBeCloseTo(
        η,
        12,
      )
  })
  test('falls with speed, refuses below cut-in', () => {
    const at = (speedRatio: number) =>
      clampedBatteryEfficiency({ batteryVoltage: 12, cutInVoltage: 13.4, speedRatio })
    expect(at(2)).toBeLessThan(at(1))
    expect(() => at(0.9)).toThrow('below-minimum')
    expect(() => clampedBatteryEfficiency({ batteryVoltage: 14, cutInVoltage: 13, speedRatio: 1 })).toThrow(
      'below-minimum',
    )
  })
})

describe('agrees: the bridge solved in time is at or below the clamped bound', () => {
  // Square EMF of a single phase: current in phase, all at one voltage, so the bound is met.
  test('nearly square EMF within 3 %', () => {
    const orders = 41
    const sin = new Float64Array(orders + 1)
    for (let h = 1; h <= orders; h += 2)
      sin[h] = (4 / Math.PI / h) * (Math.sin((Math.PI * h) / 42) / ((Math.PI * h) / 42)) * 28
    const point = rectifierPoint({
      connection: 'single',
      emf: [{ cos: new Float64Array(orders + 1), sin }],
      frequency: 30,
      resistance: [1],
      inductance: [[0]],
      lineResistance: 0,
      diode: { threshold: 0.7, slope: 0 },
      dcResistance: 0,
      load: { kind: 'battery', voltage: 12.6, resistance: 0 },
    })
    const bound = clampedBatteryEfficiency({ batteryVoltage: 12.6, cutInVoltage: 14, speedRatio: 2 })
    expect(Math.abs(point.power.load / point.power.shaft / bound - 1)).toBeLessThan(0.03)
  })
})
