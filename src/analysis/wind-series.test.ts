/** Checks of the reader of logged winds. */
import { describe, expect, test } from 'vitest'
import { windSeries } from './wind-series.ts'

describe('law: rows of seconds and winds', () => {
  test('read alike whichever sign parts them, with heads, remarks and blank lines passed over', () => {
    const texts = [
      'time; wind\n0; 5\n\n# a lull\n2,5; 3,25\n4; 9',
      '0\t5\n2.5\t3.25\n4\t9',
      't,v\n0,5\n2.5,3.25\n4,9',
      '0 5\n2.5  3.25\r\n4 9\r\n',
    ]
    for (const text of texts) {
      const { times, winds } = windSeries(text)
      expect([...times]).toEqual([0, 2.5, 4])
      expect([...winds]).toEqual([5, 3.25, 9])
    }
  })
  test('are refused where they say nothing', () => {
    const code = (text: string) => {
      try {
        windSeries(text)
      } catch (error) {
        return (error as { code?: string }).code
      }
      return 'taken'
    }
    expect(code('')).toBe('wrong-length')
    expect(code('t;v\n0;5')).toBe('wrong-length')
    expect(code('0;5\n0;6')).toBe('not-increasing')
    expect(code('0;5\n1;-6')).toBe('below-minimum')
    expect(code('0;5\n1;calm')).toBe('not-finite')
    expect(code('0;5\n1')).toBe('not-finite')
  })
})
