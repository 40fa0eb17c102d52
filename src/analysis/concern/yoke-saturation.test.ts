/** Checks the concern of saturated steel. */
import { describe, expect, test } from 'vitest'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import type { SteelState } from '../iron-response.ts'
import { yokeSaturated, yokeSaturation } from './yoke-saturation.ts'

const steel = (place: SteelState['place'], fluxDensity: number): SteelState => ({
  place,
  thickness: 0.004,
  fluxDensity,
  peakFluxDensity: fluxDensity,
  backFlux: 20e-6,
  leakage: 0.1,
  pastKnee: yokeSaturated(fluxDensity),
})

describe('law: the knee of mild steel', () => {
  test('rule', () => {
    expect(yokeSaturated(1.5)).toBe(false)
    expect(yokeSaturated(1.51)).toBe(true)
    expect(yokeSaturation.judge(sampleChain())).toBeUndefined()
    const thin = sampleChain({}, () => ({ steel: [steel('behind', 1.2), steel('opposite', 1.8)] }))
    const found = yokeSaturation.judge(thin)
    expect(found?.severity).toBe('warning')
    expect(found?.path).toBe('rotor.opposite.thickness_mm')
    // 4 mm at 1.8 T carry as much as 4.8 mm at the knee, and a tenth more would come back from the air
    expect(firstRemedy(found)).toContain('5.3 mm')
    expect(found?.figures).toContain('20 µWb')
    expect(found?.figures).toContain('10 %')
    expect(yokeSaturation.judge(sampleChain({}, () => ({ steel: [] })))).toBeUndefined()
  })
})
