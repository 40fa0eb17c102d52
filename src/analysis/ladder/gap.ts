/** Ladders of the gap, the winding staying in the middle of what it lies between. */
import type { Design } from '../../machine/design.ts'
import { gapChanges } from '../remedy/gap-change.ts'
import type { Ladder } from './ladder.ts'

const shifted = (design: Design, shifts_mm: readonly number[]): Ladder =>
  shifts_mm
    .map((shift) => gapChanges(design, shift))
    .filter((changes) => changes.every(({ to }) => (to as number) > 0))

export const narrowerGap = (design: Design): Ladder =>
  shifted(design, [-0.25, -0.5, -0.75, -1, -1.5, -2, -2.5, -3])

export const widerGap = (design: Design): Ladder => shifted(design, [0.25, 0.5, 1, 1.5, 2, 3, 4, 6])
