/** The gentlest step of a ladder that settles a concern, few steps tried. */
import type { Ladder } from '../ladder/ladder.ts'
import type { Steps } from '../step.ts'

/** What one step comes to: how far it gets, or why it makes no machine. */
export interface StepVerdict {
  /** Rising with what is gained; the greatest there is where nothing is left to do. */
  readonly gain: number
}

export interface LadderSearch {
  /** Place of the step to tell of; undefined where none makes a machine. */
  readonly found: number | undefined
  /** Places tried, in the order in which they were. */
  readonly tried: readonly number[]
}

/** Steps that a search along `count` of them usually takes at most; those that make no machine come on top. */
export const mostTrials = (count: number): number => Math.min(count, 3 + Math.ceil(Math.log2(count + 1)))

/**
 * Strongest first; where it makes no machine, the next weaker. Where it gains nothing, the middle is looked at too: too
 * much of a change can bring its own trouble. Then halving, for the gentlest step that gains as much as the best one
 * seen; a gain below `worthHalving` has no such edge, and the strongest step tells it. A ladder along which the gain rises gives the gentlest of all; along any other, the step below was tried too
 * and gained less.
 */
export function* gentlestStep(
  ladder: Ladder,
  { settled, worthHalving }: { readonly settled: number; readonly worthHalving: number },
  tryStep: (place: number) => Steps<StepVerdict | undefined>,
): Steps<LadderSearch> {
  const known = new Map<number, number>()
  const expected = mostTrials(ladder.length)
  function* gainAt(place: number): Steps<number> {
    const there = known.get(place)
    if (there !== undefined) return there
    const steps = tryStep(place)
    for (;;) {
      const step = steps.next()
      if (step.done === true) {
        const gain = step.value?.gain ?? Number.NEGATIVE_INFINITY
        known.set(place, gain)
        return gain
      }
      yield Math.min(0.99, (known.size + step.value) / expected)
    }
  }
  const possible = (gain: number) => gain > Number.NEGATIVE_INFINITY
  let high = ladder.length - 1
  while (high >= 0 && !possible(yield* gainAt(high))) high--
  if (high < 0) return { found: undefined, tried: [...known.keys()] }
  let wanted = yield* gainAt(high)
  if (wanted < settled && high >= 2) {
    const middle = Math.floor(high / 2)
    const there = yield* gainAt(middle)
    if (there >= wanted) {
      high = middle
      wanted = there
    }
  }
  if (wanted < worthHalving) return { found: high, tried: [...known.keys()] }
  let low = -1
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if ((yield* gainAt(middle)) >= wanted) high = middle
    else low = middle
  }
  return { found: high, tried: [...known.keys()] }
}
