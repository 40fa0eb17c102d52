/** Checks the shorted winding: current, heat, torque, and the rotor it brakes. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { sampleMachine, samplePhase, sampleVoltage } from '../../test/sample-chain.ts'
import { brakedState, shortCircuit } from './short-circuit.ts'

const voltage = sampleVoltage()
const star = shortCircuit(sampleMachine(), voltage)
const delta = shortCircuit(sampleMachine({ 'stator.connection': 'delta' }), voltage)

describe('agrees: I = E/√(R² + (ω L)²), L = self less mutual, by hand at 40 rad/s', () => {
  // E = 0.7/√2 · 40 V rms, R = 0.2 Ω, ω L = 6 · 40 · 1.2 mH
  const current = ((0.7 / Math.SQRT2) * 40) / Math.hypot(0.2, 0.288)
  check('star, amps', star(40, 293.15).phaseCurrent, current.toFixed(3))
  check('closed phases, amps', delta(40, 293.15).phaseCurrent, current.toFixed(3))
  check('heat, watts', star(40, 293.15).loss, (3 * current ** 2 * 0.2).toFixed(2))
  check('torque, newton metres', star(40, 293.15).torque, ((3 * current ** 2 * 0.2) / 40).toFixed(4))
})

describe('law: limits', () => {
  test('nothing at rest, torque in proportion to speed near it', () => {
    expect(star(0, 293.15)).toEqual({ phaseCurrent: 0, loss: 0, torque: 0 })
    expect(star(0.02, 293.15).torque / star(0.01, 293.15).torque).toBeCloseTo(2, 5)
  })
  test('the torque has its top where reactance meets resistance, E²-wise 3 E²/(2 R ω)', () => {
    const top = 0.2 / (6 * 1.2e-3)
    const most = star(top, 293.15).torque
    expect(star(top * 0.9, 293.15).torque).toBeLessThan(most)
    expect(star(top * 1.1, 293.15).torque).toBeLessThan(most)
  })
  test('hot copper carries less', () => {
    expect(star(20, 400).phaseCurrent).toBeLessThan(star(20, 293.15).phaseCurrent)
  })
  test('a long line before the bridge takes its part of the power', () => {
    const before = { 'cable.place': 'before bridge', 'cable.area_mm2': 2 }
    const line = shortCircuit(sampleMachine(before), voltage)(20, 293.15)
    expect(line.phaseCurrent).toBeLessThan(star(20, 293.15).phaseCurrent)
    expect(line.torque * 20).toBeGreaterThan(line.loss)
  })
  test('unlike phases of a star still sum to no current', () => {
    const uneven = sampleVoltage([samplePhase(0.7, 0), samplePhase(0, 2), samplePhase(0, -2)])
    const one = shortCircuit(sampleMachine(), uneven)(20, 293.15)
    expect(Number.isFinite(one.phaseCurrent)).toBe(true)
    expect(one.phaseCurrent).toBeLessThan(delta(20, 293.15).phaseCurrent)
  })
})

describe('law: a braked rotor', () => {
  test('holds under a strong brake, not under a weak one', () => {
    const blades = (speed: number) => 2 - speed / 60
    expect(brakedState(blades, (speed) => speed, 60)).toMatchObject({ holds: true })
    expect(brakedState(blades, (speed) => speed, 60).speed).toBeLessThan(4.1)
    expect(brakedState(blades, () => 0.5, 60)).toEqual({ speed: 60, holds: false })
    expect(brakedState(blades, (speed) => speed / 30, 60).holds).toBe(false)
    expect(
      brakedState(
        () => 1,
        () => 0,
        0,
      ),
    ).toEqual({ speed: 0, holds: true })
  })
})
