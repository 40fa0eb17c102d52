/** Where the wire runs: every coil or serpentine of the machine as a reference shape with its copies. */
import { bundleFilaments, type Filament } from '../geometry/bundle.ts'
import {
  type CoilOutline,
  coilCurve,
  coilFilaments,
  coilMeanTurnLength,
  type HoleShape,
} from '../geometry/coil-outline.ts'
import { type Curve, curvePolyline, turnedCurve } from '../geometry/curve.ts'
import {
  type Serpentine,
  serpentineCurve,
  serpentineMeanTurnLength,
  serpentineSegment,
} from '../geometry/serpentine.ts'
import type { WindingSurface } from '../geometry/winding-surface.ts'
import type { CoilHole, CoilWinding, Machine, SerpentineWinding } from '../machine/machine.ts'
import { phaseBelts } from '../physics/winding/star-of-slots.ts'
import { levelAbove } from './air-gap-field.ts'

/** One shape of conductor; copies of it differ by their angle about the shaft only. */
export interface ConductorShape {
  /** Filaments over the bundle, of the whole path or of the part that repeats. */
  readonly filaments: readonly Filament[]
  /**
   * Angle about the shaft over which the filaments are also spread evenly: a wave's bundle is the wave turned by
   * its width, so one filament per depth stands for all across [rad]. 0 for coils.
   */
  readonly spreadAngle: number
  /** The whole path is this many copies of the filaments, turned by 2π/repeats. */
  readonly repeats: number
  /** Middle line of the whole path, closed. */
  readonly curve: Curve
  readonly turns: number
  /** Mean length of a turn [m]. */
  readonly turnLength: number
  readonly bundle: { readonly width: number; readonly thickness: number }
  /** Magnet face to the middle of the bundle [m]. */
  readonly distance: number
  /** How the linkage with a magnet at θ compares with the one at −θ, where the shape's symmetry tells. */
  readonly parity: 'even' | 'odd' | 'none'
}

/** A coil, or the serpentine of a phase, in its place. */
export interface Coil {
  /** From 1. */
  readonly number: number
  readonly shape: number
  /** Mechanical angle from the shape as it is described [rad]. */
  readonly angle: number
  /** From 0. */
  readonly phase: number
  readonly sense: 1 | -1
  /** Series group within the phase, from 0. */
  readonly group: number
}

export interface ConductorLayout {
  readonly shapes: readonly ConductorShape[]
  readonly coils: readonly Coil[]
  readonly phaseCount: number
  readonly groups: number
}

function surfaceAt(machine: Machine, distance: number, meanRadius: number): WindingSurface {
  const level = levelAbove(machine, distance)
  return machine.rotor.arrangement === 'drum'
    ? { kind: 'drum', radius: level, z: 0 }
    : { kind: 'disc', meanRadius, z: level }
}

/** Gauss points across and through a bundle. */
export type BundleOrders = readonly [across: number, normal: number]

/** Linkages within 5e-4 of finer ones, far inside what a magnet's grade leaves open. */
const usualOrders: BundleOrders = [3, 2]

function serpentineLayout(
  machine: Machine,
  winding: SerpentineWinding,
  orders: BundleOrders,
): ConductorLayout {
  const { polePairs, pitchRadius } = machine.rotor
  const bundle = { width: winding.bundleWidth, thickness: winding.bundleDepth }
  const shapes = winding.phases.map(({ distance }): ConductorShape => {
    const serpentine: Serpentine = {
      surface: surfaceAt(machine, distance, pitchRadius),
      polePairs,
      activeLength: winding.runLength,
      runSlant: winding.slant,
      crown: { kind: 'half-ellipse', height: winding.crownHeight },
      angle: 0,
    }
    const { surface } = serpentine
    return {
      filaments: bundleFilaments(
        (_, normal) => serpentineSegment(serpentine, { lateral: 0, normal }).segment,
        { across: [0, 0], normal: [-bundle.thickness / 2, bundle.thickness / 2] },
        orders,
      ),
      spreadAngle: bundle.width / (surface.kind === 'drum' ? surface.radius : surface.meanRadius),
      repeats: polePairs,
      curve: serpentineCurve(serpentine),
      turns: winding.turns,
      turnLength: serpentineMeanTurnLength(serpentine, bundle),
      bundle,
      distance,
      // half a turn about the middle of a run maps the wave on itself, reversed, and a drum's magnet to −θ
      parity: machine.rotor.arrangement === 'drum' ? 'odd' : 'none',
    }
  })
  return {
    shapes,
    coils: winding.phases.map(({ offset, sense }, phase) => ({
      number: phase + 1,
      shape: phase,
      angle: offset,
      phase,
      sense,
      group: 0,
    })),
    phaseCount: winding.phases.length,
    groups: 1,
  }
}

