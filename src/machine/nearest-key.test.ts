/** Checks of the search for the word that was meant. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { editDistance, nearestKey } from './nearest-key.ts'

describe('law: one deletion, insertion, change or swap of neighbours counts one', () => {
  const rows = [
    ['poleCount', 'poleCont', 1],
    ['poleCount', 'poleCounts', 1],
    ['poleCount', 'poleCaunt', 1],
    ['poleCount', 'ploeCount', 1],
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['abc', '', 3],
    ['same', 'same', 0],
  ] as const
  for (const [a, b, distance] of rows) test(`${a} → ${b}`, () => expect(editDistance(a, b)).toBe(distance))
})

/** Straight from the recursive definition, for short words only. */
function definedDistance(a: string, b: string): number {
  if (a.length === 0 || b.length === 0) return a.length + b.length
  const change = a.at(-1) === b.at(-1) ? 0 : 1
  const shorter = (x: number, y: number) =>
    definedDistance(a.slice(0, a.length - x), b.slice(0, b.length - y))
  let least = Math.min(shorter(1, 0) + 1, shorter(0, 1) + 1, shorter(1, 1) + change)
  if (a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1))
    least = Math.min(least, shorter(2, 2) + 1)
  return least
}

describe('agrees: the recursive definition', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 5 })
  test('over short words', () =>
    fc.assert(
      fc.property(word, word, (a, b) => editDistance(a, b) === definedDistance(a, b)),
      { numRuns: 120 },
    ))
})

describe('law: the nearest word', () => {
  const known = ['poleCount', 'pitchRadius_mm', 'magnet', 'cover_mm']
  test('is found through case, swaps and missing letters', () => {
    expect(nearestKey('polecount', known)).toBe('poleCount')
    expect(nearestKey('poleCuont', known)).toBe('poleCount')
    expect(nearestKey('pitchRadius', known)).toBe('pitchRadius_mm')
    expect(nearestKey('magnets', known)).toBe('magnet')
  })
  test('is not forced on what resembles nothing', () => {
    expect(nearestKey('xyzzy', known)).toBeUndefined()
    expect(nearestKey('', known)).toBeUndefined()
    expect(nearestKey('magnet', [])).toBeUndefined()
  })
  test('distance is symmetric and never above the longer word', () =>
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        const d = editDistance(a, b)
        return d === editDistance(b, a) && d <= Math.max(a.length, b.length) && (d === 0) === (a === b)
      }),
    ))
  test('a word of a million letters is not compared letter by letter', () => {
    expect(nearestKey('q'.repeat(1_000_000), known)).toBeUndefined()
  })
})
