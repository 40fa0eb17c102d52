/** Checks the concern of current that begins too late. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { windDistribution, windSpeedShare } from '../../physics/aerodynamics/weibull.ts'
import { cutsInLate, lateCutIn } from './late-cut-in.ts'

describe('agrees: 1 − exp(−π/4) by hand', () => {
  check(
    'share of a Rayleigh year below its mean',
    windSpeedShare(windDistribution({ mean: 5, shape: 2 }), 5),
    '0.544',
  )
})

describe('law: against the mean', () => {
  test('rule', () => {
    expect(cutsInLate(3, 5)).toBe(false)
    expect(cutsInLate(5.1, 5)).toBe(true)
    expect(cutsInLate(Number.POSITIVE_INFINITY, 5)).toBe(true)
    expect(lateCutIn.judge(sampleChain())).toBeUndefined()
    const late = (safetyClass: string, cutInWind: number) =>
      lateCutIn.judge(sampleChain({ 'purpose.class': safetyClass }, () => ({ cutInWind })))
    expect(late('outdoor', 6)?.severity).toBe('warning')
    expect(late('bench', 6)?.severity).toBe('note')
    expect(late('outdoor', Number.POSITIVE_INFINITY)?.what).toContain('No wind')
    expect(late('outdoor', Number.POSITIVE_INFINITY)?.figures).toContain('100 %')
  })
})
