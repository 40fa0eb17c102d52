/** Checks the concern of a battery that takes itself off. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { batteryDisconnect } from './battery-disconnect.ts'

describe('law: something must take over by itself', () => {
  const judged = (fields: Record<string, unknown>) =>
    batteryDisconnect.judge(sampleChain({ 'load.disconnect': { above_V: 29, below_degC: 0 }, ...fields }))
  const alone = { 'protection.mechanical': 'none', 'protection.electrical': 'none' }
  test('a dump load at the bridge that comes first, or a short by speed', () => {
    expect(judged({})).toBeUndefined()
    expect(judged({ 'protection.dump.on_V': 29.5 })?.severity).toBe('warning')
    expect(judged({ 'protection.dump.place': 'at the battery' })?.severity).toBe('warning')
    expect(judged({ 'protection.electrical': 'shorting switch' })?.severity).toBe('warning')
    const bySpeed = { 'protection.electrical': 'shorting switch', 'protection.short.actsAt_rpm': 600 }
    expect(judged(bySpeed)).toBeUndefined()
  })
  test('alone it blocks outdoors only; frost is told where it bites', () => {
    expect(judged(alone)?.severity).toBe('blocking')
    expect(judged({ ...alone, 'purpose.class': 'bench' })?.severity).toBe('note')
    // 12 °C less 15 K
    expect(judged(alone)?.what).toContain('frosty nights')
    expect(judged({ ...alone, 'site.ambient_degC': 20 })?.what).not.toContain('frosty')
  })
  test('lithium of which nothing is said is taken to have one, lead is not', () => {
    const unsaid = { ...alone, 'load.disconnect': undefined }
    expect(judged(unsaid)).toBeUndefined()
    expect(judged({ ...unsaid, 'load.chemistry': 'LiFePO4' })?.severity).toBe('warning')
  })
})
