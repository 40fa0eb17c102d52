/** Remedy: larger or smaller blades of the same shape. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { bestAttempt } from './search.ts'
import { sizeChanges } from './size-change.ts'
import type { Attempt, RemedyRule } from './trial.ts'

/** Diameter tried, over the one at hand: beyond, tower and thrust are another design. Common practice, no source. */
const least = 0.75
const greatest = 1.25
const stepShare = 0.025

function attempts(design: Design): Attempt[] {
  const now = nominal(design.blades.diameter_m)
  const seen = new Set<unknown>([now])
  return Array.from({ length: Math.round((greatest - least) / stepShare) + 1 }, (_, k) =>
    sizeChanges(design, least + stepShare * k),
  )
    .filter(([first]) => {
      if (seen.has(first!.to)) return false
      seen.add(first!.to)
      return true
    })
    .map((changes) => ({ changes }))
}

export const bladeSizeRemedy: RemedyRule = {
  kind: 'blade size',
  unfit: () => undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
