/** Checks the concern of volts of unknown kind. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { bridgeMeanVoltage, cutInPhaseVoltage } from '../../physics/electrics/dc-voltage.ts'
import { nearestKind, voltsByKind, voltsKind } from './volts-kind.ts'

describe('agrees: factors of a sine by hand', () => {
  check(
    'star, 12.6 V and two diodes of 0.7 V: phase rms',
    cutInPhaseVoltage({ connection: 'star', voltage: 14 }),
    '5.72',
  )
  check('delta', cutInPhaseVoltage({ connection: 'delta', voltage: 14 }), '9.90')
  check('bridge mean of one volt rms between lines', bridgeMeanVoltage(1), '1.35')
  test('kinds of a star are √2 and √3 apart', () => {
    const kinds = voltsByKind(sampleChain(), 10)
    const volts = (name: string) => kinds.find((kind) => kind.name === name)!.volts
    expect(volts('phase peak') / volts('phase rms')).toBeCloseTo(Math.SQRT2, 9)
    expect(volts('line to line rms') / volts('phase rms')).toBeCloseTo(Math.sqrt(3), 9)
    expect(volts('direct after the bridge')).toBeCloseTo(7 * Math.sqrt(3) - 1.4, 9)
  })
  test('the nearest kind by ratio', () => {
    const kinds = [
      { name: 'rms', volts: 10 },
      { name: 'peak', volts: 14.1 },
    ]
    expect(nearestKind(13, kinds)?.name).toBe('peak')
    expect(nearestKind(11, kinds)?.name).toBe('rms')
    expect(nearestKind(0, kinds)).toBeUndefined()
    expect(nearestKind(5, [{ name: 'dead', volts: 0 }])).toBeUndefined()
  })
})

describe('law: the rule', () => {
  test('silent when said, severity by class when not', () => {
    expect(voltsKind.judge(sampleChain())).toBeUndefined()
    const unsaid = { 'bench.readings': [{ speed_rpm: 500, voltage_V: 45, kind: 'rms' }] }
    expect(voltsKind.judge(sampleChain(unsaid))?.severity).toBe('blocking')
    expect(voltsKind.judge(sampleChain(unsaid))?.path).toBe('bench.readings[0].place')
    expect(voltsKind.judge(sampleChain({ ...unsaid, 'purpose.class': 'bench' }))?.severity).toBe('warning')
  })
})
