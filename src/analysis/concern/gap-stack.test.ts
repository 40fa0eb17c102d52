/** Checks the concern of a gap that closes. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { magneticPull } from '../../physics/magnetics/magnetic-pull.ts'
import { remedyWords } from './concern.ts'
import { gapStack } from './gap-stack.ts'

describe('agrees: B²A/2μ0 by hand', () => {
  check(
    'pull of twelve pairs of 8 cm² at 0.6 T, newtons',
    magneticPull({ fluxDensity: 0.6, area: 12 * 8e-4 }),
    '1375',
  )
})

describe('law: the rule', () => {
  const judged = (fields: Readonly<Record<string, unknown>>) => gapStack.judge(sampleChain(fields))
  const moved = (distance_mm: number, safetyClass = 'outdoor') =>
    judged({ 'stator.winding.distance_mm': distance_mm, 'purpose.class': safetyClass })
  const first = (concern: ReturnType<typeof judged>) => remedyWords(concern!.remedies[0]!)
  test('silent in the middle, a warning near, blocking in touch', () => {
    expect(moved(9)).toBeUndefined()
    expect(moved(7.6)?.severity).toBe('warning')
    expect(first(moved(7.6))).toContain('1.4 mm away from')
    const wide = { 'rotor.faceDistance_mm': 15, 'stator.winding.distance_mm': 7.5 }
    expect(first(judged(wide))).toContain('farther apart')
    expect(moved(6.5)?.severity).toBe('blocking')
    expect(moved(6.5, 'bench')?.severity).toBe('warning')
    expect(moved(11)?.figures).toContain('far side')
    expect(moved(6)?.what).toContain('in each other’s way')
  })
  test('says what takes most, and how it is known', () => {
    const entered = judged({ 'stator.winding.distance_mm': 7.6, 'bench.clearanceLosses.warp_mm': 0.9 })
    expect(entered?.figures).toContain('warp and runout 0.90 mm (measured)')
    expect(moved(7.6)?.figures).toContain('print or casting tolerance 0.30 mm (guessed)')
  })
  test('measure and verdict agree', () => {
    for (const distance_mm of [9, 7.6, 6.5]) {
      const chain = sampleChain({ 'stator.winding.distance_mm': distance_mm })
      const { value, limit } = gapStack.measure!(chain)!
      expect(value < limit).toBe(gapStack.judge(chain) !== undefined)
    }
  })
})
