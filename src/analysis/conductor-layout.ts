/** Where the wire runs: every coil or serpentine of the machine as a reference shape with its copies. */
import { bundleFilaments, type Filament } from '../geometry/bundle.ts'
import { type Curve, curvePolyline, turnedCurve } from '../geometry/curve.ts'
import { serpentineCurve, serpentineMeanTurnLength, serpentineSegment } from '../geometry/serpentine.ts'
import { type PlacedWave, waveRoom } from '../geometry/wave-room.ts'
import type { WindingSurface } from '../geometry/winding-surface.ts'
import type { CoilForm } from '../machine/coil-shape/coil-shape.ts'
import { coilForm } from '../machine/coil-shape/index.ts'
import type { CoilWinding, Machine, SerpentineWinding } from '../machine/machine.ts'
import { type WaveFields, waveOn } from '../machine/wave.ts'
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
  /** Magnet face to the middle of the bundle [m]; of legs on two levels, to that of the nearer. */
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
type BundleOrders = readonly [across: number, normal: number]

/** Gauss points by a bundle's side over the pole pitch: one, and one more beyond each limit. */
const acrossLimits = [0.03, 0.12, 0.36, 0.6, 0.9] as const
const throughLimits = [0.03, 0.24, 0.65] as const

const pointsFor = (share: number, limits: readonly number[]): number =>
  1 + limits.filter((limit) => share > limit).length

/** As many as keep a linkage within 5e-4 of that with far finer ones, well inside what a magnet's grade leaves open. */
function bundleOrders(machine: Machine, bundle: ConductorShape['bundle']): BundleOrders {
  const { pitchRadius, poleCount } = machine.rotor
  const pitch = (2 * Math.PI * pitchRadius) / poleCount
  return [pointsFor(bundle.width / pitch, acrossLimits), pointsFor(bundle.thickness / pitch, throughLimits)]
}

/** Away from the magnets against the outward normal of the winding's surface. */
const awayOf = ({ rotor }: Machine): 1 | -1 =>
  rotor.arrangement === 'drum' && rotor.windingSide === 'inside' ? -1 : 1

const waveFields = (machine: Machine, winding: SerpentineWinding): WaveFields => ({
  ...winding,
  polePairs: machine.rotor.polePairs,
  lifts: winding.phases.map(({ crownLift }) => crownLift),
})

/** Turns of each layer: as even as whole turns can be. */
const layerTurns = ({ turns, layers }: SerpentineWinding): number[] =>
  Array.from(
    { length: layers },
    (_, k) => Math.floor((turns * (k + 1)) / layers) - Math.floor((turns * k) / layers),
  )

function waveShape(
  machine: Machine,
  winding: SerpentineWinding,
  place: { readonly distance: number; readonly lift: number; readonly turns: number },
  orders: BundleOrders | undefined,
): ConductorShape {
  const { polePairs, pitchRadius } = machine.rotor
  const { distance, lift, turns } = place
  const bundle = { width: winding.bundleWidth, thickness: winding.bundleDepth }
  const surface = surfaceAt(machine, distance, pitchRadius)
  const serpentine = waveOn(waveFields(machine, winding), { surface, away: awayOf(machine), lift, angle: 0 })
  return {
    filaments: bundleFilaments(
      (_, normal) => serpentineSegment(serpentine, { lateral: 0, normal }).segment,
      { across: [0, 0], normal: [-bundle.thickness / 2, bundle.thickness / 2] },
      orders ?? bundleOrders(machine, bundle),
    ),
    spreadAngle: bundle.width / (surface.kind === 'drum' ? surface.radius : surface.meanRadius),
    repeats: polePairs,
    curve: serpentineCurve(serpentine),
    turns,
    turnLength: serpentineMeanTurnLength(serpentine, bundle),
    bundle,
    distance,
    // half a turn about the middle of a run maps the wave on itself, reversed, and a drum's magnet to −θ
    parity: machine.rotor.arrangement === 'drum' ? 'odd' : 'none',
  }
}

/** Phase at whose terminals a phase of the winding, counted from 0, comes out: its own unless two were swapped. */
export const terminalPhase = ({ defects }: Pick<Machine, 'defects'>, phase: number): number =>
  defects.swappedPhases.reduce(
    (at, [one, other]) => (at === one - 1 ? other - 1 : at === other - 1 ? one - 1 : at),
    phase,
  )

/** Whether defects leave a coil the wrong way round: its own ends swapped, or those of its phase, but not both. */
const isReversed = ({ defects }: Machine, number: number, phase: number): boolean =>
  [
    ...defects.reversedCoils.filter((coil) => coil === number),
    ...defects.reversedPhases.filter((one) => one === phase + 1),
  ].length %
    2 ===
  1

