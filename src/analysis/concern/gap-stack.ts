/** Concern: too little air is left between rotor and stator when every dimension errs. */
import type { Machine } from '../../machine/machine.ts'
import { type RunningClearance, runningClearance } from '../../physics/mechanics/gap-stack.ts'
import { formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { coilFormOf } from '../conductor-layout.ts'
import { turningCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** Least air that should be left with all errors at their worst [m]: common practice, no source. */
export const leastClearance = 1e-3

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

export interface ClearanceLosses {
  readonly print: number
  readonly bearing: number
  readonly warp: number
  readonly deflection: number
}

/** Worst and likely clearance [m]; a gap that is drawn closed counts below zero from the start. */
export function staticClearance(gap: number, losses: ClearanceLosses): RunningClearance {
  const { print, bearing, warp, deflection } = losses
  const shut = Math.min(gap, 0)
  return runningClearance({
    nominal: Math.max(gap, 0),
    contributions: [
      { closing: deflection - shut },
      { halfWidth: print },
      { halfWidth: bearing },
      { halfWidth: warp },
    ],
  })
}

export const gapStack: ConcernRule = {
  code: 'gap-stack',
  title: 'Rotor and stator may touch',
  basis:
    'Air by the drawing, less cover and the standing-out corners of flat blocks on a drum, less bending, less print tolerance, bearing play and warp all at their worst at once; at least 1 mm must be left (common practice, no source). Heat and swelling come on top. Contact at the worst blocks the outdoor class; otherwise a warning.',
  judge: (chain) => {
    const { machine } = chain
    const { clearanceLosses } = machine.design.bench
    const losses = {
      print: nominal(clearanceLosses.print_mm) / 1000,
      bearing: nominal(clearanceLosses.bearing_mm) / 1000,
      warp: nominal(clearanceLosses.warp_mm) / 1000,
      deflection: nominal(clearanceLosses.deflection_mm) / 1000,
    }
    const { inner, outer } = drawnGap(machine)
    const gap = Math.min(inner, outer ?? inner)
    const { worst, likely } = staticClearance(gap, losses)
    if (worst >= leastClearance - 1e-12) return undefined
    const corner = cornerRise(machine)
    const shifted = outer !== undefined && inner + outer > 0 ? (outer - inner) / 2 : 0
    return {
      code: 'gap-stack',
      severity: worst < 0 ? severityFor(chain, ['outdoor']) : 'warning',
      path:
        machine.stator.winding.kind === 'serpentine' ? 'stator.winding.phases' : 'stator.winding.distance_mm',
      what:
        gap <= 0
          ? 'By the drawing the winding and the rotor are in each other’s way.'
          : worst < 0
            ? 'Rotor and stator can touch when the dimensions err together.'
            : 'Little air is left between rotor and stator when the dimensions err together.',
      why: 'Print tolerance, bearing play, warp and the bending under the magnets’ pull all eat from the same gap; heat, rust and a push of the wind take more.',
      figures: `By the drawing ${formatSi(gap, 'mm')}${
        gap === inner ? ' on the magnets’ side' : ' on the far side'
      }; at the worst ${formatSi(worst, 'mm')}, likely ${formatSi(likely, 'mm')}; wanted ${formatSi(leastClearance, 'mm')}.${
        corner > machine.rotor.cover
          ? ` The corners of the flat magnets stand ${formatSi(corner, 'mm')} beyond their faces.`
          : ''
      }`,
      remedies: [
        Math.abs(shifted) > 0.3e-3
          ? `Move the winding by ${formatSi(Math.abs(shifted), 'mm', 2)} ${shifted > 0 ? 'away from' : 'towards'} these magnets, into the middle of the gap.`
          : outer !== undefined
            ? `Set the two faces ${formatSi(2 * (leastClearance - worst), 'mm', 2)} farther apart with the winding in the middle, and see what it costs in volts.`
            : `Set the winding ${formatSi(leastClearance - worst, 'mm', 2)} farther from the magnets, and see what it costs in volts.`,
        'Make the winding thinner: a wider and flatter bundle.',
        'Stiffen the discs, true the rotor, take up the bearings, and enter what you measure.',
        `Turn it by hand with the rotor pushed and pulled along the shaft, then once more with the stator warm, before any power. ${turningCaution}`,
      ],
    }
  },
}
