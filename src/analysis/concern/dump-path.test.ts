/** Checks the concern of a dump load that is lost with the battery. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { dumpPath } from './dump-path.ts'

describe('law: nothing that takes the battery takes the dump load', () => {
  test('severity', () => {
    const judged = (fields: Record<string, unknown>) => dumpPath.judge(sampleChain(fields))
    expect(judged({})).toBeUndefined()
    for (const shared of [
      { 'protection.dump.place': 'at the battery' },
      { 'protection.dump.ownFuse': false },
    ]) {
      expect(judged(shared)?.severity).toBe('warning')
      expect(judged({ ...shared, 'protection.mechanical': 'none' })?.severity).toBe('blocking')
      expect(judged({ ...shared, load: { kind: 'resistor', resistance_ohm: 2 } })).toBeUndefined()
    }
    const off = { 'protection.dump.withoutPower': 'off' }
    expect(judged(off)?.severity).toBe('warning')
    expect(judged(off)?.what).toContain('controller')
    expect(judged({ ...off, 'purpose.class': 'bench' })?.severity).toBe('note')
    expect(judged({ ...off, 'protection.electrical': 'none' })).toBeUndefined()
  })
})
