/** Checks the shorted winding: current, heat, torque, and the wires between winding and short. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { sampleMachine, samplePhase, sampleVoltage } from '../../test/sample-chain.ts'
import { shortCircuit } from './short-circuit.ts'

const voltage = sampleVoltage()
const star = shortCircuit(sampleMachine(), voltage, 'far end')
const delta = shortCircuit(sampleMachine({ 'stator.connection': 'delta' }), voltage, 'far end')

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
    const line = shortCircuit(sampleMachine(before), voltage, 'far end')(20, 293.15)
    expect(line.phaseCurrent).toBeLessThan(star(20, 293.15).phaseCurrent)
    expect(line.torque * 20).toBeGreaterThan(line.loss)
    expect(shortCircuit(sampleMachine(before), voltage, 'leads')(20, 293.15)).toEqual(star(20, 293.15))
  })
  test('unlike phases of a star still sum to no current', () => {
    const uneven = sampleVoltage([samplePhase(0.7, 0), samplePhase(0, 2), samplePhase(0, -2)])
    const one = shortCircuit(sampleMachine(), uneven, 'leads')(20, 293.15)
    expect(Number.isFinite(one.phaseCurrent)).toBe(true)
    expect(one.phaseCurrent).toBeLessThan(delta(20, 293.15).phaseCurrent)
  })
})

describe('agrees: star-delta, three wires R before a short act as 3R in each phase of a delta', () => {
  const wired = sampleMachine({
    'stator.connection': 'delta',
    'cable.place': 'before bridge',
    'cable.area_mm2': 2,
  })
  const R = wired.cable.conductorResistance
  const far = shortCircuit(wired, voltage, 'far end')(40, 293.15)
  const current = ((0.7 / Math.SQRT2) * 40) / Math.hypot(0.2 + 3 * R, 0.288)
  check('amps', far.phaseCurrent, current.toFixed(3))
  check('torque, newton metres', far.torque, ((3 * current ** 2 * (0.2 + 3 * R)) / 40).toFixed(3))
  check('heat in the copper alone, watts', far.loss, (3 * current ** 2 * 0.2).toFixed(2))
  test('a current round the loop meets no wire', () => {
    const inStep = sampleVoltage([0, 0, 0].map((lag) => samplePhase(0.7, lag)))
    const round = shortCircuit(wired, inStep, 'far end')(40, 293.15)
    const leads = shortCircuit(wired, inStep, 'leads')(40, 293.15)
    expect(round.phaseCurrent).toBeCloseTo(leads.phaseCurrent, 9)
    expect(round.torque).toBeCloseTo(leads.torque, 9)
  })
})
