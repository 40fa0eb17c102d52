/** Checks of what is made of a typed quantity. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spokenNumber } from './spoken-number.ts'
import { spokenUnit, unitsOfKind } from './spoken-unit.ts'
import { isUnfinishedQuantity, type TypingPlace, typedQuantity } from './typed-quantity.ts'
import { unit, units } from './unit.ts'

const metric: TypingPlace = { kept: unit('mm'), said: unit('mm'), mark: '.' }
const inches: TypingPlace = { kept: unit('mm'), said: spokenUnit('in'), mark: '.' }
const feet: TypingPlace = { kept: unit('m'), said: spokenUnit('ft'), mark: '.' }

const value = (text: string, place: TypingPlace) => {
  const typed = typedQuantity(text, place)
  return typed.kind === 'number' ? typed.value : typed.kind === 'refused' ? typed.why : typed.kind
}

describe('law: numbers as people type them', () => {
  const cases: readonly (readonly [string, TypingPlace, number | string])[] = [
    ['3.5', metric, 3.5],
    ['3,5', metric, 3.5],
    ['.5', metric, 0.5],
    ['1.', metric, 1],
    ['−2', metric, -2],
    ['+2', metric, 2],
    ['2e3', metric, 2000],
    ['', metric, 'nothing'],
    ['a lot', metric, 'words'],
    ['-', metric, 'words'],
    ['1/4', inches, 6.35],
    ['1 1/4', inches, 31.75],
    ['1-1/4', inches, 31.75],
    ['1¼', inches, 31.75],
    ['½', inches, 12.7],
    ['-1/2', inches, -12.7],
    ['0.25 in', metric, 6.35],
    ['0,25 in', metric, 6.35],
    ['1/4"', metric, 6.35],
    ['12 mm', inches, 12],
    ['1.2cm', inches, 12],
    ['5 thou', metric, 0.127],
    ['1/2', metric, 0.5],
    ['4 ft 6 in', feet, 1.3716],
    [`4' 6"`, feet, 1.3716],
    ['4’ 6 1/2”', feet, 1.3843],
    ['4.5', feet, 1.3716],
    ["4'", feet, 1.2192],
    ['2 m', feet, 2],
  ]
  for (const [text, place, wanted] of cases)
    test(`"${text}" where ${place.said.suffix} is said`, () => expect(value(text, place)).toBe(wanted))
})

describe('law: two readings are refused, never guessed', () => {
  const comma = { ...metric, mark: ',' } as const
  const cases: readonly (readonly [string, TypingPlace, number | string])[] = [
    ['1.234,5', metric, 'several marks'],
    ['1,234.5', comma, 'several marks'],
    ['1.234.567', comma, 'several marks'],
    ['1,200', metric, 'mark of thousands'],
    ['1.200', comma, 'mark of thousands'],
    ['1.200', metric, 1.2],
    ['1,200', comma, 1.2],
    ['0,812', metric, 0.812],
    ['0.812', comma, 0.812],
    ['1234,567', metric, 1234.567],
    ['1 200', metric, 'gap in digits'],
    ['1 200,5', comma, 'gap in digits'],
    ['1/0', metric, 'nothing under the line'],
    ['12 kg', metric, 'unknown unit'],
    ['12 mm wide', metric, 'unknown unit'],
    ["1'200", feet, 'unknown unit'],
  ]
  for (const [text, place, wanted] of cases)
    test(`"${text}" where ${place.mark} is before the decimals`, () =>
      expect(value(text, place)).toBe(wanted))
})

describe('law: said and typed again, a number is the same', () => {
  const kinds = [...units.keys()].flatMap((suffix) =>
    unitsOfKind(suffix).map((each) => [unit(suffix), each.unit] as const),
  )
  test('whatever short number was typed in whatever unit reads back to the same kept number', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 0, max: 4 }),
        fc.boolean(),
        ([kept, said], digits, decimals, difference) => {
          const place = { kept, said, mark: '.', difference } as const
          const first = typedQuantity((digits / 10 ** decimals).toFixed(decimals), place)
          if (first.kind !== 'number') throw new Error(`${digits} ${decimals} is ${first.kind}`)
          const text = spokenNumber(first.value, { kept, said, difference })
          expect(typedQuantity(text, place)).toEqual({
            kind: 'number',
            value: first.value,
            withUnit: text.includes("'"),
          })
        },
      ),
      { numRuns: 2000 },
    )
  })
  test('nothing that is typed gives NaN or an infinite number', () => {
    const piece = fc.constantFrom(...'0123456789.,-+/ e\'"¼½inftm%°C'.split(''))
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 12 }),
        fc.constantFrom(metric, inches, feet),
        (signs, place) => {
          const typed = typedQuantity(signs.join(''), place)
          if (typed.kind === 'number') expect(Number.isFinite(typed.value)).toBe(true)
        },
      ),
      { numRuns: 3000 },
    )
  })
  test('a long hostile text is answered', () => {
    for (const text of [
      '1'.repeat(100_000),
      `1 ${' '.repeat(50_000)}x`,
      '1/'.repeat(50_000),
      "'".repeat(50_000),
    ])
      expect(['number', 'words', 'refused']).toContain(typedQuantity(text, feet).kind)
  })
})

describe('law: in the middle of typing nobody is told off', () => {
  test('every beginning of what is a quantity in the end is a quantity or unfinished', () => {
    for (const [whole, place] of [
      ['-12.5', metric],
      ['1 1/4', inches],
      ['1-1/4 in', inches],
      ['0,25 inch', metric],
      ['12 mm', inches],
      [`5' 7 1/2"`, feet],
      ['5 ft 7 in', feet],
    ] as const)
      for (let length = 1; length <= whole.length; length++) {
        const text = whole.slice(0, length)
        const fine = typedQuantity(text, place).kind === 'number' || isUnfinishedQuantity(text, place)
        expect(fine, text).toBe(true)
      }
  })
  test('what becomes nothing is told at once', () => {
    for (const text of ['a lot', '12 kg', '1.2.3', '1,200', '1/0'])
      expect(isUnfinishedQuantity(text, metric), text).toBe(false)
  })
})
