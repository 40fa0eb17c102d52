/** Checks of the units that names end in. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { fromSi, toSi, unit, unitOfName, units } from './unit.ts'

describe('source: nist-sp811, appendix B.8 — factors to SI (from memory, not opened)', () => {
  check('revolution per minute in rad/s', () => toSi(1, unit('rpm')), '1.047198e-1')
  check('degree of angle in rad', () => toSi(1, unit('deg')), '1.745329e-2')
  check('kilowatt hour in J', () => toSi(1, unit('kWh')), '3.6e6')
  check('watt hour in J', () => toSi(1, unit('Wh')), '3.6e3')
  check('ampere hour in C', () => toSi(1, unit('Ah')), '3.6e3')
})

describe('source: si-brochure-9, sections 2.3.1 and 3 — Celsius temperature and prefixes (from memory, not opened)', () => {
  check('0 °C in K', () => toSi(0, unit('degC')), '273.15')
  check('milli', () => toSi(1, unit('mm')), '1e-3')
  check('milli, squared', () => toSi(1, unit('mm2')), '1e-6')
  check('per milli, squared', () => toSi(1, unit('A_per_mm2')), '1e6')
})

describe('law: there and back', () => {
  test('every unit returns what it was given', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units.values()),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (one, value) => {
          expect(Math.abs(fromSi(toSi(value, one), one) - value)).toBeLessThan(1e-9 * (1 + Math.abs(value)))
        },
      ),
    )
  })
  test('hundredths of a millimetre convert with one rounding: the nearest double to the decimal in metres', () => {
    for (let hundredths = 1; hundredths < 100_000; hundredths += 7)
      expect(toSi(hundredths, { ...unit('mm'), divisor: 100_000 })).toBe(hundredths / 100_000)
  })
})

describe('law: a name carries its unit', () => {
  test('the ending after the first underscore', () => {
    expect(unitOfName('airGap_mm').suffix).toBe('mm')
    expect(unitOfName('atWind_m_per_s').suffix).toBe('m_per_s')
    expect(unitOfName('turns').suffix).toBe('1')
  })
  test('an unknown ending is refused, and the known ones are listed', () => {
    expect(() => unitOfName('airGap_inch')).toThrow(/one of m, mm,.*received "inch" \(not-a-choice\)/)
  })
  test('codes, symbols and endings are there for every unit', () => {
    for (const one of units.values()) {
      expect(one.suffix).toMatch(/^[A-Za-z0-9_]+$/)
      expect(one.ucum).not.toBe('')
      expect(one.divisor > 0 && Number.isInteger(one.divisor) && one.factor > 0).toBe(true)
      expect(one.symbol === '' || one.symbol === '°' || one.symbol.startsWith(' ')).toBe(true)
    }
  })
})
