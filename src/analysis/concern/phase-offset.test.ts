/** Checks the concern of wrong phase angles. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { firstRemedy } from '../../../test/remedy-text.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { electricalAngles, phaseError, phaseOffsetRule } from './phase-offset.ts'

const rad = Math.PI / 180
const placed = (...offsets: readonly number[]) =>
  offsets.map((deg) => ({ offset: deg * rad, sense: 1 as const }))

describe('agrees: mechanical angle times three pole pairs by hand', () => {
  const angles = electricalAngles(placed(0, 20, 40), 3).map((angle) => angle / rad)
  check('20° → 60°', angles[1]!, '60.0')
  check('40° → 120°', angles[2]!, '120.0')
  test('thirds are wanted: 0°, 20°, 40° is wrong on six poles and right on twelve', () => {
    expect(phaseError(electricalAngles(placed(0, 20, 40), 3))).toBeCloseTo(120 * rad, 9)
    expect(phaseError(electricalAngles(placed(0, 20, 40), 6))).toBeCloseTo(0, 9)
    expect(phaseError(electricalAngles(placed(0, 40, 20), 6))).toBeCloseTo(0, 9)
  })
  test('with the middle phase reversed it is right on six', () => {
    const [a, b, c] = placed(0, 20, 40) as [
      { offset: number; sense: 1 },
      { offset: number; sense: 1 },
      { offset: number; sense: 1 },
    ]
    expect(phaseError(electricalAngles([a, { ...b, sense: -1 }, c], 3))).toBeCloseTo(0, 9)
  })
  test('quarters for two, anything for one', () => {
    expect(phaseError(electricalAngles(placed(0, 15), 6))).toBeCloseTo(0, 9)
    expect(phaseError(electricalAngles(placed(7), 6))).toBe(0)
  })
})

const serpentine = (...offsets: readonly number[]) => ({
  'stator.winding': {
    kind: 'serpentine',
    turns: 40,
    runLength_mm: 46,
    crownHeight_mm: 10,
    bundleWidth_mm: 10,
    bundleDepth_mm: 3,
    phases: offsets.map((offset_deg, k) => ({ offset_deg, distance_mm: 5 + 4 * k })),
  },
})

describe('law: the rule', () => {
  test('silent within three degrees, for coils, and for one phase', () => {
    expect(phaseOffsetRule.judge(sampleChain())).toBeUndefined()
    expect(phaseOffsetRule.judge(sampleChain(serpentine(0, 20.4, 40)))).toBeUndefined()
    expect(
      phaseOffsetRule.judge(sampleChain({ ...serpentine(0), 'stator.connection': 'single' })),
    ).toBeUndefined()
  })
  test('severity by class and connection', () => {
    const wrong = serpentine(0, 10, 20)
    expect(phaseOffsetRule.judge(sampleChain(wrong))?.severity).toBe('blocking')
    expect(firstRemedy(phaseOffsetRule.judge(sampleChain(wrong)))).toContain('Swap start and finish')
    expect(phaseOffsetRule.judge(sampleChain({ ...wrong, 'purpose.class': 'bench' }))?.severity).toBe(
      'warning',
    )
    expect(phaseOffsetRule.judge(sampleChain({ ...wrong, 'stator.connection': 'separate' }))?.severity).toBe(
      'warning',
    )
    expect(firstRemedy(phaseOffsetRule.judge(sampleChain(serpentine(0, 20.6, 40))))).toContain(
      '20.0° and 40.0°',
    )
  })
})
