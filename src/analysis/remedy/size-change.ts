/** Places of the document that change when blades of the same shape are made larger or smaller. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, inSteps, valueChange } from './change.ts'

export function sizeChanges({ blades }: Design, ratio: number): Change[] {
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
