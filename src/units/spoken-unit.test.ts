/** Checks of the units that people say and type: their factors, their words, and the way there and back. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { inUnit, spokenUnit, unitInWords, unitsOfKind } from './spoken-unit.ts'
import { toSi, unit, units } from './unit.ts'

const si = (suffix: string) => () => toSi(1, spokenUnit(suffix))

describe('source: nist-sp811, appendix B.8 — factors to SI (from memory, not opened)', () => {
  for (const [suffix, printed] of [
    ['in', '2.54e-2'],
    ['ft', '3.048e-1'],
    ['thou', '2.54e-5'],
    ['in2', '6.4516e-4'],
    ['ft2', '9.290304e-2'],
    ['mi_per_h', '4.4704e-1'],
    ['km_per_h', '2.777778e-1'],
    ['kn', '5.144444e-1'],
    ['lb', '4.535924e-1'],
    ['oz', '2.834952e-2'],
    ['lb_per_ft3', '1.601846e+1'],
    ['lb_ft2', '4.214011e-2'],
    ['lbf', '4.448222'],
    ['kgf', '9.80665'],
    ['lbf_ft', '1.355818'],
    ['lbf_in', '1.129848e-1'],
    ['ozf_in', '7.061552e-3'],
    ['lbf_per_in', '1.751268e+2'],
    ['psi', '6.894757e+3'],
    ['G', '1.0e-4'],
  ] as const)
    check(suffix, si(suffix), printed)
})

describe('source: nist-sp811, section 4.2.1.1 and appendix B.8 — points of the scales of temperature (from memory, not opened)', () => {
  const [degF, degC] = [spokenUnit('degF'), unit('degC')]
  check('32 °F in °C', () => inUnit(32, degF, degC), '0')
  check('212 °F in °C', () => inUnit(212, degF, degC), '100')
  check('−40 °F in °C', () => inUnit(-40, degF, degC), '-40')
  check('a difference of 9 °F', () => inUnit(9, degF, degC, true), '5')
})

describe('law: what somebody could have typed comes back as a decimal that somebody could have typed', () => {
  test('sixty-fourths of an inch are exact in millimetres', () => {
    const [inch, mm] = [spokenUnit('in'), unit('mm')]
    expect(inUnit(1 / 4, inch, mm)).toBe(6.35)
    expect(inUnit(1 / 64, inch, mm)).toBe(0.396875)
    for (let k = 1; k <= 64 * 40; k++) {
      const there = inUnit(k / 64, inch, mm)
      expect(there).toBe((k * 396875) / 1_000_000)
      expect(inUnit(there, mm, inch)).toBe(k / 64)
    }
  })
  test('there and back gives the same eight digits in every unit', () => {
    const kinds = [...units.keys()].map((suffix) => [suffix, unitsOfKind(suffix)] as const)
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds.filter(([, kind]) => kind.length > 1)),
        fc.nat(),
        fc.integer({ min: 1, max: 99_999_999 }),
        fc.integer({ min: -4, max: 3 }),
        ([suffix, kind], pick, digits, power) => {
          const kept = unit(suffix)
          const said = kind[pick % kind.length]!.unit
          const value = Number(`${digits}e${power - 4}`)
          const back = inUnit(inUnit(value, kept, said), said, kept)
          const allowed = kept.offset === said.offset ? 1e-11 * value : 1e-8
          expect(Math.abs(back - value)).toBeLessThanOrEqual(allowed)
        },
      ),
    )
  })
  test('in its own unit a number stays bit for bit', () => {
    expect(inUnit(0.1 + 0.2, unit('mm'), unit('mm'))).toBe(0.1 + 0.2)
  })
})

describe('law: words', () => {
  test('a word names one unit of its kind, and none of another kind', () => {
    expect(unitInWords('inches', 'mm')?.suffix).toBe('in')
    expect(unitInWords('IN', 'm')?.suffix).toBe('in')
    expect(unitInWords('"', 'mm')?.suffix).toBe('in')
    expect(unitInWords('µm', 'mm')?.suffix).toBe('um')
    expect(unitInWords('MPH', 'm_per_s')?.suffix).toBe('mi_per_h')
    expect(unitInWords('°F', 'degC')?.suffix).toBe('degF')
    expect(unitInWords('mm', 'kg')).toBeUndefined()
    expect(unitInWords('furlong', 'm')).toBeUndefined()
  })
  test('milliohm and megohm differ by their capitals alone, and are not mixed up', () => {
    expect(unitInWords('mΩ', 'ohm')?.suffix).toBe('mohm')
    expect(unitInWords('MΩ', 'ohm')?.suffix).toBe('Mohm')
    expect(unitInWords('MOHM', 'ohm')).toBeUndefined()
  })
  test('no word stands for two units of one kind', () => {
    for (const suffix of units.keys()) {
      const words = unitsOfKind(suffix).flatMap((each) => [...new Set(each.words)])
      expect(words.filter((word, k) => words.indexOf(word) !== k)).toEqual([])
    }
  })
  test('codes and symbols are there for every unit', () => {
    for (const suffix of units.keys())
      for (const { unit: each } of unitsOfKind(suffix)) {
        expect(each.ucum).not.toBe('')
        expect(each.symbol === '' || each.symbol === '°' || each.symbol.startsWith(' ')).toBe(true)
      }
  })
})
