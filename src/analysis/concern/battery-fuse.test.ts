/** Checks the concern of the battery's fuse. */
import { describe, expect, test } from 'vitest'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { batteryFuse, fuseFaults } from './battery-fuse.ts'

describe('law: between the charging current and the cable', () => {
  const near = { fuse: 30, place: 'near the battery' as const, charging: 20, ampacity: 34 }
  test('faults', () => {
    expect(fuseFaults(near)).toEqual([])
    expect(fuseFaults({ ...near, fuse: 24 })).toEqual(['blows in work'])
    expect(fuseFaults({ ...near, fuse: 40 })).toEqual(['cable burns first'])
    expect(fuseFaults({ ...near, fuse: undefined })).toEqual(['not said'])
    expect(fuseFaults({ ...near, fuse: undefined, ampacity: 20 })).toEqual(['no room', 'not said'])
    expect(fuseFaults({ ...near, place: 'elsewhere' })).toEqual(['elsewhere'])
    expect(fuseFaults({ ...near, place: 'none' })).toEqual(['none'])
    expect(fuseFaults({ ...near, ampacity: undefined, fuse: 400 })).toEqual([])
  })
  test('no fuse blocks outdoors; the window is told', () => {
    expect(batteryFuse.judge(sampleChain())).toBeUndefined()
    const none = { 'wiring.fusePlace': 'none', 'wiring.fuse_A': undefined }
    expect(batteryFuse.judge(sampleChain(none))?.severity).toBe('blocking')
    expect(batteryFuse.judge(sampleChain({ ...none, 'purpose.class': 'bench' }))?.severity).toBe('warning')
    const silent = batteryFuse.judge(sampleChain({ wiring: {} }))
    expect(silent?.severity).toBe('note')
    // 1.25 · 0.6 · 11³/26 A, and 16 mm² of the table
    expect(silent?.figures).toContain('at least 38 A and at most 62 A')
    expect(batteryFuse.judge(sampleChain({ 'wiring.fuse_A': 80 }))?.what).toContain('passes more')
    expect(firstRemedy(batteryFuse.judge(sampleChain({ 'cable.area_mm2': 4 })))).toContain('thicker')
    // the cable before the bridge is not the battery's
    const before = { 'cable.place': 'before bridge', 'wiring.fuse_A': 80 }
    expect(batteryFuse.judge(sampleChain(before))).toBeUndefined()
    expect(batteryFuse.judge(sampleChain({ load: { kind: 'open' }, wiring: {} }))).toBeUndefined()
  })
})
