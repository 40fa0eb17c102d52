/** Help in shaping blades: chord and twist for a tip-speed ratio, straight lines for carving, and what each shape costs. */

import { ownSection } from '../machine/blade-polar.ts'
import type { Machine } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { type BladeRotor, rotorCoefficients } from '../physics/aerodynamics/blade-element.ts'
import { elementStates } from '../physics/aerodynamics/element-state.ts'
import { pipeCamber, pipeChord } from '../physics/aerodynamics/pipe-blade.ts'
import { refuse } from '../refusal/require.ts'
import { bladeRotor, rotorCurve, type ShapedBlades, viscosity } from './blade-rotor.ts'
import { windThatStarts } from './power-curve.ts'
import { siteAirDensity } from './site-air.ts'

/** What the blank or the machine that makes the blade allows. */
export interface BladeLimits {
  /** Widest chord whatever its angle [m]. */
  readonly chord?: number
  /** Plank: across the disc and along the shaft [m]; a turned chord needs both. */
  readonly plankWidth?: number
  readonly plankDepth?: number
  /** Pipe the blade is cut from, to the middle of its wall [m]. */
  readonly pipeRadius?: number
}

export interface BladeDesignOptions {
  /** λ to shape for; the document's where left out, of drawn blades their own best. */
  readonly tipSpeedRatio?: number
  readonly bladeCount?: number
  readonly limits?: BladeLimits
  /** Wind in which shapes are compared [m/s]. */
  readonly wind?: number
}

/** Wind in which shapes are compared where nothing is said [m/s]: where a small machine does most of its work. */
export const usualDesignWind = 6

/** Strongest arch a pipe blade is given, over its chord: no section of the house was measured with more. */
export const greatestPipeCamber = 0.1

export interface BladeStation {
  /** [m] */
  readonly radius: number
  readonly chord: number
  /** Chord to disc, the pitch in it [rad]. */
  readonly twist: number
  /** At the compared tip-speed ratio and wind. */
  readonly reynolds: number
  readonly attackAngle: number
  /** Arch of the pipe's section over its chord, where a pipe is given and wide enough. */
  readonly camber: number | undefined
}

export interface BladeVariant {
  readonly kind: 'as drawn' | 'optimum' | 'straight'
  readonly shape: BladeRotor
  /** C_P at the compared tip-speed ratio and wind. */
  readonly power: number
  /** C_T there. */
  readonly thrust: number
  /** Blade area over swept area. */
  readonly solidity: number
  /** Torque at rest in the compared wind [N·m]. */
  readonly restTorque: number
  /** Wind that turns it from rest against the shaft's friction [m/s]; infinite where none does. */
  readonly startWind: number
  /** A limit made some chord narrower than wanted. */
  readonly limited: boolean
  readonly stations: readonly BladeStation[]
}

export interface BladeDesign {
  readonly tipSpeedRatio: number
  readonly wind: number
  readonly bladeCount: number
  readonly radius: number
  readonly section: string
  /** Lowest and highest Reynolds number of the section's table. */
  readonly reynoldsRange: readonly [number, number]
  /** The drawn blades first where there are any, then the optimum, then straight lines. */
  readonly variants: readonly BladeVariant[]
}

/** Rows of the station table of a computed shape. */
const stationRows = 9

/** The hub of a straight blade lies inside the stations whose twist is kept. */
const straightestHub = 0.4

/** Widest chord at a twist. */
function greatestChord(limits: BladeLimits, twist: number): number {
  const { chord, plankWidth, plankDepth, pipeRadius } = limits
  const across = Math.abs(Math.cos(twist))
  const along = Math.abs(Math.sin(twist))
  return Math.min(
    chord ?? Number.POSITIVE_INFINITY,
    plankWidth === undefined ? Number.POSITIVE_INFINITY : plankWidth / Math.max(across, 1e-9),
    plankDepth === undefined ? Number.POSITIVE_INFINITY : plankDepth / Math.max(along, 1e-9),
    pipeRadius === undefined
      ? Number.POSITIVE_INFINITY
      : pipeChord({ camber: greatestPipeCamber, pipeRadius }),
  )
}

function narrowed(shape: BladeRotor, limits: BladeLimits): { shape: BladeRotor; limited: boolean } {
  const chord = shape.chord.map((c, i) => Math.min(c, greatestChord(limits, shape.twist[i]! + shape.pitch)))
  return { shape: { ...shape, chord }, limited: chord.some((c, i) => c < shape.chord[i]! * (1 - 1e-9)) }
}

const bladeArea = ({ station, chord, hubRadius, radius, bladeCount }: BladeRotor): number => {
  const at = piecewiseLinear(station, chord)
  const steps = 200
  let area = 0
  for (let k = 0; k < steps; k++)
    area += (at(hubRadius + ((k + 0.5) / steps) * (radius - hubRadius)) * (radius - hubRadius)) / steps
  return bladeCount * area
}

