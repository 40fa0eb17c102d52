/** Power lost without any load: bearings, and eddy currents in the strands and in metal that the magnets pass. */
import type { Machine } from '../machine/machine.ts'
import type { RotorField } from './air-gap-field.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { type MetalPartLoss, metalPartLosses } from './metal-part-loss.ts'
import { type StrandCirculation, strandCirculation } from './strand-circulation.ts'
import { type StrandLoss, strandLoss } from './strand-loss.ts'
import type { Watts } from './watts.ts'
import type { WoundMachine } from './winding.ts'

export type DragWatts = Pick<Watts, 'friction' | 'eddy' | 'parts'>

export interface NoLoadDrag {
  readonly strands: StrandLoss
  readonly parts: readonly MetalPartLoss[]
  /** A bound that is told but not counted; undefined for a single strand. */
  readonly between: StrandCirculation | undefined
  /** Watts at a speed [rad/s]. */
  readonly at: (speed: number) => DragWatts
}

/** Watts at a speed, of the machine's own friction and of these eddy currents. */
export const dragAt =
  ({ shaft }: Machine, { strands, parts }: Pick<NoLoadDrag, 'strands' | 'parts'>): NoLoadDrag['at'] =>
  (speed) => ({
    friction: shaft.friction * speed,
    eddy: strands.total * speed ** 2,
    parts: parts.reduce((sum, { loss }) => sum + loss(speed), 0),
  })

/** The copper is taken cold, where the strands lose most. */
export function noLoadDrag(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
  wound: WoundMachine,
): NoLoadDrag {
  const strands = strandLoss(machine, field, layout)
  const parts = metalPartLosses(machine, field)
  return {
    strands,
    parts,
    between: strandCirculation(machine, field, layout, wound),
    at: dragAt(machine, { strands, parts }),
  }
}
