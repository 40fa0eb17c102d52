/** Checks of values that carry their spread. */
import { describe, expect, test } from 'vitest'
import { knownOf, nominal, spreadOf, waysOfKnowing } from './quantity.ts'

describe('law: a bare number and a full quantity read alike', () => {
  test('the value, the spread, the way of knowing', () => {
    expect([nominal(3), spreadOf(3), knownOf(3)]).toEqual([3, 0, undefined])
    const full = { value: 3, spread: 0.5, known: 'measured' } as const
    expect([nominal(full), spreadOf(full), knownOf(full)]).toEqual([3, 0.5, 'measured'])
    expect([nominal({ value: 3 }), spreadOf({ value: 3 }), knownOf({ value: 3 })]).toEqual([3, 0, undefined])
  })
  test('the words are three', () => expect(waysOfKnowing).toEqual(['label', 'measured', 'guessed']))
})
