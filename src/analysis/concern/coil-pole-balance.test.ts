/** Checks the concern of counts that do not go together. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy, remedyTexts } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { coilPoleBalance, coilPoleBalanceRule } from './coil-pole-balance.ts'

const counts = (coilCount: number, poles: number, phaseCount = 3) =>
  coilPoleBalance({ coilCount, polePairs: poles / 2, phaseCount })

describe('agrees: the star of slots and sin(π p/Q) by hand', () => {
  check('9 coils on 12 poles: pitch factor', counts(9, 12).pitchFactor, '0.866')
  test('9 on 12 is sound; 12 on 12, 8 on 8, 10 on 12, 16 on 12 give no three phases', () => {
    expect(counts(9, 12)).toMatchObject({ balanced: true, fails: false })
    for (const [coils, poles] of [
      [12, 12],
      [8, 8],
      [10, 12],
      [16, 12],
    ] as const)
      expect(counts(coils, poles)).toMatchObject({ balanced: false, fails: true })
  })
  test('9 coils over 18 poles span a pole pair each and cancel', () => {
    expect(counts(9, 18)).toMatchObject({ pitchFactor: 0, fails: true })
  })
  test('two phases need quarters, one needs only its pitch', () => {
    expect(counts(8, 12, 2).balanced).toBe(true)
    expect(counts(6, 12, 2).balanced).toBe(false)
    expect(counts(12, 12, 1)).toMatchObject({ balanced: true, pitchFactor: 1, fails: false })
  })
  test('narrow coils are judged as they are drawn', () => {
    const narrow = coilPoleBalance({ coilCount: 9, polePairs: 6, phaseCount: 3, legSpan: 0.15 })
    expect(narrow.pitchFactor).toBeCloseTo(Math.sin(0.45), 12)
    expect(narrow.fails).toBe(true)
  })
})

describe('law: the rule', () => {
  test('silent for 9 on 12, severity by class for 10 on 12', () => {
    expect(coilPoleBalanceRule.judge(sampleChain())).toBeUndefined()
    const wrong = { 'stator.winding.coilCount': 10 }
    const concern = coilPoleBalanceRule.judge(sampleChain(wrong))
    expect(concern?.severity).toBe('blocking')
    expect(firstRemedy(concern)).toContain('9 coils on 12 poles')
    expect(coilPoleBalanceRule.judge(sampleChain({ ...wrong, 'purpose.class': 'bench' }))?.severity).toBe(
      'warning',
    )
  })
  test('coils that cancel themselves', () => {
    const narrow = coilPoleBalanceRule.judge(
      sampleChain({
        'stator.winding.hole': { shape: 'round', holeDiameter_mm: 4 },
        'stator.winding.legWidth_mm': 4,
      }),
    )
    expect(firstRemedy(narrow)).toContain('30.0°')
  })
})

describe('law: other windings than three phases side by side', () => {
  const judged = (fields: Readonly<Record<string, unknown>>) => coilPoleBalanceRule.judge(sampleChain(fields))
  test('two phases are offered counts of two phases', () => {
    const concern = judged({
      'stator.winding.coilCount': 6,
      'stator.winding.phaseCount': 2,
      'stator.connection': 'separate',
    })
    expect(concern?.what).toContain('no two equal phases')
    expect(firstRemedy(concern)).toContain('8 coils on 12 poles')
  })
  test('one coil is judged by its own pitch alone', () => {
    const one = {
      'stator.winding.coilCount': 1,
      'stator.winding.phaseCount': 1,
      'stator.connection': 'single',
    }
    expect(judged(one)).toBeUndefined()
    const narrow = judged({
      ...one,
      'stator.winding.hole': { shape: 'round', holeDiameter_mm: 4 },
      'stator.winding.legWidth_mm': 4,
    })
    expect(remedyTexts(narrow)).toEqual([
      'Make the coils so wide that their legs lie about one pole apart: 30.0° about the shaft.',
    ])
  })
  test('lap coils keep their span when other counts are looked for', () => {
    const lap = {
      'stator.winding.hole': { shape: 'lap', runLength_mm: 46, endHeight_mm: 30 },
      'stator.winding.legWidth_mm': 10,
      'stator.winding.bundleDepth_mm': 4,
      'stator.winding.distance_mm': 4,
    }
    expect(judged({ ...lap, 'stator.winding.coilCount': 18 })).toBeUndefined()
    const wrong = judged({ ...lap, 'stator.winding.coilCount': 20 })
    expect(firstRemedy(wrong)).toContain('18 coils on 12 poles')
  })
})
