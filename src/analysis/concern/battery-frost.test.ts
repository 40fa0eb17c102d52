/** Checks the concern of charging in frost. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { batteryFrost, frostVerdict } from './battery-frost.ts'

describe('law: colder than the chemistry bears', () => {
  test('verdict', () => {
    expect(frostVerdict(290, 273.15)).toBe('warm enough')
    expect(frostVerdict(280, 273.15)).toBe('on winter nights')
    expect(frostVerdict(270, 273.15)).toBe('most of the time')
  })
  test('lead is silent at 12 °C, lithium warns, and blocks where it freezes on average', () => {
    expect(batteryFrost.judge(sampleChain())).toBeUndefined()
    const lithium = { 'load.chemistry': 'LiFePO4' }
    expect(batteryFrost.judge(sampleChain(lithium))?.severity).toBe('warning')
    expect(batteryFrost.judge(sampleChain({ ...lithium, 'purpose.class': 'bench' }))).toBeUndefined()
    const arctic = { ...lithium, 'site.ambient_degC': -3 }
    expect(batteryFrost.judge(sampleChain(arctic))?.severity).toBe('blocking')
    expect(batteryFrost.judge(sampleChain(arctic))?.figures).toContain('−3.0 °C')
    expect(batteryFrost.judge(sampleChain({ load: { kind: 'resistor', resistance_ohm: 2 } }))).toBeUndefined()
  })
})
