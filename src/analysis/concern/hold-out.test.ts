/** Checks the concern of a model that is judged by what set it. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { holdOut, predictionError, predictionFails } from './hold-out.ts'

describe('law: the spread of the reading, or 5 %', () => {
  test('numbers', () => {
    expect(predictionError({ read: 10, computed: 11, spread: 0 })).toBeCloseTo(0.1, 12)
    expect(predictionFails({ read: 10, computed: 10.4, spread: 0 })).toBe(false)
    expect(predictionFails({ read: 10, computed: 9.4, spread: 0 })).toBe(true)
    expect(predictionFails({ read: 10, computed: 11, spread: 0.12 })).toBe(false)
  })
  // line volts of the sample: 0.7 √3/√2 V for each rad/s
  const volts = (rpm: number) => 0.7 * Math.sqrt(1.5) * ((rpm * 2 * Math.PI) / 60)
  const reading = (speed_rpm: number, factor = 1, keptBack = false) => ({
    speed_rpm,
    voltage_V: factor * volts(speed_rpm),
    kind: 'rms',
    place: 'line to line',
    keptBack,
  })
  const judged = (fitted: string, readings: readonly unknown[], more: Record<string, unknown> = {}) =>
    holdOut.judge(sampleChain({ 'bench.fitted': fitted, 'bench.readings': readings, ...more }))
  test('nothing fitted says nothing, unless a kept-back reading is missed', () => {
    expect(judged('nothing', [reading(300)])).toBeUndefined()
    expect(judged('nothing', [reading(300, 1.2, true)])?.severity).toBe('note')
  })
  test('fitted to all there is', () => {
    const all = judged('remanence', [reading(300), reading(500)])
    expect(all?.severity).toBe('warning')
    expect(all?.figures).toContain('Fitted: remanence, by 2 readings at 300 to 500 rpm')
    expect(judged('remanence', [reading(300), reading(500, 1.03, true)])).toBeUndefined()
    const missed = judged('remanence', [reading(300), reading(500, 0.9, true)])
    expect(missed?.path).toBe('bench.readings[1]')
    expect(missed?.figures).toContain('11 % beside it')
  })
  test('a reading of unknown kind keeps nothing back', () => {
    const unknown = { ...reading(500, 1, true), kind: 'unsaid' }
    expect(judged('remanence', [reading(300), unknown])?.path).toBe('bench.readings')
  })
  test('two unknowns by one kind of reading', () => {
    const both = judged('remanence and air gap', [reading(300), reading(500, 1, true)])
    expect(both?.path).toBe('bench.fitted')
    const field = { kind: 'hall', distance_mm: 10, fluxDensity_mT: 150 }
    expect(
      judged('remanence and air gap', [reading(300), reading(500, 1, true)], {
        'rotor.magnet.readings': [field],
      }),
    ).toBeUndefined()
  })
})
