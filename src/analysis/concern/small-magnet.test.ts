/** Checks the concern of magnets that can be swallowed. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { smallMagnet, swallowable } from './small-magnet.ts'

describe('law: only where children are', () => {
  test('the two smaller edges count', () => {
    expect(swallowable([0.04, 0.01, 0.005])).toBe(true)
    expect(swallowable([0.04, 0.03, 0.025])).toBe(false)
    expect(swallowable([0.005, 0.01, 0.04])).toBe(true)
  })
  test('glued small blocks block the demonstration class', () => {
    const small = {
      'rotor.magnet': { shape: 'block', length_mm: 20, width_mm: 10, thickness_mm: 5, grade: 'N42' },
      'rotor.retention': { kind: 'glue' },
    }
    expect(smallMagnet.judge(sampleChain({ ...small, 'purpose.class': 'demonstration' }))?.severity).toBe(
      'blocking',
    )
    expect(smallMagnet.judge(sampleChain(small))).toBeUndefined()
    expect(smallMagnet.judge(sampleChain({ 'purpose.class': 'demonstration' }))).toBeUndefined()
  })
})
