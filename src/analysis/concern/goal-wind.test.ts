/** Checks the concern of a goal without a wind, or out of reach. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { fallsShort, goalWind } from './goal-wind.ts'

describe('law: nine tenths of the goal', () => {
  test('rule', () => {
    expect(fallsShort(90, 100)).toBe(false)
    expect(fallsShort(89, 100)).toBe(true)
    expect(goalWind.judge(sampleChain())).toBeUndefined()
    const goal = (power_W: number, atWind_m_per_s?: number) =>
      goalWind.judge(sampleChain({ 'purpose.power_W': power_W, 'purpose.atWind_m_per_s': atWind_m_per_s }))
    expect(goal(100)?.severity).toBe('note')
    // 0.6 · 6³ = 129.6 W in the sample
    expect(goal(130, 6)).toBeUndefined()
    expect(goal(200, 6)?.severity).toBe('warning')
    expect(goal(200, 6)?.figures).toContain('130 W there')
    expect(goal(10, 30)?.path).toBe('purpose.atWind_m_per_s')
    expect(goal(10, 30)?.figures).toContain('storm wind 25.0 m/s')
    expect(goal(10, 25)).toBeUndefined()
  })
})