function stationsOf(
  shape: BladeRotor,
  {
    rows,
    tipSpeedRatio,
    wind,
    limits,
  }: {
    readonly rows: readonly number[]
    readonly tipSpeedRatio: number
    readonly wind: number
    readonly limits: BladeLimits
  },
): BladeStation[] {
  const air = { tipSpeedRatio, windSpeed: wind, kinematicViscosity: viscosity }
  const states = elementStates(shape, air, { elements: 40 })
  const along = (values: Float64Array) => piecewiseLinear(states.distance, values)
  const [attack, reynolds] = [along(states.attackAngle), along(states.reynolds)]
  const [chord, twist] = [
    piecewiseLinear(shape.station, shape.chord),
    piecewiseLinear(shape.station, shape.twist),
  ]
  const { pipeRadius } = limits
  return rows.map((radius) => ({
    radius,
    chord: chord(radius),
    twist: twist(radius) + shape.pitch,
    reynolds: reynolds(radius),
    attackAngle: attack(radius),
    camber:
      pipeRadius !== undefined && chord(radius) <= 2 * pipeRadius
        ? pipeCamber({ chord: chord(radius), pipeRadius })
        : undefined,
  }))
}

/** The shapes a maker chooses between, compared at one tip-speed ratio in one wind. */
export function bladeDesign(machine: Machine, options: BladeDesignOptions = {}): BladeDesign {
  const { blades, site } = machine
  if (blades.kind !== 'optimum' && blades.kind !== 'stations')
    refuse({
      name: 'blades.kind',
      condition: 'optimum or stations: other blades have no chord and twist to design',
      value: blades.kind,
      code: 'not-a-choice',
    })
  const { limits = {}, wind = usualDesignWind } = options
  const bladeCount = options.bladeCount ?? blades.bladeCount
  const tipSpeedRatio =
    options.tipSpeedRatio ??
    (blades.kind === 'optimum' ? blades.tipSpeedRatio : rotorCurve(machine).best.tipSpeedRatio)
  if (!(tipSpeedRatio > 0))
    refuse({
      name: 'tipSpeedRatio',
      condition: 'above zero; the drawn blades never drive the shaft, so it must be given',
      value: tipSpeedRatio,
      code: 'below-minimum',
    })
  const { section, ownPolars, radius, hubRadius, pitch } = blades
  const common = { section, ownPolars, radius, hubRadius, bladeCount }
  const ideal: ShapedBlades = { ...common, kind: 'optimum', pitch: 0, tipSpeedRatio, straightTaper: false }
  const density = siteAirDensity(site)
  const variant = (kind: BladeVariant['kind'], drawn: BladeRotor, rows: readonly number[]): BladeVariant => {
    const { shape, limited } =
      kind === 'as drawn' ? { shape: drawn, limited: false } : narrowed(drawn, limits)
    const stream = { windSpeed: wind, kinematicViscosity: viscosity }
    const { power, thrust } = rotorCoefficients(shape, tipSpeedRatio, { stream })
    const torqueAtRest = (windSpeed: number) =>
      0.5 *
      density *
      Math.PI *
      radius ** 3 *
      windSpeed ** 2 *
      rotorCoefficients(shape, 0, { stream: { ...stream, windSpeed } }).torque
    return {
      kind,
      shape,
      power,
      thrust,
      solidity: bladeArea(shape) / (Math.PI * radius ** 2),
      restTorque: torqueAtRest(wind),
      startWind: windThatStarts(torqueAtRest, machine.shaft.startingFriction),
      limited,
      stations: stationsOf(shape, { rows, tipSpeedRatio, wind, limits }),
    }
  }
  const even = Array.from(
    { length: stationRows },
    (_, k) => hubRadius + ((radius - hubRadius) * k) / (stationRows - 1),
  )
  const optimum = bladeRotor(ideal)
  const variants = [variant('optimum', optimum, even)]
  if (hubRadius <= straightestHub * radius)
    variants.push(variant('straight', bladeRotor({ ...ideal, straightTaper: true }), even))
  if (blades.kind === 'stations')
    variants.unshift(
      variant(
        'as drawn',
        bladeRotor({ ...blades, pitch }),
        blades.stations.map((station) => station.radius),
      ),
    )
  const polars = optimum.polars!
  return {
    tipSpeedRatio,
    wind,
    bladeCount,
    radius,
    section: ownPolars === undefined ? section : ownSection,
    reynoldsRange: [polars[0]!.reynolds, polars[polars.length - 1]!.reynolds],
    variants,
  }
}
