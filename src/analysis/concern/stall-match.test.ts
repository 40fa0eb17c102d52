/** Checks the concern of a stalled match. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import type { ChainView } from './concern.ts'
import { stallMatch, stallVerdict, windOfSpeed } from './stall-match.ts'

describe('agrees: v = ω R/λ by hand', () => {
  check(
    'wind in which 306 rpm is λ = 6 on 1.5 m',
    windOfSpeed({ speed: (306 * Math.PI) / 30, radius: 0.75, tipSpeedRatio: 6 }),
    '4.0',
  )
})

const stalled =
  (count: number) =>
  ({ rows }: ChainView) => ({
    rows: rows.map((row, k) => (k >= 8 && k < 8 + count ? { ...row, state: 'stalled' as const } : row)),
  })

describe('law: two stalled winds, or none that starts it', () => {
  test('verdict', () => {
    expect(stallVerdict({ states: ['turning', 'stalled', 'charging'], startWind: 2 })).toBe('matched')
    expect(stallVerdict({ states: ['stalled', 'stalled'], startWind: 2 })).toBe('stalls')
    expect(stallVerdict({ states: ['charging'], startWind: 7 })).toBe('never starts')
    expect(stallVerdict({ states: [], startWind: Number.POSITIVE_INFINITY })).toBe('never starts')
  })
  test('silent, a warning when it stalls, blocking when it never starts', () => {
    expect(stallMatch.judge(sampleChain())).toBeUndefined()
    expect(stallMatch.judge(sampleChain({}, stalled(1)))).toBeUndefined()
    expect(stallMatch.judge(sampleChain({}, stalled(4)))?.severity).toBe('warning')
    expect(stallMatch.judge(sampleChain({}, stalled(4)))?.what).toContain('4.50 m/s and 6.00 m/s')
    const stiff = (safetyClass: string) =>
      stallMatch.judge(
        sampleChain({ 'purpose.class': safetyClass }, () => ({ startWind: Number.POSITIVE_INFINITY })),
      )
    expect(stiff('outdoor')?.severity).toBe('blocking')
    expect(stiff('bench')?.severity).toBe('warning')
  })
})
