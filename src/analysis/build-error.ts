/** A build as it came out: where every magnet and coil stands beside its place, and what each is worth. */
import type { Machine } from '../machine/machine.ts'
import { type ToleranceName, toleranceNames } from '../machine/tolerance.ts'
import { type BuildDraw, nineOfTen, nineOfTenArrows, runsOf } from './build-draw.ts'
import type { ConductorLayout } from './conductor-layout.ts'

/** One magnet beside its place. */
export interface MagnetError {
  /** About the shaft [rad]. */
  readonly around: number
  /** Along the radius of a disc, along the shaft of a drum [m]. */
  readonly across: number
  /** Its face farther from the winding [m], and the face opposite that place [m]. */
  readonly away: number
  readonly apart: number
  /** How far it stands out of its rotor towards the winding, wobble and centring included [m]. */
  readonly height: number
  /** Along the radius, for the balance [m]. */
  readonly outward: number
  /** Of its strength, over the drawing's [1]. */
  readonly strength: number
}

/** One coil, or the wave of a phase, beside its place. */
export interface CoilError {
  readonly around: number
  readonly across: number
  readonly away: number
  /** Half of what a wave's distance swings by round the machine [m]. */
  readonly swing: number
  /** Each run of a wave about the shaft, beside the wave [rad]. */
  readonly runs: Float64Array
  /** Deeper bundle [m], longer turns [1], turns more or fewer. */
  readonly depth: number
  readonly turnLength: number
  readonly turns: number
}

export interface RotorError {
  /** Ring by ring. */
  readonly magnets: readonly (readonly MagnetError[])[]
  /** Centre of each ring off the axis [m], and how far its face leans out at the magnets [m]; x, y. */
  readonly centre: readonly (readonly [number, number])[]
  readonly wobble: readonly (readonly [number, number])[]
  /** Opposite face farther off [m]. */
  readonly apart: number
}

export interface StatorError {
  readonly coils: readonly CoilError[]
  /** Of the wire's diameter [1]. */
  readonly wire: number
}

export interface BuildError extends RotorError, StatorError {}

/** What the tolerances are multiplied by, one by one: 1 as the document says, ½ if halved, 0 for none. */
export type Scale = (name: ToleranceName) => number

/** Whole turns off, from an even number: `chance` of being off, half of it each way, all amounts alike. */
export function turnsOff(u: number, chance: number, most: number): number {
  const amount = (share: number) => Math.min(most, 1 + Math.floor(share * most))
  if (u < chance / 2) return -amount(1 - u / (chance / 2))
  if (u > 1 - chance / 2) return amount(1 - (1 - u) / (chance / 2))
  return 0
}

type Arrow = readonly [number, number]

/** Component of an arrow along a direction, and at right angles to it in the sense of turning. */
const along = ([x, y]: Arrow, angle: number) => x * Math.cos(angle) + y * Math.sin(angle)
const beside = ([x, y]: Arrow, angle: number) => y * Math.cos(angle) - x * Math.sin(angle)

/** Outward is towards the winding on a drum wound outside, away from it on one wound inside; on a disc neither. */
const outwardSense = ({ rotor }: Machine): -1 | 0 | 1 =>
  rotor.arrangement !== 'drum' ? 0 : rotor.windingSide === 'inside' ? -1 : 1

/** Numbers of a draw in the tolerances' own units; 0 where the machine has no such error. */
function scaled({ tolerances }: Machine, draw: BuildDraw, scale: Scale) {
  const width = (name: ToleranceName) => scale(name) * tolerances.width[name]
  const normal = (name: ToleranceName, k: number) => (width(name) / nineOfTen) * (draw[name][k] ?? 0)
  const arrow = (name: ToleranceName, k: number, share = 1): Arrow => {
    const σ = (share * width(name)) / nineOfTenArrows
    return [σ * (draw[name][2 * k] ?? 0), σ * (draw[name][2 * k + 1] ?? 0)]
  }
  return { width, normal, arrow }
}

