/** Checks the concern of a meter below its range. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { belowMeter, electricalFrequency, meterLimit } from './meter-limit.ts'

describe('agrees: f = p n/60 by hand', () => {
  check('12 poles at 300 rpm, hertz', electricalFrequency({ polePairs: 6, rpm: 300 }), '30')
})

describe('law: the rule', () => {
  test('below the meter only', () => {
    expect(belowMeter(30, 45)).toBe(true)
    expect(belowMeter(45, 45)).toBe(false)
  })
  test('silent at 50 Hz, a warning at 30 Hz, a note without readings', () => {
    expect(meterLimit.judge(sampleChain())).toBeUndefined()
    const read = (kind: string, place: string) =>
      meterLimit.judge(sampleChain({ 'bench.readings': [{ speed_rpm: 300, voltage_V: 20, kind, place }] }))
    expect(read('rms', 'phase')?.severity).toBe('warning')
    expect(read('rms', 'phase')?.figures).toContain('30.0 Hz')
    expect(read('direct', 'after bridge')).toBeUndefined()
    expect(read('peak', 'phase')).toBeUndefined()
    expect(meterLimit.judge(sampleChain({ 'bench.readings': [] }))?.severity).toBe('note')
    expect(
      meterLimit.judge(sampleChain({ 'bench.readings': [], 'bench.meterLowestFrequency_Hz': 10 })),
    ).toBeUndefined()
  })
})
