/** The blades of a machine as a rotor of known shape, and its coefficients against tip-speed ratio. */
import { type SectionName, sections } from '../data/airfoil/index.ts'
import type { Blades, Machine } from '../machine/machine.ts'
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import {
  type BladeRotor,
  powerCoefficientTable,
  rotorCoefficients,
  runawayTipSpeedRatio,
} from '../physics/aerodynamics/blade-element.ts'
import { optimumRotor, straightenedRotor } from '../physics/aerodynamics/optimum-rotor.ts'
import { type Polar, polarAtReynolds } from '../physics/aerodynamics/polar.ts'
import { powerTableCoefficients } from '../physics/aerodynamics/power-table.ts'

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
}

/** Points of the curve; the table between them is a shape-keeping cubic. */
const curvePoints = 32

/** Kinematic viscosity of air at 15 °C [m²/s]; the Reynolds number of a blade needs no better. */
const viscosity = 1.46e-5

/** Wind at which the blades' Reynolds number is taken [m/s]: where a small machine does most of its work. */
const typicalWind = 6

function polarsOf(section: string): Polar[] {
  const rad = Math.PI / 180
  return sections[section as SectionName].map((table) => ({
    angle: Float64Array.from(table.rows, ([α]) => α * rad),
    lift: Float64Array.from(table.rows, ([, lift]) => lift),
    drag: Float64Array.from(table.rows, ([, , drag]) => drag),
    reynolds: table.reynolds,
  }))
}

/** Reynolds number at three quarters of the radius, chord `chord`, in the typical wind. */
const reynoldsAt = (chord: number, tipSpeedRatio: number): number =>
  (typicalWind * Math.hypot(1, 0.75 * tipSpeedRatio) * chord) / viscosity

function bladeRotor(blades: Exclude<Blades, { kind: 'table' }>): BladeRotor {
  const { bladeCount, radius, hubRadius, pitch } = blades
  const polars = polarsOf(blades.section)
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
  return { ...(blades.straightTaper ? straightenedRotor(ideal, { twist: true }) : ideal), pitch }
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

/** A coarse blade finds where to look, the usual one where it is. */
function runawayOf(shape: BladeRotor): number {
  const near = runawayTipSpeedRatio(shape, { elements: 6 })
  const torque = (λ: number) => rotorCoefficients(shape, λ).torque
  const [low, high] = [0.85 * near, 1.15 * near]
  return torque(low) > 0 && torque(high) < 0
    ? root(torque, [low, high], 1e-4 * near)
    : runawayTipSpeedRatio(shape)
}

/** Curve of the machine's blades, from rest to just past runaway. */
export function rotorCurve({ blades }: Machine): RotorCurve {
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
  const shape = bladeRotor(blades)
  const runaway = runawayOf(shape)
  const last = Math.max(1.05 * runaway, 1)
  // closer together at low speed, where stall makes the curve bend
  const ratios = Float64Array.from({ length: curvePoints }, (_, k) => last * (k / (curvePoints - 1)) ** 1.3)
  const { power, torque, thrust } = powerCoefficientTable(shape, ratios)
  return { tipSpeedRatio: ratios, power, torque, thrust, best: bestOf(ratios, power), runaway, shape }
}
