/** The best of attempts that stand in a row along one scale: a coarse look, then a golden section between neighbours. */
import type { Steps } from '../step.ts'
import { type Attempt, type RemedyContext, type Trial, tried, worth } from './trial.ts'

const golden = (Math.sqrt(5) - 1) / 2
const coarseCount = 6

/** Share of the energy below which two attempts are alike: the smaller step then wins. */
const alike = 1e-6

export const nothingFits = 'no step of it makes a machine that can be built'

/**
 * Attempts in the order of their scale; few of them are computed. The year's energy along one scale rises to one top
 * and falls again, save where stall makes a step: the coarse look finds which side of it is better.
 */
export function* bestAttempt(context: RemedyContext, attempts: readonly Attempt[]): Steps<Trial | string> {
  const count = attempts.length
  const known = new Map<number, Trial | string>()
  const expected = Math.min(count, coarseCount + 6)
  function* at(k: number): Steps<number> {
    const there = known.get(k)
    if (there !== undefined) return worth(there)
    const steps = tried(context, attempts[k]!)
    for (;;) {
      const step = steps.next()
      if (step.done === true) {
        known.set(k, step.value)
        return worth(step.value)
      }
      yield Math.min(0.99, (known.size + step.value) / expected)
    }
  }
  const coarse =
    count <= coarseCount + 2
      ? attempts.map((_, k) => k)
      : Array.from({ length: coarseCount }, (_, k) => Math.round((k * (count - 1)) / (coarseCount - 1)))
  let best = -1
  for (const k of coarse)
    if ((yield* at(k)) > (best < 0 ? Number.NEGATIVE_INFINITY : worth(known.get(best)) * (1 + alike)))
      best = k
  if (best < 0) {
    const reason = [...known.values()].find((value) => typeof value === 'string')
    return reason ?? nothingFits
  }
  const place = coarse.indexOf(best)
  let low = coarse[Math.max(0, place - 1)]!
  let high = coarse[Math.min(coarse.length - 1, place + 1)]!
  while (high - low > 2) {
    let left = Math.round(high - golden * (high - low))
    let right = Math.round(low + golden * (high - low))
    if (left === right) right = left + 1
    left = Math.max(low + 1, Math.min(left, high - 2))
    right = Math.max(left + 1, Math.min(right, high - 1))
    if ((yield* at(left)) >= (yield* at(right))) high = right
    else low = left
  }
  for (let k = low; k <= high; k++) yield* at(k)
  const ranked = [...known.entries()].sort(([i, a], [j, b]) => worth(b) - worth(a) || i - j)
  return ranked[0]![1]
}
