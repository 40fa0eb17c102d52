/** Checks of the guards and the wording of refusals. */
import { describe, expect, test } from 'vitest'
import { refusalCodes } from './code.ts'
import {
  Refusal,
  refuse,
  requireBetween,
  requireFinite,
  requireLength,
  requireNotNegative,
  requirePositive,
} from './require.ts'

const caught = (act: () => void): Refusal => {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

describe('law: a refusal reads name, condition, value, unit, code', () => {
  test('with a unit', () => {
    const refusal = caught(() => requireBetween('rotor.airGap_mm', -3, [0.3, 50], 'mm'))
    expect(refusal.message).toBe('rotor.airGap_mm must be at least 0.3 mm; received -3 mm (below-minimum)')
    expect(refusal.code).toBe('below-minimum')
    expect(refusal).toBeInstanceOf(RangeError)
    expect(refusal.name).toBe('Refusal')
  })
  test('without a unit, and values that are not numbers', () => {
    const say = (value: unknown) =>
      caught(() => refuse({ name: 'word', condition: 'star or delta', value, code: 'not-a-choice' })).message
    expect(say('ring')).toBe('word must be star or delta; received "ring" (not-a-choice)')
    expect(say([1, 2])).toContain('received [1,2]')
    expect(say(undefined)).toContain('received undefined')
    expect(say(Number.NaN)).toContain('received NaN')
    expect(say(() => 1)).toContain('received function')
  })
})

describe('law: each guard lets meaning pass and stops the rest', () => {
  const notFinite = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const cases = [
    { name: 'requireFinite', guard: requireFinite, passes: [0, -1, 1e300, 5e-324], stops: [] },
    { name: 'requirePositive', guard: requirePositive, passes: [5e-324, 1], stops: [0, -0, -1] },
    { name: 'requireNotNegative', guard: requireNotNegative, passes: [0, -0, 1], stops: [-5e-324] },
  ]
  for (const { name, guard, passes, stops } of cases)
    test(name, () => {
      for (const value of passes) expect(() => guard('x', value, 'm')).not.toThrow()
      for (const value of stops) expect(caught(() => guard('x', value, 'm')).code).toBe('below-minimum')
      for (const value of notFinite) expect(caught(() => guard('x', value)).code).toBe('not-finite')
    })
  test('requireBetween holds its ends', () => {
    for (const value of [1, 1.5, 2]) expect(() => requireBetween('x', value, [1, 2])).not.toThrow()
    expect(caught(() => requireBetween('x', 0.999, [1, 2])).code).toBe('below-minimum')
    expect(caught(() => requireBetween('x', 2.001, [1, 2])).message).toBe(
      'x must be at most 2; received 2.001 (above-maximum)',
    )
    for (const value of notFinite)
      expect(caught(() => requireBetween('x', value, [1, 2])).code).toBe('not-finite')
  })
  test('requireLength', () => {
    expect(() => requireLength('x', new Float64Array(3), 3)).not.toThrow()
    expect(caught(() => requireLength('x', [1], 3)).message).toBe(
      'x must be 3 long; received 1 (wrong-length)',
    )
  })
  test('every code is a word a guard may give', () =>
    expect(Object.keys(refusalCodes)).toContain('no-convergence'))
})
