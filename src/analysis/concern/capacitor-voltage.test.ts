/** Checks the concern of a capacitor with too few volts. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { capacitorVoltage } from './capacitor-voltage.ts'

describe('law: the open circuit’s volts at runaway', () => {
  const judged = (ratedVoltage_V: number, fields = {}) =>
    capacitorVoltage.judge(
      sampleChain(
        { load: { kind: 'capacitor', capacitance_F: 0.1, ratedVoltage_V, drawn_ohm: 50 }, ...fields },
        ({ runaway }) => ({ runaway: { ...runaway, directVoltage: 87 } }),
      ),
    )
  test('bursts above, near from four fifths on', () => {
    expect(judged(63)?.severity).toBe('blocking')
    expect(judged(63, { 'purpose.class': 'bench' })?.severity).toBe('warning')
    // ½ · 0.1 F · (87 V)²
    expect(judged(63)?.figures).toContain('378 J')
    expect(judged(100)?.severity).toBe('note')
    expect(judged(110)).toBeUndefined()
    expect(capacitorVoltage.judge(sampleChain())).toBeUndefined()
  })
})
