/** The blades of a machine as a rotor of known shape, and its coefficients against tip-speed ratio. */
import { type SectionName, sections } from '../data/airfoil/index.ts'
import type { Blades, Machine } from '../machine/machine.ts'
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import {
  type BladeRotor,
  type ElementOptions,
  rotorCoefficients,
  runawayTipSpeedRatio,
} from '../physics/aerodynamics/blade-element.ts'
import { optimumRotor, straightenedRotor } from '../physics/aerodynamics/optimum-rotor.ts'
import { type Polar, polarAtReynolds } from '../physics/aerodynamics/polar.ts'
import { powerTableCoefficients } from '../physics/aerodynamics/power-table.ts'
import { completedPolars } from '../physics/aerodynamics/section-family.ts'
import { windCoefficientTables } from '../physics/aerodynamics/wind-coefficient.ts'
import { type TurnTorque, verticalCurve } from './vertical-rotor.ts'

export interface RotorCurve {
  /** λ, rising from 0 to a little past runaway. */
  readonly tipSpeedRatio: Float64Array
  /** C_P and C_Q at each. */
  readonly power: Float64Array
  readonly torque: Float64Array
  readonly thrust: Float64Array
  /** Greatest C_P and where it is. */
  readonly best: { readonly tipSpeedRatio: number; readonly power: number }
  /** λ at which the unloaded rotor stops gaining speed. */
  readonly runaway: number
  /** Shape behind the curve, undefined for a table. */
  readonly shape: BladeRotor | undefined
  /** The same at several winds, rising, where the Reynolds number makes them differ; the curve above is that of 6 m/s. */
  readonly byWind?: readonly WindCurve[]
  /** Torque round the turn and at rest, of an upright rotor. */
  readonly turn?: TurnTorque
}

/** Coefficients in one wind, at the tip-speed ratios of the curve. */
export interface WindCurve {
  /** [m/s] */
  readonly wind: number
  readonly power: Float64Array
  readonly torque: Float64Array
  readonly thrust: Float64Array
}

/** Points of the curve; the table between them is a shape-keeping cubic. */
const curvePoints = 32

/** Kinematic viscosity of air at 15 °C [m²/s]; the Reynolds number of a blade needs no better. */
export const viscosity = 1.46e-5

/** Wind at which the blades' Reynolds number is taken [m/s]: where a small machine does most of its work. */
const typicalWind = 6

/**
 * Winds whose curves are computed [m/s]; between them straight lines in the wind's logarithm, beyond them the end is held.
 * The typical one comes first: its curve is the one that is shown.
 */
const curveWinds = [typicalWind, 3, 12] as const

/** Wind of the greatest Reynolds number, where an unloaded rotor runs fastest. */
const fastWind: ElementOptions = { stream: { windSpeed: 12, kinematicViscosity: viscosity } }

const sectionPolars = new Map<string, readonly Polar[]>()

/** Polars of a section of the house, each to the largest angle measured at any Reynolds number. */
function polarsOfSection(name: string): readonly Polar[] {
  const kept = sectionPolars.get(name)
  if (kept) return kept
  const rad = Math.PI / 180
  const polars = completedPolars(
    sections[name as SectionName].map((table) => ({
      angle: Float64Array.from(table.rows, ([α]) => α * rad),
      lift: Float64Array.from(table.rows, ([, lift]) => lift),
      drag: Float64Array.from(table.rows, ([, , drag]) => drag),
      reynolds: table.reynolds,
    })),
  )
  sectionPolars.set(name, polars)
  return polars
}

/** The section's polars: the maker's own where they are given. */
export function polarsOf({
  section,
  ownPolars,
}: Pick<ShapedBlades, 'section' | 'ownPolars'>): readonly Polar[] {
  if (ownPolars === undefined) return polarsOfSection(section)
  return completedPolars(
    ownPolars.map(({ reynolds, rows }) => ({
      reynolds,
      angle: Float64Array.from(rows, ({ angle }) => angle),
      lift: Float64Array.from(rows, ({ lift }) => lift),
      drag: Float64Array.from(rows, ({ drag }) => drag),
    })),
  )
}

/** Reynolds number at three quarters of the radius, chord `chord`, in the typical wind. */
const reynoldsAt = (chord: number, tipSpeedRatio: number): number =>
  (typicalWind * Math.hypot(1, 0.75 * tipSpeedRatio) * chord) / viscosity

/** Blades whose shape is known. */
export type ShapedBlades = Extract<Blades, { kind: 'optimum' | 'stations' }>

