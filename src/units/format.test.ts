/** Checks of numbers as people read them. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatNumber, formatSi, formatSpread } from './format.ts'

describe('law: significant digits', () => {
  test('three unless asked otherwise, rounded once, with the minus sign of typography', () => {
    const cases: readonly (readonly [number, string])[] = [
      [0, '0'],
      [1, '1.00'],
      [12.345, '12.3'],
      [0.0012345, '0.00123'],
      [1234.5, '1230'],
      [9.999, '10.0'],
      [999.9, '1000'],
      [-5.5, '−5.50'],
      [2.5e8, '2.50e+8'],
      [1e-5, '1.00e−5'],
    ]
    for (const [value, text] of cases) expect(formatNumber(value), String(value)).toBe(text)
    expect(formatNumber(12.345, 4)).toBe('12.35')
  })
  test('what is not a number is a dash', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
      expect(formatNumber(value)).toBe('—')
  })
  test('the text reads back within half a unit of its third digit', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e12, max: 1e12, noNaN: true }), (value) => {
        const back = Number(formatNumber(value).replaceAll('−', '-'))
        expect(Math.abs(back - value)).toBeLessThanOrEqual(5.001e-3 * Math.abs(value))
      }),
    )
  })
})

describe('law: units and spreads', () => {
  test('an SI value in the unit of a name', () => {
    expect(formatSi(0.0123, 'mm')).toBe('12.3 mm')
    expect(formatSi(Math.PI, 'deg')).toBe('180°')
    expect(formatSi(293.15, 'degC')).toBe('20.0 °C')
    expect(formatSi(0.5, '1')).toBe('0.500')
  })
  test('value and spread end at the same decimal; a spread of temperature is a difference', () => {
    expect(formatSpread(0.0123, 0.0004, 'mm')).toBe('12.30 ± 0.40 mm')
    expect(formatSpread(353.15, 5, 'degC')).toBe('80.0 ± 5.0 °C')
    expect(formatSpread(-1, 0.25, 'V')).toBe('−1.00 ± 0.25 V')
    expect(formatSpread(100, 30, 'W')).toBe('100 ± 30 W')
  })
  test('no spread, no sign of one', () => {
    for (const spread of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(formatSpread(1, spread, 'V')).toBe('1.00 V')
  })
})
