/** Checks of a winding with one phase open: against a circuit simulator, and against the circuit with no phase open. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { netlistCircuit } from '../../test/netlist.ts'
import { rectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import { withoutPhase } from './open-phase.ts'

const folder = new URL('../../test/reference/open-phase/', import.meta.url)
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8')
const results = JSON.parse(read('results.json')) as Readonly<Record<string, Readonly<Record<string, number>>>>

// Achieved: 0.01 % in amps and watts; the simulator's open joint is a resistor of 1 GΩ.
describe('agrees: general-purpose circuit simulator, phase a open, the others unlike and coupled, within 0.1 %', () => {
  for (const name of ['star', 'delta'])
    test(name, () => {
      const measured = results[name]!
      const point = rectifierPoint(withoutPhase(netlistCircuit(read(`${name}.cir`)), 0)!)
      const off = (actual: number, wanted: number) => Math.abs(actual / wanted - 1)
      expect(off(point.dcCurrent, measured.dc_mean!)).toBeLessThan(1e-3)
      expect(off(point.dcCurrentRms, measured.dc_rms!)).toBeLessThan(1e-3)
      expect(off(point.power.shaft, measured.shaft!)).toBeLessThan(1e-3)
      const ripple = (measured.shaft_max! - measured.shaft_min!) / measured.shaft!
      expect(off(point.torqueRipple, ripple)).toBeLessThan(1e-3)
      // line a of the delta's V is phase c seen backwards, line b is phase b
      const [first, second] = point.phaseCurrentRms
      const wanted = name === 'star' ? ['b', 'c'] : ['c', 'b']
      expect(off(first!, measured[`phase_${wanted[0]}_rms`]!)).toBeLessThan(1e-3)
      expect(off(second!, measured[`phase_${wanted[1]}_rms`]!)).toBeLessThan(1e-3)
      expect(measured.phase_a_rms!).toBeLessThan(1e-6 * measured.phase_b_rms!)
    })
})

describe('law: a phase that opens', () => {
  const whole = netlistCircuit(read('star.cir').replace('sb=1.1', 'sb=1'))
  test('takes amps away and shakes the shaft', () => {
    for (const connection of ['star', 'delta', 'separate'] as const) {
      const sound = { ...whole, connection }
      const before = rectifierPoint(sound)
      for (const open of [0, 1, 2]) {
        const after = rectifierPoint(withoutPhase(sound, open)!)
        expect(after.dcCurrent).toBeLessThan(before.dcCurrent)
        expect(after.torqueRipple).toBeGreaterThan(before.torqueRipple)
      }
    }
  })
  test('leaves nothing of a single phase, nor of a star of two', () => {
    const first = whole.emf.slice(0, 1)
    const single = { ...whole, connection: 'single', emf: first, resistance: [1], inductance: [[0]] } as const
    expect(withoutPhase(single, 0)).toBeUndefined()
    const two = withoutPhase(whole, 0)!
    expect(withoutPhase(two, 0)).toBeUndefined()
  })
})
