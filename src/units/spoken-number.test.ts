/** Checks of kept numbers as they are said in a chosen unit. */
import { describe, expect, test } from 'vitest'
import { spokenNumber } from './spoken-number.ts'
import { spokenUnit } from './spoken-unit.ts'
import { unit } from './unit.ts'

const said = (value: number, kept: string, as: string, difference = false) =>
  spokenNumber(value, { kept: unit(kept), said: spokenUnit(as), difference })

describe('law: on the ruler of the trade', () => {
  test('sixty-fourths are fractions, thousandths are decimals, the rest is rounded', () => {
    expect(said(6.35, 'mm', 'in')).toBe('1/4')
    expect(said(31.75, 'mm', 'in')).toBe('1 1/4')
    expect(said(0.396875, 'mm', 'in')).toBe('1/64')
    expect(said(50.8, 'mm', 'in')).toBe('2')
    expect(said(-12.7, 'mm', 'in')).toBe('-1/2')
    expect(said(5.9944, 'mm', 'in')).toBe('0.236')
    expect(said(6, 'mm', 'in')).toBe('0.2362')
    expect(said(0.6, 'mm', 'in')).toBe('0.0236')
    expect(said(0.03, 'mm', 'in')).toBe('0.001181')
    expect(said(60, 'mm', 'in')).toBe('2.362')
    expect(said(0, 'mm', 'in')).toBe('0')
  })
  test('feet, and feet with inches where that says it whole', () => {
    expect(said(1.3716, 'm', 'ft')).toBe('4.5')
    expect(said(1.7018, 'm', 'ft')).toBe('5\' 7"')
    expect(said(1.7145, 'm', 'ft')).toBe('5\' 7 1/2"')
    expect(said(2, 'm', 'ft')).toBe('6.562')
  })
  test('temperatures and their spreads', () => {
    expect(said(20, 'degC', 'degF')).toBe('68')
    expect(said(0, 'degC', 'degF')).toBe('32')
    expect(said(5, 'degC', 'degF', true)).toBe('9')
  })
  test('winds', () => {
    expect(said(4.2, 'm_per_s', 'km_per_h')).toBe('15.12')
    expect(said(4.4704, 'm_per_s', 'mi_per_h')).toBe('10')
    expect(said(4.2, 'm_per_s', 'mi_per_h')).toBe('9.395')
  })
  test('in its own unit as it stands', () => {
    expect(said(0.1 + 0.2, 'mm', 'mm')).toBe('0.30000000000000004')
  })
})
