/** Checks the concern of currents between strands in hand. */
import { describe, expect, test } from 'vitest'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { betweenTooHigh, strandCirculationRule } from './strand-circulation.ts'

describe('law: a share of what the blades take', () => {
  test('rule', () => {
    expect(betweenTooHigh(0.03)).toBe(false)
    expect(betweenTooHigh(0.04)).toBe(true)
    expect(strandCirculationRule.judge(sampleChain())).toBeUndefined()
    const between = (untwisted: number) =>
      sampleChain({ 'stator.wire.strands': 3 }, ({ drag }) => ({
        drag: { ...drag, between: { untwisted, twisted: untwisted / 1000 } },
      }))
    expect(strandCirculationRule.judge(between(1e-9))).toBeUndefined()
    const told = strandCirculationRule.judge(between(1))
    expect(told?.severity).toBe('note')
    expect(told?.figures).toContain('3 strands in hand')
    expect(firstRemedy(told)).toContain('Twist')
  })
})
