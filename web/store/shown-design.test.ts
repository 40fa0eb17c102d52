/** Checks of how a design is shown outside the form. */
import { describe, expect, test } from 'vitest'
import { bytesText, nameOf, sizeOf } from './shown-design.ts'

describe('law: bytes change their unit where the rounded number would', () => {
  for (const [bytes, text] of [
    [0, '0 B'],
    [999, '999 B'],
    [1000, '1.0 kB'],
    [999_949, '999.9 kB'],
    [999_950, '1.0 MB'],
    [4_860_000, '4.9 MB'],
    [10_737_491_968, '10.7 GB'],
  ] as const)
    test(text, () => expect(bytesText(bytes)).toBe(text))
  test('a size counts bytes, not letters', () => expect(sizeOf({ a: 'ü' })).toBe(10))
})

describe('law: every design has a name to call it by', () => {
  test('whatever stands there', () => {
    for (const name of [undefined, '', '  ', 5, {}, ['x']])
      expect(nameOf({ name })).toBe('A design without a name')
    expect(nameOf({ name: 'Fan' })).toBe('Fan')
    expect(nameOf({ name: 'x'.repeat(5000) })).toHaveLength(120)
  })
})
