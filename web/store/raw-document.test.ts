/** Checks that typing changes what was meant and nothing else. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { documentText, type Path, typedNumber, valueAt, withValue } from './raw-document.ts'

const key = fc.constantFrom('site', 'rotor', 'magnet', 'width_mm', 'name')
const path: fc.Arbitrary<Path> = fc.array(fc.oneof(key, fc.nat({ max: 3 })), { minLength: 1, maxLength: 4 })

describe('law: what is put at a path stands at that path', () => {
  test('of any document', () =>
    fc.assert(
      fc.property(fc.jsonValue(), path, fc.integer(), (document, keys, value) => {
        const text = JSON.stringify(document)
        const next = withValue(document, keys, value)
        expect(valueAt(next, keys)).toBe(value)
        expect(JSON.stringify(document)).toBe(text)
      }),
    ))
  test('the rest stays, and taking out takes out one thing', () => {
    const document = { a: { b: 1, c: [1, 2, 3] }, d: 'x' }
    expect(withValue(document, ['a', 'b'], 5)).toEqual({ a: { b: 5, c: [1, 2, 3] }, d: 'x' })
    expect(withValue(document, ['a', 'b'], undefined)).toEqual({ a: { c: [1, 2, 3] }, d: 'x' })
    expect(withValue(document, ['a', 'c', 1], undefined)).toEqual({ a: { b: 1, c: [1, 3] }, d: 'x' })
  })
})

describe('law: typed text is a number or stays the text it is', () => {
  test('numbers, faulty numbers, nothing', () => {
    expect(typedNumber(' 4.20 ')).toBe(4.2)
    expect(typedNumber('1.')).toBe(1)
    expect(typedNumber('−3')).toBe(-3)
    expect(typedNumber('1e3')).toBe(1000)
    expect(typedNumber('')).toBeUndefined()
    for (const text of ['1,5', 'a lot', '0x10', 'Infinity', 'NaN', 'AWG 20', '1 2'])
      expect(typedNumber(text)).toBe(text)
  })
  test('any finite number comes back', () =>
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(typedNumber(String(value))).toBe(value === 0 ? 0 : value)
      }),
    ))
  test('a saved file reads back', () =>
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (document) => {
        expect(JSON.parse(documentText(document))).toEqual(JSON.parse(JSON.stringify(document)))
      }),
    ))
})
