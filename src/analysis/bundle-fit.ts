/** How many turns of a wire go into a bundle: by a patient hand, and at the very best. */
import type { Wire } from '../machine/machine.ts'
import { handStripGrowth, handWoundFraction, stripFill, windowFill } from '../physics/winding/fill.ts'

interface Bundle {
  readonly width: number
  readonly thickness: number
}

export interface BundleTurns {
  readonly hand: number
  /** Perfect packing: hexagonal for round wire, a stack without a gap for strip. */
  readonly best: number
}

export function bundleTurns({ shape, section, strands }: Wire, { width, thickness }: Bundle): BundleTurns {
  if (shape.kind === 'strip') {
    const [across, through] = shape.edgewise
      ? [shape.outerThickness, shape.outerWidth]
      : [shape.outerWidth, shape.outerThickness]
    const strip = { across, through, area: section.area, strands }
    const turns = (growth: number) => stripFill({ width, thickness, strip, growth }).turns
    return { hand: turns(handStripGrowth.least), best: turns(1) }
  }
  const wire = { bareDiameter: shape.diameter, outerDiameter: shape.outerDiameter, strands }
  const window = { width, thickness, wire }
  return {
    hand: windowFill({ ...window, packing: 'hand-wound', fraction: handWoundFraction.greatest }).turns,
    best: windowFill({ ...window, packing: 'hexagonal' }).turns,
  }
}
