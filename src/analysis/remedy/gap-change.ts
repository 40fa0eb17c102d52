/** Places of the document that move when the gap is made wider or narrower. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Change, inSteps, type Key, valueChange } from './change.ts'

/** Steps of a gap that shims and prints hold [mm]: common practice, no source. */
export const gapStep_mm = 0.5

/** Places that move when the winding moves away from the magnets by `shift_mm`, opposite face and all. */
export function gapChanges({ rotor, stator }: Design, shift_mm: number): Change[] {
  const { winding } = stator
  const moved = (path: readonly Key[], from: Parameters<typeof valueChange>[1], by: number) =>
    valueChange(path, from, inSteps(nominal(from!) + by, gapStep_mm / 100))
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