export function bladeRotor(blades: ShapedBlades): BladeRotor {
  const { bladeCount, radius, hubRadius, pitch } = blades
  const polars = polarsOf(blades)
  if (blades.kind === 'stations') {
    const station = Float64Array.from(blades.stations, (at) => at.radius)
    const chord = Float64Array.from(blades.stations, (at) => at.chord)
    const outer = monotoneCubic(station, chord)(0.75 * radius)
    // the optimum rotor's σ C_l λ_r² = 16/9 far from the hub, with a lift coefficient of one, gives its λ
    const solidity = (bladeCount * outer) / (2 * Math.PI * 0.75 * radius)
    return {
      bladeCount,
      radius,
      hubRadius,
      pitch,
      polar: polarAtReynolds(polars, reynoldsAt(outer, Math.sqrt(16 / (9 * solidity * 0.75 ** 2)))),
      station,
      chord,
      twist: Float64Array.from(blades.stations, (at) => at.twist),
      polars,
      stallDelay: true,
    }
  }
  const request = {
    bladeCount,
    radius,
    hubRadius: Math.max(hubRadius, 0.02 * radius),
    tipSpeedRatio: blades.tipSpeedRatio,
    greatestChord: 0.25 * radius,
  }
  const shapeWith = (polar: Polar) => optimumRotor({ ...request, polar })
  const first = shapeWith(polars[0]!)
  const chord = monotoneCubic(first.station, first.chord)(0.75 * radius)
  const ideal = shapeWith(polarAtReynolds(polars, reynoldsAt(chord, blades.tipSpeedRatio)))
  const shape = blades.straightTaper ? straightenedRotor(ideal, { twist: true }) : ideal
  return { ...shape, pitch, polars, stallDelay: true }
}

function bestOf(tipSpeedRatio: Float64Array, power: Float64Array): RotorCurve['best'] {
  const at = monotoneCubic(tipSpeedRatio, power)
  let best = { tipSpeedRatio: 0, power: 0 }
  const last = tipSpeedRatio[tipSpeedRatio.length - 1]!
  for (let k = 0; k <= 400; k++) {
    const λ = (last * k) / 400
    if (at(λ) > best.power) best = { tipSpeedRatio: λ, power: at(λ) }
  }
  return best
}

/**
 * The section with its least drag changed by `factor`, and as much added to the drag at every angle: rough wood and a
 * thick trailing edge cost friction, which hardly matters once the section has stalled.
 */
function withDrag(polar: Polar, factor: number): Polar {
  if (factor === 1) return polar
  const more = (factor - 1) * Math.min(...polar.drag)
  return { ...polar, drag: polar.drag.map((drag) => drag + more) }
}

/** A coarse blade finds where to look, the usual one where it is. */
function runawayOf(shape: BladeRotor): number {
  const near = runawayTipSpeedRatio(shape, { ...fastWind, elements: 6 })
  const torque = (λ: number) => rotorCoefficients(shape, λ, fastWind).torque
  const [low, high] = [0.85 * near, 1.15 * near]
  return torque(low) > 0 && torque(high) < 0
    ? root(torque, [low, high], 1e-4 * near)
    : runawayTipSpeedRatio(shape, fastWind)
}

/** Curve of the machine's blades, from rest to just past runaway; `dragFactor` on the least drag of their sections. */
export function rotorCurve({ blades }: Machine, dragFactor = 1): RotorCurve {
  if ('height' in blades)
    return verticalCurve(blades, {
      winds: curveWinds,
      viscosity,
      polars:
        blades.kind === 'straight-blade' ? polarsOf(blades).map((polar) => withDrag(polar, dragFactor)) : [],
      points: curvePoints,
    })
  if (blades.kind === 'table') {
    const λ = Float64Array.from(blades.points, (point) => point.tipSpeedRatio)
    const last = λ[λ.length - 1]!
    const coefficients = powerTableCoefficients({
      tipSpeedRatio: λ,
      power: blades.points.map((point) => point.powerCoefficient),
    })
    const tipSpeedRatio = Float64Array.from({ length: curvePoints }, (_, k) => (last * k) / (curvePoints - 1))
    const rows = Array.from(tipSpeedRatio, (ratio) => coefficients(ratio))
    const power = Float64Array.from(rows, (row) => row.power)
    return {
      tipSpeedRatio,
      power,
      torque: Float64Array.from(rows, (row) => row.torque),
      thrust: Float64Array.from(rows, (row) => row.thrust),
      best: bestOf(tipSpeedRatio, power),
      runaway: last,
      shape: undefined,
    }
  }
  // the shape is that of the design, whatever its sections' drag turns out to be
  const drawn = bladeRotor(blades)
  const shape: BladeRotor = {
    ...drawn,
    polar: withDrag(drawn.polar, dragFactor),
    ...(drawn.polars === undefined
      ? {}
      : { polars: drawn.polars.map((polar) => withDrag(polar, dragFactor)) }),
  }
  const runaway = runawayOf(shape)
  const last = Math.max(1.05 * runaway, 1)
  // closer together at low speed, where stall makes the curve bend
  const ratios = Float64Array.from({ length: curvePoints }, (_, k) => last * (k / (curvePoints - 1)) ** 1.3)
  const severalReynolds = (shape.polars?.length ?? 0) > 1
  const windSpeeds = severalReynolds ? curveWinds : [typicalWind]
  const tables = windCoefficientTables(shape, ratios, { windSpeeds, kinematicViscosity: viscosity })
  const { power, torque, thrust } = tables[0]!
  const curve = { tipSpeedRatio: ratios, power, torque, thrust, best: bestOf(ratios, power), runaway, shape }
  if (!severalReynolds) return curve
  const byWind = tables.map((table, k) => ({ wind: windSpeeds[k]!, ...table }))
  return { ...curve, byWind: byWind.sort((one, other) => one.wind - other.wind) }
}
