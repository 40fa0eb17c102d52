/** Checks volts and amps in work, in the storm and shorted. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { sampleChain } from '../../test/sample-chain.ts'
import { parseDesign } from '../machine/parse.ts'
import { computeDesign } from './compute.ts'
import { resistorPower } from './dump-alone.ts'
import { mechanicalHolds, stuckDuty, workingDuty } from './electric-duty.ts'
import { loadPoint } from './load-point.ts'

describe('law: the greatest in work', () => {
  test('sample: 0.6 v³ up to the limiter at 26 V, the cable behind the bridge on top', () => {
    const duty = workingDuty(sampleChain())!
    expect(duty.power).toBeCloseTo(0.6 * 11 ** 3, 9)
    expect(duty.directCurrent).toBeCloseTo((0.6 * 11 ** 3) / 26, 9)
    expect(duty.directVoltage).toBeCloseTo(26 * (1 + 0.005 / 0.6), 9)
    expect(duty.wind).toBe(11)
    expect(workingDuty(sampleChain({}, () => ({ rows: [] })))).toBeUndefined()
  })
  test('a delta’s line carries √3 of its phase', () => {
    const star = workingDuty(sampleChain())!.lineCurrent
    const delta = workingDuty(sampleChain({ 'stator.connection': 'delta' }))!.lineCurrent
    expect(delta / star).toBeCloseTo(Math.sqrt(3), 12)
  })
  test('a limiter above the storm holds nothing, and nothing can stick', () => {
    const late = sampleChain({ 'protection.actsAt_m_per_s': 30 })
    expect(mechanicalHolds(late.machine)).toBe(false)
    expect(stuckDuty(late)).toBeUndefined()
  })
})

function chainOfDrum() {
  const parsed = parseDesign(fixedDocument('drum'))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}
const drum = chainOfDrum()

describe('agrees: a resistor behind the bridge, fundamental against the circuit in steps', () => {
  // ideal diodes, as the closed form has them
  const machine = { ...drum.machine, diode: { ...drum.machine.diode, threshold: 0, slope: 0 } }
  test.each([
    [1, 30],
    [3, 100],
    [10, 300],
    [30, 100],
  ])('%f Ω at %f rad/s', (resistance, speed) => {
    const closed = resistorPower({ machine, voltage: drum.voltage }, resistance)(speed)
    const point = loadPoint(machine, drum.voltage, {
      speed,
      copperTemperature: 333.15,
      load: { kind: 'resistor', resistance },
    })
    // the cable behind the bridge takes its part of what the closed form leaves to the resistor
    expect(Math.abs(closed.resistor / point.power.load - 1)).toBeLessThan(0.07)
  })
})

describe('law: a stuck limiter lets more through', () => {
  test('drum in its storm', () => {
    const duty = workingDuty(drum)!
    const stuck = stuckDuty(drum)
    if (stuck === undefined) throw new Error('the drum has a limiter below its storm')
    expect(stuck.wind).toBe(drum.machine.site.stormWind)
    expect(stuck.directCurrent).toBeGreaterThan(duty.directCurrent)
    expect(stuck.speed).toBeLessThan(drum.runaway.speed)
  })
})
