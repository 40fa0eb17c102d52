/** Checks the concern of saturated steel. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { yokeSaturated, yokeSaturation } from './yoke-saturation.ts'

describe('law: the knee of mild steel', () => {
  test('rule', () => {
    expect(yokeSaturated(1.5)).toBe(false)
    expect(yokeSaturated(1.51)).toBe(true)
    expect(yokeSaturation.judge(sampleChain())).toBeUndefined()
    const thin = sampleChain({}, () => ({ yokeFluxDensity: 2.25 }))
    expect(yokeSaturation.judge(thin)?.severity).toBe('warning')
    expect(yokeSaturation.judge(thin)?.remedies[0]).toContain('12 mm')
    expect(yokeSaturation.judge(sampleChain({}, () => ({ yokeFluxDensity: undefined })))).toBeUndefined()
  })
})
