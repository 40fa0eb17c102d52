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
  test('a small resistance by two wires', () => {
    const read = (resistance_ohm: number, method: string, more: Record<string, unknown> = {}) =>
      meterLimit.judge(
        sampleChain({ 'bench.resistances': [{ resistance_ohm, place: 'phase', method }], ...more }),
      )
    expect(read(0.4, 'four wires')).toBeUndefined()
    expect(read(2, 'two wires')).toBeUndefined()
    expect(read(0.4, 'two wires')?.severity).toBe('warning')
    expect(read(0.4, 'two wires')?.path).toBe('bench.resistances[0].method')
    expect(read(0.4, 'two wires', { 'bench.readings': [] })?.severity).toBe('warning')
    const both = { 'bench.readings': [{ speed_rpm: 300, voltage_V: 20, kind: 'rms', place: 'phase' }] }
    expect(read(0.4, 'two wires', both)?.path).toBe('bench.readings[0]')
    expect(read(0.4, 'two wires', both)?.figures).toContain('Reading 1 of 1 under 2 Ω')
  })
})
