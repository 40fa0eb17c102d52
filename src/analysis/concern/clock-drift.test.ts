/** Checks the concern of a logger's clock that wandered off. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { clockDrift } from './clock-drift.ts'

describe('law: a tenth of the averaging time', () => {
  const judged = (clockDrift_s: number, averaging_s?: number) =>
    clockDrift.judge(sampleChain({ 'site.record': { clockDrift_s }, 'site.averaging_s': averaging_s }))
  test('limits, ahead and behind alike', () => {
    expect(clockDrift.judge(sampleChain())).toBeUndefined()
    expect(judged(6)).toBeUndefined()
    expect(judged(7)?.severity).toBe('note')
    expect(judged(-7)?.figures).toContain('7.00 s behind')
    expect(judged(50, 600)).toBeUndefined()
    expect(judged(-70, 600)?.severity).toBe('note')
    expect(judged(1800, 600)?.severity).toBe('warning')
    // hours of a station do not care about minutes
    expect(judged(300, 3600)).toBeUndefined()
  })
  test('the measure agrees', () => {
    const measure = (clockDrift_s: number) =>
      clockDrift.measure?.(sampleChain({ 'site.record': { clockDrift_s } }))
    expect(measure(6)!.value).toBeLessThanOrEqual(measure(6)!.limit)
    expect(measure(-7)!.value).toBeGreaterThan(measure(-7)!.limit)
  })
})
