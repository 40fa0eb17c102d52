/** Remedy: larger or smaller blades of the same shape. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, inSteps, valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

/** Diameter tried, over the one at hand: beyond, tower and thrust are another design. Common practice, no source. */
const least = 0.75
const greatest = 1.25
const stepShare = 0.025

function sizeChanges({ blades }: Design, ratio: number): Change[] {
  const diameter = nominal(blades.diameter_m)
  const to = inSteps(ratio * diameter, diameter >= 1 ? 0.05 : 0.01)
  const changes = [valueChange(['blades', 'diameter_m'], blades.diameter_m, to)]
  if (blades.kind !== 'stations') return changes
  const scale = to / diameter
  return [
    ...changes,
    ...blades.stations.flatMap(({ radius_mm, chord_mm }, k) => [
      valueChange(
        ['blades', 'stations', k, 'radius_mm'],
        radius_mm,
        inSteps(scale * nominal(radius_mm), 0.1),
      ),
      valueChange(['blades', 'stations', k, 'chord_mm'], chord_mm, inSteps(scale * nominal(chord_mm), 0.1)),
    ]),
  ]
}

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
