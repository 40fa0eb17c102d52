/** Checks of the search along a ladder: the gentlest step that gains the most, found with few trials. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { finished } from '../step.ts'
import { gentlestStep, mostTrials } from './ladder-search.ts'

const ladder = (count: number) => Array.from({ length: count }, (_, k) => [{ path: ['x'], from: 0, to: k }])

const bounds = { settled: 3, worthHalving: 2 } as const

/** Gains by place; undefined where a step makes no machine. */
const search = (gains: readonly (number | undefined)[]) =>
  finished(
    gentlestStep(ladder(gains.length), bounds, function* (place) {
      yield 0.5
      const gain = gains[place]
      return gain === undefined ? undefined : { gain }
    }),
  )

describe('agrees: with a look at every step, where the gain rises along the ladder', () => {
  test('the gentlest of the best, in few trials', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 3 }), { minLength: 1, maxLength: 24 }), (drawn) => {
        const gains = [...drawn].sort((a, b) => a - b)
        const { found, tried } = search(gains)
        const best = gains.at(-1)!
        expect(found).toBe(
          best < bounds.worthHalving ? gains.length - 1 - passedOver(gains) : gains.indexOf(best),
        )
        expect(tried.length).toBeLessThanOrEqual(mostTrials(gains.length))
      }),
      { seed: 11 },
    )
  })
})

/** A gain without an edge is told of the middle step where the strongest gains no more than it. */
const passedOver = (gains: readonly number[]): number => {
  const high = gains.length - 1
  const middle = Math.floor(high / 2)
  return high >= 2 && gains[middle]! >= gains[high]! ? high - middle : 0
}

describe('law: the search', () => {
  test('steps that make no machine are stepped over from the strong end', () => {
    expect(search([0, 1, 3, undefined, undefined]).found).toBe(2)
    expect(search([undefined, undefined]).found).toBeUndefined()
    expect(search([undefined, 3, 3]).found).toBe(1)
  })

  test('where the strongest goes too far, the middle is taken', () => {
    expect(search([0, 3, 3, 0, 0]).found).toBe(1)
  })

  test('the step below the one found was tried and gained less, on any ladder', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.nat({ max: 3 }), { nil: undefined }), { minLength: 1, maxLength: 16 }),
        (gains) => {
          const { found, tried } = search(gains)
          if (found === undefined) {
            expect(gains.every((gain) => gain === undefined)).toBe(true)
            return
          }
          const gain = gains[found]!
          if (gain < bounds.worthHalving || found === 0) return
          expect(tried).toContain(found - 1)
          expect(gains[found - 1] ?? Number.NEGATIVE_INFINITY).toBeLessThan(gain)
        },
      ),
      { seed: 12 },
    )
  })
})
