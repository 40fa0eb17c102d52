/** Checks cables and current density. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { rectifierPoint } from './bridge-rectifier.ts'
import {
  cableEnergyLoss,
  cableLoopResistance,
  threeWireLineCurrent,
  threeWireLoss,
  voltageDropShare,
} from './cable.ts'
import { currentDensity, heatPerVolume } from './current-density.ts'

describe('source: mohan2003, section 5-6 — line current 0.816 of a smooth DC current (from memory, not opened)', () => {
  check('√(2/3)', threeWireLineCurrent(1), '0.816')
})

describe('agrees: the bridge solved in time into a large EMF through a large resistance', () => {
  // R without L and a high EMF: the line current is nearly a square wave of ±Idc, 120° wide.
  const n = [0, 1, 2]
  const emf = n.map((k) => ({
    cos: Float64Array.of(0, -100 * Math.sin((2 * Math.PI * k) / 3)),
    sin: Float64Array.of(0, 100 * Math.cos((2 * Math.PI * k) / 3)),
  }))
  const point = rectifierPoint({
    connection: 'star',
    emf,
    frequency: 50,
    resistance: [1e-3, 1e-3, 1e-3],
    inductance: n.map(() => [0, 0, 0]),
    lineResistance: 0.1,
    diode: { threshold: 0, slope: 0 },
    dcResistance: 0,
    load: { kind: 'resistor', resistance: 100 },
  })
  test('line current and three-wire loss within 0.3 %', () => {
    expect(point.lineCurrentRms[0]! / threeWireLineCurrent(point.dcCurrent)).toBeCloseTo(1, 2)
    const loss = threeWireLoss({ dcCurrent: point.dcCurrent, wireResistance: 0.1 })
    expect(Math.abs(point.power.line / loss - 1)).toBeLessThan(0.003)
  })
})

describe('law: cables', () => {
  test('three wires before the bridge lose what two of the same size lose behind it', () => {
    for (const I of [0, 0.3, 12, 400]) {
      const R = 0.07
      expect(threeWireLoss({ dcCurrent: I, wireResistance: R })).toBeCloseTo(2 * R * I * I, 9)
      expect(3 * R * threeWireLineCurrent(I) ** 2).toBeCloseTo(2 * R * I * I, 9)
    }
  })
  test('loop counts the route twice; 20 m of 6 mm² drop 1.72 V at 15 A', () => {
    const cable = { route: 20, area: 6e-6, resistivity: 1 / 58e6 }
    const resistance = cableLoopResistance(cable)
    expect(resistance).toBeCloseTo((2 * 20) / 6 / 58, 12)
    expect(15 * resistance).toBeCloseTo(1.724, 3)
    expect(voltageDropShare({ current: 15, resistance, voltage: 12.6 })).toBeCloseTo(0.137, 3)
    expect(cableLoopResistance({ ...cable, route: 40 })).toBeCloseTo(2 * resistance, 12)
  })
  test('energy adds up over classes and splits with time', () => {
    const whole = cableEnergyLoss({ resistance: 0.2, currents: [3, 5], durations: [100, 50] })
    const split = cableEnergyLoss({ resistance: 0.2, currents: [3, 5, 3], durations: [40, 50, 60] })
    expect(split).toBeCloseTo(whole, 9)
    expect(() => cableEnergyLoss({ resistance: 1, currents: [1], durations: [] })).toThrow('wrong-length')
  })
})

describe('agrees: heat of a wire from its resistance and from its current density', () => {
  test('R I² = ρ J² volume', () => {
    const ρ = 2e-8
    const J = currentDensity({ current: 7, area: 1.5e-6 })
    expect(heatPerVolume({ density: J, resistivity: ρ }) * 1.5e-6 * 4).toBeCloseTo(
      ((ρ * 4) / 1.5e-6) * 49,
      10,
    )
  })
})

describe('law: current density', () => {
  test('strands share the current; refuses no area', () => {
    expect(currentDensity({ current: 6, area: 2e-6 })).toBe(3e6)
    expect(currentDensity({ current: 0, area: 2e-6 })).toBe(0)
    expect(() => currentDensity({ current: 1, area: 0 })).toThrow('below-minimum')
    expect(heatPerVolume({ density: -2e6, resistivity: 1e-8 })).toBeCloseTo(4e4, 6)
  })
})
