/** Checks the concern of a dump load that switches at the wrong volts. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { dumpVoltage, triggerFaults } from './dump-voltage.ts'

describe('law: above a full battery at rest, at most its end of charge', () => {
  const usual = { on: 14.4, off: 13.4, restFull: 12.7, top: 14.4, disconnect: undefined }
  test('faults', () => {
    expect(triggerFaults(usual)).toEqual([])
    expect(triggerFaults({ ...usual, on: 14.8 })).toEqual([])
    expect(triggerFaults({ ...usual, on: 15 })).toEqual(['overcharges'])
    expect(triggerFaults({ ...usual, off: 12.6 })).toEqual(['drains'])
    expect(triggerFaults({ ...usual, on: 12.5, off: 12 })).toEqual(['never full'])
    expect(triggerFaults({ ...usual, disconnect: 14.4 })).toEqual(['battery leaves first'])
    expect(triggerFaults({ ...usual, disconnect: 14.6 })).toEqual([])
  })
  test('severity', () => {
    const judged = (fields: Record<string, unknown>) => dumpVoltage.judge(sampleChain(fields))
    expect(judged({})).toBeUndefined()
    expect(judged({ 'protection.dump.on_V': 30 })?.severity).toBe('warning')
    expect(judged({ 'protection.dump.on_V': 30 })?.figures).toContain('end of charge 28.8 V (12 cells)')
    const leaves = { 'load.disconnect': { above_V: 28.5 } }
    expect(judged(leaves)?.severity).toBe('warning')
    expect(judged({ ...leaves, 'protection.mechanical': 'none' })?.severity).toBe('blocking')
    // eight cells of 3.6 V end at 28.8 V
    const lithium = { 'load.chemistry': 'LiFePO4', 'load.cells': 8, 'protection.dump.on_V': 30 }
    expect(judged(lithium)?.severity).toBe('blocking')
    expect(judged({ ...lithium, 'purpose.class': 'bench' })?.severity).toBe('warning')
  })
})