/** Every layer of every phase is a wave of its own, the layers of a phase in series. */
function serpentineLayout(
  machine: Machine,
  winding: SerpentineWinding,
  orders: BundleOrders | undefined,
): ConductorLayout {
  const perLayer = layerTurns(winding)
  const waves = winding.phases.flatMap(({ offset, distance, crownLift, sense }, phase) =>
    perLayer.map((turns, layer) => ({
      place: { distance: distance + layer * winding.layerPitch, lift: crownLift, turns },
      coil: { angle: offset, phase, sense, group: 0 },
    })),
  )
  return {
    shapes: waves.map(({ place }) => waveShape(machine, winding, place, orders)),
    coils: waves.map(
      ({ coil }, k): Coil => ({
        ...coil,
        number: k + 1,
        shape: k,
        phase: terminalPhase(machine, coil.phase),
        sense: isReversed(machine, k + 1, coil.phase) ? (-coil.sense as 1 | -1) : coil.sense,
      }),
    ),
    phaseCount: winding.phases.length,
    groups: 1,
  }
}

/** Least room between the waves of two phases; undefined for a single phase. */
function leastWaveRoom(machine: Machine, winding: SerpentineWinding): number | undefined {
  const fields = waveFields(machine, winding)
  const depth = winding.bundleDepth + (winding.layers - 1) * winding.layerPitch
  const waves = winding.phases.map(
    ({ distance, offset, crownLift }): PlacedWave => ({
      serpentine: waveOn(fields, {
        surface: surfaceAt(machine, distance + (depth - winding.bundleDepth) / 2, machine.rotor.pitchRadius),
        away: awayOf(machine),
        lift: crownLift,
        angle: offset,
      }),
      bundle: { width: winding.bundleWidth, thickness: depth },
    }),
  )
  return waves.reduce<number | undefined>(
    (least, wave, k) =>
      waves
        .slice(0, k)
        .map((other) => waveRoom(other, wave).room)
        .reduce<number | undefined>((low, room) => Math.min(low ?? room, room), least),
    undefined,
  )
}

/** Every coil as it stands at angle 0. */
export const coilFormOf = (machine: Machine, winding: CoilWinding): CoilForm =>
  coilForm(winding.hole, {
    surface: surfaceAt(machine, winding.distance, winding.centreRadius),
    away: awayOf(machine),
    legWidth: winding.legWidth,
    bundleDepth: winding.bundleDepth,
    coilCount: winding.coilCount,
  })

/**
 * Room between neighbouring coils, or between the waves of two phases [m]; below zero they are in each other's way.
 * Undefined where there is nothing beside.
 */
export function neighbourRoom(machine: Machine): number | undefined {
  const { winding } = machine.stator
  if (winding.kind === 'serpentine') return leastWaveRoom(machine, winding)
  const { room } = coilFormOf(machine, winding)
  return room === Number.MAX_VALUE ? undefined : room
}

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

function coilLayout(
  machine: Machine,
  winding: CoilWinding,
  orders: BundleOrders | undefined,
): ConductorLayout {
  const form = coilFormOf(machine, winding)
  const bundle = { width: winding.legWidth, thickness: winding.bundleDepth }
  const belts = coilBelts(winding, machine.rotor.polePairs)
  const placed = Array.from({ length: winding.phaseCount }, () => 0)
  const perGroup = Array.from({ length: winding.phaseCount }, (_, phase) =>
    Math.ceil(belts.filter((belt) => belt.phase === phase).length / winding.parallelGroups),
  )
  const unlikeGroups = winding.groupCoils?.flatMap((count, group) =>
    Array.from({ length: count }, () => group),
  )
  return {
    shapes: [
      {
        filaments: bundleFilaments(
          form.turn,
          { across: form.across, normal: [-bundle.thickness / 2, bundle.thickness / 2] },
          orders ?? bundleOrders(machine, bundle),
        ),
        spreadAngle: 0,
        repeats: 1,
        curve: form.turn((form.across[0] + form.across[1]) / 2, 0),
        turns: winding.turns,
        turnLength: form.turnLength,
        bundle,
        distance: winding.distance,
        parity: form.parity,
      },
    ],
    coils: belts.map(({ phase, sense }, k): Coil => {
      const declared = winding.reversedCoils.includes(k + 1) !== winding.reversedPhases.includes(phase + 1)
      const swapped = declared !== isReversed(machine, k + 1, phase)
      const place = placed[phase]!
      placed[phase] = place + 1
      return {
        number: k + 1,
        shape: 0,
        angle: winding.offset + (2 * Math.PI * k) / winding.coilCount,
        phase: terminalPhase(machine, phase),
        sense: (swapped ? -sense : sense) as 1 | -1,
        group: unlikeGroups?.[place] ?? Math.floor(place / perGroup[phase]!),
      }
    }),
    phaseCount: winding.phaseCount,
    groups: winding.parallelGroups,
  }
}

/** With as many filaments as the bundles need, or as `orders` says. */
export function conductorLayout(machine: Machine, orders?: BundleOrders): ConductorLayout {
  const { winding } = machine.stator
  return winding.kind === 'serpentine'
    ? serpentineLayout(machine, winding, orders)
    : coilLayout(machine, winding, orders)
}

/** Middle line of every coil in its place, flat points, for drawings and for Neumann sums. */
export function coilPolyline(layout: ConductorLayout, coil: Coil, sagitta: number): Float64Array {
  return curvePolyline(turnedCurve(layout.shapes[coil.shape]!.curve, coil.angle), { sagitta })
}
