/** The form of flat coils whose turns are parallel outlines of a hole, and what all of them must clear. */
import {
  type CoilOutline,
  coilCurve,
  coilExtent,
  coilMeanTurnLength,
  type HoleShape,
  neighbourClearance,
} from '../../geometry/coil-outline.ts'
import { nominal, type Quantity } from '../../units/quantity.ts'
import { atLeast, atMost } from '../consistency-fault.ts'
import type { Fault } from '../fault.ts'
import { type CoilBench, type CoilForm, type CoilPlace, holePath } from './coil-shape.ts'

/** Flat coils lie on one level. */
export const noRise: CoilForm['rise'] = { legs: 0, ends: 0 }

/** `meanWidth` is the width of the hole by which its legs lie apart. */
export function planarForm(hole: HoleShape, meanWidth: number, place: CoilPlace): CoilForm {
  const { surface, legWidth, bundleDepth, coilCount } = place
  const outline: CoilOutline = { hole, surface, angle: 0 }
  const bundle = { width: legWidth, thickness: bundleDepth }
  const radius = surface.kind === 'drum' ? surface.radius : surface.meanRadius
  const { length, width } = coilExtent(outline, legWidth)
  return {
    turn: (outward, normal) => coilCurve(outline, { outward, normal }),
    across: [0, legWidth],
    turnLength: coilMeanTurnLength(outline, bundle),
    legSpan: (meanWidth + legWidth) / radius,
    legAngle: legWidth / radius,
    extent: { length, width },
    room: neighbourClearance(outline, legWidth, coilCount),
    rise: noRise,
    // a mirror through the coil's axis reverses the path and the magnet's pole alike
    parity: 'even',
  }
}

/** On a disc the inner end of the coil must stay off the shaft. */
export const overShaftFaults = (bench: CoilBench, holeLength_mm: Quantity): Fault[] =>
  bench.arrangement === 'drum'
    ? []
    : atLeast(
        bench.radiusPath,
        bench.radius_mm,
        nominal(holeLength_mm) / 2 + bench.legWidth_mm,
        'half the hole and a leg, or the coils reach over the shaft',
      )

/** Greatest radius of a hole's corners leaves its sides and ends straight or just gone. */
export function cornerFaults(
  cornerRadius_mm: Quantity,
  hole: { readonly length_mm: Quantity; readonly inner_mm: Quantity; readonly outer_mm: Quantity },
): Fault[] {
  const length = nominal(hole.length_mm)
  const inner = nominal(hole.inner_mm)
  const outer = nominal(hole.outer_mm)
  const lean = (outer - inner) / (2 * length)
  const slope = Math.hypot(1, lean)
  return atMost(
    holePath('cornerRadius_mm'),
    nominal(cornerRadius_mm),
    Math.min(length / 2, inner / (2 * (slope - lean)), outer / (2 * (slope + lean))),
    'or the corners do not fit into the hole',
  )
}
