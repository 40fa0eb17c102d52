/** Checks the concern of poles out of order. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { flippedMagnet, poleMap, poleMapRule } from './pole-map.ts'

const poles = (letters: string) => [...letters].map((letter) => (letter === 'N' ? 1 : -1) as 1 | -1)

describe('law: walking round', () => {
  test('alternating poles have no like neighbours', () => {
    expect(poleMap(poles('NSNSNS'))).toEqual({ north: 3, south: 3, like: [] })
    expect(flippedMagnet(poles('NSNSNS'))).toBeUndefined()
    expect(flippedMagnet(poles('SNSN'))).toBeUndefined()
  })
  test('one magnet turned over has two like neighbours and is found', () => {
    for (const base of ['NSNSNSNSNSNS', 'SNSNSNSNSNSN'])
      for (let k = 0; k < 12; k++) {
        const turned = poles(base).map((pole, j) => (j === k ? -pole : pole) as 1 | -1)
        expect(poleMap(turned).like).toHaveLength(2)
        expect(flippedMagnet(turned)).toBe(k + 1)
      }
  })
  test('two turned over are not pinned on one', () => {
    expect(flippedMagnet(poles('NNSSNS'))).toBeUndefined()
    expect(poleMap(poles('NNSSNS')).like).toEqual([
      [1, 2],
      [3, 4],
    ])
  })
  test('silent when alternating, severity by class when not', () => {
    expect(poleMapRule.judge(sampleChain({ 'rotor.poleSequence': 'SNSNSNSNSNSN' }))).toBeUndefined()
    const wrong = { 'rotor.poleSequence': 'NSNSNNNSNSNS' }
    const concern = poleMapRule.judge(sampleChain(wrong))
    expect(concern?.severity).toBe('blocking')
    expect(concern?.what).toContain('Magnet 6')
    expect(concern?.figures).toContain('5–6, 6–7')
    expect(poleMapRule.judge(sampleChain({ ...wrong, 'purpose.class': 'bench' }))?.severity).toBe('warning')
  })
})