/** The errors that a draw means for the rotor. */
export function rotorError(machine: Machine, draw: BuildDraw, scale: Scale = () => 1): RotorError {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const R = rotor.pitchRadius
  const towards = outwardSense(machine)
  const { normal, arrow } = scaled(machine, draw, scale)
  const centre = rotor.rings.map((_, r) => arrow('rotorCentre_mm', r))
  // a dial swings by twice what a face leans out
  const wobble = rotor.rings.map((_, r) => arrow('discWobble_mm', r, 0.5))
  const apart = normal('faceDistance_mm', 0)
  let first = 0
  const magnets = rotor.rings.map((ring, r) => {
    const from = first
    first += ring.length
    return ring.map(({ shift }, k): MagnetError => {
      const α = (2 * Math.PI * k) / ring.length + shift
      const at = from + k
      const off = along(centre[r]!, α)
      const seat = normal('magnetHeight_mm', at)
      const lean = along(wobble[r]!, α)
      const height = seat + lean + towards * off
      const across = normal('magnetAcross_mm', at) + (drum ? 0 : off)
      // of two discs the winding keeps its distance from the first; the second comes nearer by closing the gap
      const lower = along(wobble[0]!, α)
      const upper = rotor.rings.length > 1 ? along(wobble[1]!, α) : 0
      return {
        around: (normal('magnetAround_mm', at) + beside(centre[r]!, α)) / R,
        across,
        away: r === 0 ? -(height - lean) - lower : -lower,
        apart: apart - lower - upper - (r === 0 ? 0 : seat),
        height,
        outward: drum ? towards * seat + off : across,
        strength: 1 + normal('magnetStrength_percent', at),
      }
    })
  })
  return { magnets, centre, wobble, apart }
}

/** The errors that a draw means for the stator. */
export function statorError(
  machine: Machine,
  layout: ConductorLayout,
  draw: BuildDraw,
  scale: Scale = () => 1,
): StatorError {
  const { rotor, stator, tolerances } = machine
  const drum = rotor.arrangement === 'drum'
  const towards = outwardSense(machine)
  const { width, normal, arrow } = scaled(machine, draw, scale)
  const tilt = arrow('statorTilt_mm', 0, 0.5)
  const off = arrow('statorCentre_mm', 0)
  const common = normal('statorDistance_mm', 0)
  const { winding } = stator
  const wave = winding.kind === 'serpentine'
  const coilRadius = winding.kind === 'coils' && !drum ? winding.centreRadius : rotor.pitchRadius
  let run = layout.coils.length
  const coils = layout.coils.map(({ angle }, c): CoilError => {
    const β = angle
    const swing: Arrow = drum ? [towards * off[0], towards * off[1]] : tilt
    const runs = Float64Array.from(
      { length: runsOf(layout, c) },
      () => normal('coilAround_mm', run++) / coilRadius,
    )
    const { turns } = layout.shapes[layout.coils[c]!.shape]!
    const most = Math.min(tolerances.mostTurnsOff, turns - 1)
    return {
      // a wave that stands beside the axis is ahead on one side and behind on the other
      around: (normal('coilAround_mm', c) + (wave ? 0 : beside(off, β))) / coilRadius,
      across: normal('coilAcross_mm', c) + (drum || wave ? 0 : along(off, β)),
      away: common + normal('coilHeight_mm', c) + (wave ? 0 : along(swing, β)),
      swing: wave ? Math.hypot(...swing) : 0,
      runs,
      depth: normal('bundleDepth_mm', c),
      turnLength: normal('turnLength_percent', c),
      turns: most < 1 ? 0 : turnsOff(draw.miscounted_percent[c] ?? 0.5, width('miscounted_percent'), most),
    }
  })
  return { coils, wire: normal('wireDiameter_percent', 0) }
}

export const buildError = (
  machine: Machine,
  layout: ConductorLayout,
  draw: BuildDraw,
  scale?: Scale,
): BuildError => ({ ...rotorError(machine, draw, scale), ...statorError(machine, layout, draw, scale) })

const nothing = Object.fromEntries(toleranceNames.map((name) => [name, new Float64Array(0)])) as Record<
  ToleranceName,
  Float64Array
>

/** A build that came out as drawn. */
export const drawnBuild = (machine: Machine, layout: ConductorLayout): BuildError =>
  buildError(machine, layout, nothing)

/** Tolerances of the rotor; the others are the stator's. */
export const isRotorTolerance = (name: ToleranceName): boolean => /^(magnet|rotor|disc|face)/.test(name)
