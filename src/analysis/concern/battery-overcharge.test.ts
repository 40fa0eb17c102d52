/** Checks the concern of an overcharged battery. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { batteryOvercharge, chargingFaults } from './battery-overcharge.ts'

describe('law: diverted, within volts and rate', () => {
  const charging = { voltage: 14, full: 14.4, current: 10, capacity: 100 * 3600, rate: 0.2, diverted: true }
  test('faults', () => {
    expect(chargingFaults(charging)).toEqual({ overVoltage: false, undiverted: false, tooFast: undefined })
    expect(chargingFaults({ ...charging, voltage: 14.5 }).overVoltage).toBe(true)
    expect(chargingFaults({ ...charging, diverted: false }).undiverted).toBe(true)
    expect(chargingFaults({ ...charging, current: 30 }).tooFast).toBeCloseTo(0.3, 12)
    expect(chargingFaults({ ...charging, current: 30, capacity: undefined }).tooFast).toBeUndefined()
  })
  test('silent with a dump load, a warning without, blocking for lithium above its volts', () => {
    expect(batteryOvercharge.judge(sampleChain())).toBeUndefined()
    expect(batteryOvercharge.judge(sampleChain({ 'protection.electrical': 'none' }))?.severity).toBe(
      'warning',
    )
    expect(batteryOvercharge.judge(sampleChain({ 'load.capacity_Ah': 50 }))?.what).toContain('faster')
    const lithium = (safetyClass: string) =>
      sampleChain({ 'load.chemistry': 'Li-ion', 'purpose.class': safetyClass }, ({ rows }) => ({
        rows: rows.map((row) => ({ ...row, loadVoltage: 30 })),
      }))
    expect(batteryOvercharge.judge(lithium('outdoor'))?.severity).toBe('blocking')
    expect(batteryOvercharge.judge(lithium('bench'))?.severity).toBe('warning')
  })
})
