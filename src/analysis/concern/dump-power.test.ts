/** Checks the concern of a dump load that is too weak or burns. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { dumpFaults, dumpPower } from './dump-power.ts'
import { dumpResistance } from './load-loss.ts'

describe('agrees: V²/R by hand, 300 W at 14.4 V', () => {
  const resistance = dumpResistance({ voltage: 14.4, power: 300 })
  check('ohms', resistance, '0.69')
  const dump = { resistance, rated: 400, on: 14.4, greatest: 299.9, alone: 350 }
  test('faults', () => {
    expect(dumpFaults(dump)).toEqual({ weak: false, burns: false, burnsAlone: false })
    expect(dumpFaults({ ...dump, greatest: 300.1 }).weak).toBe(true)
    expect(dumpFaults({ ...dump, rated: 299 }).burns).toBe(true)
    expect(dumpFaults({ ...dump, alone: 401 }).burnsAlone).toBe(true)
  })
})

describe('law: all the watts, for hours', () => {
  const judged = (fields: Record<string, unknown>) => dumpPower.judge(sampleChain(fields))
  test('severity by what else holds the rotor', () => {
    expect(judged({})).toBeUndefined()
    // 0.6 · 11³ = 799 W against 28.6²/1.1 = 744 W
    const weak = { 'protection.dump.resistance_ohm': 1.1 }
    expect(judged(weak)?.severity).toBe('warning')
    expect(judged(weak)?.figures).toContain('Takes 744 W at 28.6 V, made for 1500 W; greatest power 799 W')
    expect(judged({ ...weak, 'protection.mechanical': 'none' })?.severity).toBe('blocking')
    expect(judged({ 'protection.dump.power_W': 800 })?.what).toContain('burns more')
    expect(judged({ 'protection.dump': undefined })?.severity).toBe('note')
    expect(judged({ 'protection.electrical': 'none' })).toBeUndefined()
  })
  test('made for the watts of a full battery, not for those without one', () => {
    // 28.6²/1.02 = 802 W of 830 W
    const tight = { 'protection.dump.resistance_ohm': 1.02, 'protection.dump.power_W': 830 }
    expect(judged(tight)?.what).toContain('With the battery gone')
    expect(judged({ ...tight, 'protection.dump.place': 'at the battery' })).toBeUndefined()
  })
})
