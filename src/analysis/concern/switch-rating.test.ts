/** Checks the concern of a switch for alternating current. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { switchFault, switchRating } from './switch-rating.ts'

describe('law: direct current, and the volts of the open circuit', () => {
  test('faults at 87 V', () => {
    const at = (switchKind: 'for direct current' | 'for alternating current only', switchVoltage?: number) =>
      switchFault({ switchKind, switchVoltage }, 87)
    expect(at('for direct current', 87)).toBeUndefined()
    expect(at('for direct current', 60)).toBe('too few volts')
    expect(at('for direct current')).toBe('volts not said')
    expect(at('for alternating current only', 400)).toBe('not for direct current')
    expect(switchFault({ switchKind: 'not said', switchVoltage: 400 }, 87)).toBe('not said')
  })
  test('alternating only blocks outdoors, not said is information', () => {
    const judged = (fields: Record<string, unknown>, volts = 20) =>
      switchRating.judge(
        sampleChain(fields, ({ runaway }) => ({ runaway: { ...runaway, directVoltage: volts } })),
      )
    expect(judged({})).toBeUndefined()
    expect(judged({}, 101)?.severity).toBe('blocking')
    expect(judged({}, 101)?.figures).toContain('at least 101 V and 30.7 A; on its label 100 V')
    const alternating = { 'wiring.switchKind': 'for alternating current only' }
    expect(judged(alternating)?.severity).toBe('blocking')
    expect(judged({ ...alternating, 'purpose.class': 'bench' })?.severity).toBe('warning')
    expect(judged({ ...alternating, 'purpose.class': 'demonstration' })).toBeUndefined()
    expect(judged({ 'wiring.switchKind': 'not said' })?.severity).toBe('note')
    expect(judged({ 'wiring.switchKind': 'none' })?.severity).toBe('warning')
  })
})
