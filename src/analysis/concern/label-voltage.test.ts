/** Checks the concern of lamps and heaters above their label. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { labelVerdict, labelVoltage } from './label-voltage.ts'

describe('law: volts over the label’s', () => {
  test('verdict', () => {
    expect([1, 1.1, 1.11, 1.2, 1.21].map(labelVerdict)).toEqual([
      'in order',
      'in order',
      'wears fast',
      'wears fast',
      'burns out',
    ])
  })
  test('26 V into lamps and heaters by their label', () => {
    const lamp = (ratedVoltage_V: number) =>
      labelVoltage.judge(
        sampleChain({ load: { kind: 'lamp', lamp: 'filament', ratedVoltage_V, ratedPower_W: 60 } }),
      )
    expect(lamp(24)).toBeUndefined()
    expect(lamp(23)?.severity).toBe('note')
    expect(lamp(12)?.severity).toBe('warning')
    const alone = sampleChain({
      load: { kind: 'lamp', lamp: 'filament', ratedVoltage_V: 12, ratedPower_W: 60 },
      'protection.mechanical': 'none',
    })
    expect(labelVoltage.judge(alone)?.severity).toBe('blocking')
    expect(lamp(12)?.figures).toContain('2.17 times the 12.0 V')
    expect(lamp(12)?.figures).toContain('Burnt out: 1430 rpm and 20.0 V')
    const heater = labelVoltage.judge(
      sampleChain({ load: { kind: 'heater', ratedVoltage_V: 20, ratedPower_W: 300 } }),
    )
    expect(heater?.figures).toContain('1.30 times the 20.0 V')
    expect(labelVoltage.judge(sampleChain())).toBeUndefined()
  })
})
