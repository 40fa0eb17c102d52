/** Checks of magnets that weaken with heat: their volts, and what the circuit makes of them. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { rotorField } from './air-gap-field.ts'
import { busCurrent } from './bus-current.ts'
import { loadPoint } from './load-point.ts'
import { magnetStrength, strengthBesideCopper, weakenedVoltage } from './magnet-strength.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { shortCircuit } from './short-circuit.ts'
import { finished } from './step.ts'
import { weakenedBus } from './weakened-bus.ts'

describe('agrees: volts scaled by the remanence and volts computed anew from warm magnets', () => {
  for (const [name, within] of [
    // without saturable steel the whole circuit is linear; with it the flux falls a little less than the remanence
    ['hen-house-drum', 1e-6],
    ['boathouse-two-disc', 5e-3],
  ] as const)
    test(name, () => {
      const { machine, layout, wound, voltage } = exampleChain(name)
      const warm = machine.site.ambient + 60
      const anew = openCircuitVoltage(machine, rotorField(machine, warm), layout, wound)
      const scaled = weakenedVoltage(voltage, magnetStrength(machine)(warm))
      expect(Math.abs(scaled.phases[0]!.rms / anew.phases[0]!.rms - 1)).toBeLessThan(within)
      expect(Math.abs(scaled.greatestLinePeak / anew.greatestLinePeak - 1)).toBeLessThan(within)
      expect(scaled.phases[0]!.rms).toBeLessThan(0.97 * voltage.phases[0]!.rms)
    })
})

describe('law: strength', () => {
  const { machine } = exampleChain('boathouse-two-disc')
  const { ambient } = machine.site
  test('one where the magnets are as cold as the air, whatever the share; falling with heat', () => {
    for (const share of [0, 0.3, 1]) expect(strengthBesideCopper(machine, share)(ambient)).toBe(1)
    expect(strengthBesideCopper(machine, 0)(400)).toBe(1)
    expect(strengthBesideCopper(machine, 0.3)(400)).toBeGreaterThan(strengthBesideCopper(machine, 0.6)(400))
    expect(magnetStrength(machine)(5000)).toBe(0)
  })
})

describe('agrees: a bus and a short with weak magnets, scaled from cold ones and solved anew', () => {
  const { machine, voltage, runaway } = exampleChain('boathouse-two-disc')
  const strength = 0.93
  const weak = weakenedVoltage(voltage, strength)
  test('the circuit itself is exactly so', () => {
    const threshold = 2 * machine.diode.threshold
    for (const U of [5, 20, 30]) {
      const at = (of: typeof voltage, volts: number) =>
        loadPoint(machine, of, {
          speed: 60,
          copperTemperature: 330,
          load: { kind: 'battery', voltage: volts, resistance: 0 },
        })
      const solved = at(weak, U)
      const cold = at(voltage, (U + threshold) / strength - threshold)
      expect(Math.abs((strength * cold.dcCurrent) / solved.dcCurrent - 1)).toBeLessThan(1e-6)
      expect(Math.abs((strength ** 2 * cold.power.winding) / solved.power.winding - 1)).toBeLessThan(1e-6)
    }
  })
  test('and its table within its own accuracy', () => {
    const { at } = finished(busCurrent(machine, voltage, { fastest: runaway.speed }))
    const bus = weakenedBus(at(330), 2 * machine.diode.threshold, strength)
    const state = { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 }
    for (const speed of [50, 120]) {
      bus.fill(state, speed, 20)
      const solved = loadPoint(machine, weak, {
        speed,
        copperTemperature: 330,
        load: { kind: 'battery', voltage: 20, resistance: 0 },
      })
      expect(Math.abs(state.dcCurrent / solved.dcCurrent - 1)).toBeLessThan(0.03)
      expect(Math.abs((state.torque * speed) / solved.power.shaft - 1)).toBeLessThan(0.04)
    }
  })
  test('a short goes with the volts, its heat with their square', () => {
    const of = (volts: typeof voltage) => shortCircuit(machine, volts, 'leads')(80, 350)
    expect(of(weak).phaseCurrent / of(voltage).phaseCurrent).toBeCloseTo(strength, 9)
    expect(of(weak).loss / of(voltage).loss).toBeCloseTo(strength ** 2, 9)
  })
})
