/** Where the sides of every coil cross the middle line of the magnets: what drawings of the winding begin with. */
import type { Machine } from '../machine/machine.ts'
import { type ConductorLayout, coilPolyline } from './conductor-layout.ts'

export interface LegCut {
  /** Number of the coil, from 1. */
  readonly coil: number
  readonly phase: number
  /** Azimuth, −π…π [rad]. */
  readonly angle: number
  /** Radius on a drum, height on a disc, of the bundle's middle [m]. */
  readonly level: number
  /** Positive current, sense included, runs along the shaft (drum) or outward (disc): 1, or the other way: −1. */
  readonly direction: 1 | -1
  readonly width: number
  readonly thickness: number
}

/** Chords of the outline miss it by no more than this share of the radius. */
const sagittaShare = 1e-3

/** Sides in the order of the current through each coil, coil after coil. */
export function legCuts(machine: Machine, layout: ConductorLayout): LegCut[] {
  const { rotor, stator } = machine
  const drum = rotor.arrangement === 'drum'
  const middle = drum ? 0 : stator.winding.kind === 'coils' ? stator.winding.centreRadius : rotor.pitchRadius
  return layout.coils.flatMap((coil): LegCut[] => {
    const points = coilPolyline(layout, coil, sagittaShare * rotor.pitchRadius)
    const { bundle } = layout.shapes[coil.shape]!
    const cuts: LegCut[] = []
    const along = (k: number) => (drum ? points[k + 2]! : Math.hypot(points[k]!, points[k + 1]!)) - middle
    for (let k = 0; k + 5 < points.length; k += 3) {
      const [here, next] = [along(k), along(k + 3)]
      if (here >= 0 === next >= 0) continue
      const t = here / (here - next)
      const at = (axis: number) => points[k + axis]! + t * (points[k + 3 + axis]! - points[k + axis]!)
      cuts.push({
        coil: coil.number,
        phase: coil.phase,
        angle: Math.atan2(at(1), at(0)),
        level: drum ? Math.hypot(at(0), at(1)) : at(2),
        direction: (next > here ? coil.sense : -coil.sense) as 1 | -1,
        width: bundle.width,
        thickness: bundle.thickness,
      })
    }
    return cuts
  })
}
