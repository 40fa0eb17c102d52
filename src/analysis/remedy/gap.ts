/** Remedy: a wider or narrower gap, the winding staying in the middle of what it lies between. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, inSteps, type Key, valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

/** Steps of a gap that shims and prints hold [mm]: common practice, no source. */
const step_mm = 0.5
const narrower = 12
const wider = 24

/** Places that move when the winding moves away from the magnets by `shift_mm`, opposite face and all. */
function gapChanges({ rotor, stator }: Design, shift_mm: number): Change[] {
  const { winding } = stator
  const moved = (path: readonly Key[], from: Parameters<typeof valueChange>[1], by: number) =>
    valueChange(path, from, inSteps(nominal(from!) + by, step_mm / 100))
  // between two discs of magnets the winding is in the middle: the gap opens on both sides
  const both = rotor.arrangement === 'two-discs'
  const changes: Change[] = []
  if (both) changes.push(moved(['rotor', 'faceDistance_mm'], rotor.faceDistance_mm, 2 * shift_mm))
  if (rotor.arrangement === 'disc' && rotor.opposite?.kind === 'steel')
    changes.push(
      moved(['rotor', 'opposite', 'faceDistance_mm'], rotor.opposite.faceDistance_mm, 2 * shift_mm),
    )
  if (rotor.arrangement === 'drum' && rotor.sleeve !== undefined)
    changes.push(moved(['rotor', 'sleeve', 'distance_mm'], rotor.sleeve.distance_mm, 2 * shift_mm))
  if (winding.kind === 'coils')
    changes.push(moved(['stator', 'winding', 'distance_mm'], winding.distance_mm, shift_mm))
  else
    winding.phases.forEach((phase, k) => {
      changes.push(moved(['stator', 'winding', 'phases', k, 'distance_mm'], phase.distance_mm, shift_mm))
    })
  return changes
}

function attempts(design: Design): Attempt[] {
  return Array.from({ length: narrower + wider + 1 }, (_, k) => k - narrower)
    .filter((steps) => steps !== 0)
    .map((steps) => ({ changes: gapChanges(design, (steps * step_mm) / 2) }))
    .filter(({ changes }) => changes.every(({ to }) => (to as number) > 0))
}

export const gapRemedy: RemedyRule = {
  kind: 'gap',
  unfit: () => undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
