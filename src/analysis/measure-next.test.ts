/** Checks of what to measure next: every guess finds its instrument, and the order is gain over effort. */
import { describe, expect, test } from 'vitest'
import { exampleChain, exampleNames } from '../../test/example.ts'
import { type Guess, guessesOf } from './guess.ts'
import { effortOf, instrumentFor, nextMeasurements, widthLeft } from './measure-next.ts'

const guess = (path: string, value: number, halfWidth: number): Guess => ({
  path,
  fact: undefined,
  shape: 'normal',
  value,
  halfWidth,
  limits: () => [-2, 2],
  moved: (supposition) => supposition,
  at: () => {
    throw new Error('not asked')
  },
})

describe('law: instruments', () => {
  test('every guess of every example has one', () => {
    for (const name of exampleNames)
      for (const { path } of guessesOf(exampleChain(name).machine))
        expect(instrumentFor(path), path).toBeDefined()
  })
  test('a named place goes before its unit, and the place in a list does not matter', () => {
    expect(instrumentFor('site.meanWind_m_per_s')!.instrument).toBe('logging anemometer')
    expect(instrumentFor('stator.winding.phases[2].distance_mm')!.instrument).toBe('caliper')
    expect(instrumentFor('purpose.something')).toBeUndefined()
  })
  test('no instrument leaves more than there was', () => {
    const caliper = instrumentFor('x_mm')!
    expect(widthLeft(guess('x_mm', 5, 0.4), caliper)).toBe(0.1)
    expect(widthLeft(guess('x_mm', 5, 0.02), caliper)).toBe(0.02)
    expect(widthLeft(guess('cable.length_m', 20, 4), instrumentFor('cable.length_m')!)).toBeCloseTo(0.2, 12)
  })
})

describe('law: the order', () => {
  // two guesses that bear the interval −1 … 1 in halves: what is left of each adds
  const guesses = [guess('site.meanWind_m_per_s', 5, 1), guess('stator.winding.distance_mm', 5, 1), undefined]
  const next = nextMeasurements(guesses, [-1, 1], (input, part) => {
    expect(input).toBeLessThan(2)
    const half = (1 + part) / 2
    return [-half, half]
  })
  test('gain over effort, so a caliper goes before a month of wind', () => {
    expect(next.map(({ instrument }) => instrument)).toEqual(['caliper', 'logging anemometer'])
    expect(next[0]!.gain).toBeCloseTo(0.45, 12)
    expect(next[1]!.gain).toBeCloseTo(0.25, 12)
    expect(effortOf(next[1]!)).toBeGreaterThan(effortOf(next[0]!))
  })
  test('nothing to gain, nothing to measure', () => {
    expect(nextMeasurements(guesses, [-1, 1], () => [-1, 1])).toEqual([])
    expect(nextMeasurements(guesses, [2, 2], () => [2, 2])).toEqual([])
  })
})
