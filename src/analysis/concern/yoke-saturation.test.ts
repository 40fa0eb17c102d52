/** Checks the concern of saturated steel. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { yokeExcess, yokeSaturated, yokeSaturation } from './yoke-saturation.ts'

describe('law: the knee of mild steel', () => {
  test('rule', () => {
    expect(yokeSaturated(1.5)).toBe(false)
    expect(yokeSaturated(1.51)).toBe(true)
    expect(yokeSaturation.judge(sampleChain())).toBeUndefined()
    const thin = sampleChain({}, () => ({ yokeFluxDensity: 2.25 }))
    expect(yokeSaturation.judge(thin)?.severity).toBe('warning')
    expect(yokeSaturation.judge(thin)?.remedies[0]).toContain('12 mm')
    expect(yokeSaturation.judge(thin)?.what).toContain('too high')
    expect(yokeSaturation.judge(thin)?.figures).toContain('50 % more')
    expect(yokeExcess(1.5)).toBe(0)
    expect(yokeExcess(3)).toBe(1)
    expect(yokeSaturation.judge(sampleChain({}, () => ({ yokeFluxDensity: undefined })))).toBeUndefined()
  })
})
