/** Air between winding and magnets, and between winding and what lies beyond it, by the drawing. */
import type { Machine } from '../../machine/machine.ts'
import { coilFormOf } from '../conductor-layout.ts'

/** How far the corners of flat blocks stand out beyond the middle of their outer face on a drum [m]. */
export function cornerRise({ rotor }: Pick<Machine, 'rotor'>): number {
  if (rotor.arrangement !== 'drum' || rotor.windingSide === 'inside') return 0
  const face = rotor.pitchRadius + rotor.magnet.thickness / 2
  return Math.hypot(face, rotor.magnet.width / 2) - face
}

export interface Gap {
  /** Between winding and magnets or their cover, and between winding and what lies beyond it [m]. */
  readonly inner: number
  readonly outer: number | undefined
}

/** Air by the drawing, on both sides of the winding. */
export function drawnGap(machine: Machine): Gap {
  const { rotor, stator } = machine
  const { winding } = stator
  const distances =
    winding.kind === 'serpentine' ? winding.phases.map(({ distance }) => distance) : [winding.distance]
  const half = winding.bundleDepth / 2
  const nearest = distances.reduce((low, distance) => Math.min(low, distance)) - half
  // layers and upper levels stand beyond the first
  const beyondFirst =
    winding.kind === 'serpentine'
      ? (winding.layers - 1) * winding.layerPitch
      : coilFormOf(machine, winding).rise.legs
  const farthest = distances.reduce((high, distance) => Math.max(high, distance)) + beyondFirst + half
  const beyond =
    rotor.faceDistance === undefined
      ? undefined
      : rotor.faceDistance - farthest - (rotor.arrangement === 'two-discs' ? rotor.cover : 0)
  return { inner: nearest - Math.max(rotor.cover, cornerRise(machine)), outer: beyond }
}
