/** Checks the page of achieved accuracies on made-up rows. */
import { describe, expect, test } from 'vitest'
import { type AccuracyRow, accuracyPage, bucketOf } from './accuracy-page.ts'

const achieved = (difference: number, allowed = 1e-3) => ({ printed: '1.00', allowed, difference })

describe('law: the page of accuracies is the same on every machine', () => {
  test('buckets are coarse and in order', () => {
    expect([0, 9e-6, 5e-5, 3e-4, 9e-4, 1e-3, 2e-3].map((d) => bucketOf(achieved(d)))).toEqual([
      '< 1 %',
      '< 1 %',
      '< 10 %',
      '< 50 %',
      '≤ 100 %',
      '≤ 100 %',
      'not met',
    ])
    expect(bucketOf(achieved(0, 1e-14))).toBe('rounding')
    expect(bucketOf(achieved(Number.NaN))).toBe('not met')
    expect(bucketOf(achieved(0, 0))).toBe('rounding')
  })
  test('order of files does not depend on the order of running', () => {
    const row = (file: string, what: string): AccuracyRow => ({
      file,
      group: 'source: a',
      what,
      achieved: achieved(0),
    })
    const [a1, a2, b] = [row('a.test.ts', '1'), row('a.test.ts', '2'), row('b.test.ts', '1')] as const
    expect(accuracyPage([b, a1, a2])).toBe(accuracyPage([a1, a2, b]))
  })
  test('one table per group; bars are escaped; the sliver over half a digit is not printed', () => {
    const text = accuracyPage([
      {
        file: 'a.test.ts',
        group: 'source: a, table 1',
        what: '|B| on the axis',
        achieved: achieved(0, 5.000005e-4),
      },
      { file: 'a.test.ts', group: 'source: b', what: 'x', achieved: achieved(6e-4) },
    ])
    expect(text).toContain('## source: a, table 1\n')
    expect(text).toContain('| \\|B\\| on the axis | 1.00 | 0.0005 | < 1 % |')
    expect(text).toContain('| x | 1.00 | 0.001 | ≤ 100 % |')
    expect(text).toContain('Checks: 2. Groups: 2.')
  })
})