const holeShape = (hole: CoilHole): HoleShape =>
  hole.shape === 'round'
    ? { kind: 'round', diameter: hole.diameter }
    : hole.shape === 'rectangular'
      ? { kind: 'rectangular', width: hole.width, length: hole.length, cornerRadius: hole.cornerRadius }
      : {
          kind: 'wedge',
          innerWidth: hole.innerWidth,
          outerWidth: hole.outerWidth,
          length: hole.length,
          cornerRadius: hole.cornerRadius,
        }

/** The coil's outline at angle 0. */
export const coilOutline = (machine: Machine, winding: CoilWinding): CoilOutline => ({
  hole: holeShape(winding.hole),
  surface: surfaceAt(machine, winding.distance, winding.centreRadius),
  angle: 0,
})

/**
 * Phase and sense of every coil. Counts that leave a phase without coils have no belts to go by: the coils are then
 * dealt out in turn, as a builder would who counts to three, and the volts show what that is worth.
 */
function coilBelts({ coilCount, phaseCount }: CoilWinding, polePairs: number) {
  const belts = phaseBelts({ coilCount, phaseCount, polePairs })
  const phases = new Set(belts.map(({ phase }) => phase))
  if (phases.size === phaseCount) return belts
  return belts.map(({ sense }, k) => ({ phase: k % phaseCount, sense }))
}

function coilLayout(machine: Machine, winding: CoilWinding, orders: BundleOrders): ConductorLayout {
  const outline = coilOutline(machine, winding)
  const bundle = { width: winding.legWidth, thickness: winding.bundleDepth }
  const belts = coilBelts(winding, machine.rotor.polePairs)
  const placed = Array.from({ length: winding.phaseCount }, () => 0)
  const perGroup = Array.from({ length: winding.phaseCount }, (_, phase) =>
    Math.ceil(belts.filter((belt) => belt.phase === phase).length / winding.parallelGroups),
  )
  return {
    shapes: [
      {
        filaments: coilFilaments(outline, bundle, orders),
        spreadAngle: 0,
        repeats: 1,
        curve: coilCurve(outline, { outward: winding.legWidth / 2, normal: 0 }),
        turns: winding.turns,
        turnLength: coilMeanTurnLength(outline, bundle),
        bundle,
        distance: winding.distance,
        // a mirror through the coil's axis reverses the path and the magnet's pole alike
        parity: 'even',
      },
    ],
    coils: belts.map(({ phase, sense }, k): Coil => {
      const swapped = winding.reversedCoils.includes(k + 1) !== winding.reversedPhases.includes(phase + 1)
      const place = placed[phase]!
      placed[phase] = place + 1
      return {
        number: k + 1,
        shape: 0,
        angle: (2 * Math.PI * k) / winding.coilCount,
        phase,
        sense: (swapped ? -sense : sense) as 1 | -1,
        group: Math.floor(place / perGroup[phase]!),
      }
    }),
    phaseCount: winding.phaseCount,
    groups: winding.parallelGroups,
  }
}

export function conductorLayout(machine: Machine, orders: BundleOrders = usualOrders): ConductorLayout {
  const { winding } = machine.stator
  return winding.kind === 'serpentine'
    ? serpentineLayout(machine, winding, orders)
    : coilLayout(machine, winding, orders)
}

/** Middle line of every coil in its place, flat points, for drawings and for Neumann sums. */
export function coilPolyline(layout: ConductorLayout, coil: Coil, sagitta: number): Float64Array {
  return curvePolyline(turnedCurve(layout.shapes[coil.shape]!.curve, coil.angle), { sagitta })
}
