/** Where blades and generator agree: the steady states at a wind, and which of them the machine reaches from rest. */
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import type { RotorCurve } from './blade-rotor.ts'

export interface Air {
  /** ρ [kg/m³] */
  readonly density: number
  /** R of the blade tips [m]. */
  readonly radius: number
  /** Swept by the blades, seen from the wind [m²]. */
  readonly area: number
}

/** Power and torque of the blades at a wind and speed. */
export interface BladeMap {
  /** R of the blade tips [m]. */
  readonly radius: number
  /** Bound of the speeds worth looking at in a wind: a little past runaway [rad/s]. */
  readonly fastest: (wind: number) => number
  readonly power: (wind: number, speed: number) => number
  readonly torque: (wind: number, speed: number) => number
  /** Along the axis [N]; past the curve its last coefficient is held. */
  readonly thrust: (wind: number, speed: number) => number
  /** Power in the wind through the swept area [W]. */
  readonly available: (wind: number) => number
  /** λ of a speed in a wind. */
  readonly tipSpeedRatio: (wind: number, speed: number) => number
}

/** A coefficient of the curve in any wind: straight in the logarithm of the wind between the winds computed. */
function coefficientOf(
  curve: RotorCurve,
  ofTable: (table: { readonly torque: Float64Array; readonly thrust: Float64Array }) => Float64Array,
  ofValues: (values: Float64Array) => (λ: number) => number,
): (λ: number, wind: number) => number {
  const { byWind = [] } = curve
  if (byWind.length < 2) {
    const only = ofValues(ofTable(curve))
    return (λ) => only(λ)
  }
  const logarithms = byWind.map(({ wind }) => Math.log(wind))
  const functions = byWind.map((table) => ofValues(ofTable(table)))
  const [first, last] = [byWind[0]!.wind, byWind[byWind.length - 1]!.wind]
  return (λ, wind) => {
    if (wind <= first) return functions[0]!(λ)
    if (wind >= last) return functions[functions.length - 1]!(λ)
    let k = 0
    while (byWind[k + 1]!.wind <= wind) k++
    const t = (Math.log(wind) - logarithms[k]!) / (logarithms[k + 1]! - logarithms[k]!)
    return (1 - t) * functions[k]!(λ) + t * functions[k + 1]!(λ)
  }
}

export function bladeMap(curve: RotorCurve, { density, radius, area }: Air): BladeMap {
  const ratios = curve.tipSpeedRatio
  const last = ratios[ratios.length - 1]!
  const torqueOf = (values: Float64Array) => {
    const inside = monotoneCubic(ratios, values)
    const lastTorque = values[values.length - 1]!
    // past the table the blades brake: the torque goes on falling in a straight line
    const slope = (lastTorque - values[values.length - 2]!) / (last - ratios[ratios.length - 2]!)
    return (λ: number) => (λ <= last ? inside(λ) : lastTorque + Math.min(slope, 0) * (λ - last))
  }
  const thrustOf = (values: Float64Array) => {
    const inside = monotoneCubic(ratios, values)
    return (λ: number) => inside(Math.min(λ, last))
  }
  const torqueCoefficient = coefficientOf(curve, (table) => table.torque, torqueOf)
  const thrustCoefficient = coefficientOf(curve, (table) => table.thrust, thrustOf)
  const tipSpeedRatio = (wind: number, speed: number) => (speed * radius) / wind
  const torque = (wind: number, speed: number) =>
    0.5 * density * area * radius * wind ** 2 * torqueCoefficient(tipSpeedRatio(wind, speed), wind)
  return {
    radius,
    fastest: (wind) => (curve.runaway * 1.02 * wind) / radius,
    torque,
    thrust: (wind, speed) =>
      0.5 * density * area * wind ** 2 * thrustCoefficient(tipSpeedRatio(wind, speed), wind),
    tipSpeedRatio,
    power: (wind, speed) => speed * torque(wind, speed),
    available: (wind) => 0.5 * density * area * wind ** 3,
  }
}

export interface SteadyState {
  readonly speed: number
  readonly stable: boolean
}

/** Speeds tried between rest and runaway. */
const scanPoints = 72

/**
 * Every speed above zero at which the blades give what `taken` asks, rising; stable where a faster rotor would be
 * slowed. `fastest` bounds the search.
 */
export function steadyStates(
  given: (speed: number) => number,
  taken: (speed: number) => number,
  fastest: number,
): SteadyState[] {
  const surplus = (speed: number) => given(speed) - taken(speed)
  const states: SteadyState[] = []
  let before = leastSpeed(fastest)
  let left = surplus(before)
  for (let k = 1; k <= scanPoints; k++) {
    const speed = (fastest * k) / scanPoints
    const right = surplus(speed)
    // a point exactly on a crossing waits for the next to tell which way it goes
    if (right === 0) continue
    if (left !== 0 && left > 0 !== right > 0)
      states.push({ speed: root(surplus, [before, speed], fastest * 1e-9), stable: left > 0 })
    before = speed
    left = right
  }
  return states
}

/** Slower than this counts as at rest. */
const leastSpeed = (fastest: number): number => fastest / scanPoints / 50

/**
 * The stable state that a rotor turning at `from` settles in: it speeds up or slows down to the first crossing on its
 * way. 0 where nothing stops it before rest.
 */
export function settledSpeed(
  given: (speed: number) => number,
  taken: (speed: number) => number,
  { from, fastest }: { readonly from: number; readonly fastest: number },
): number {
  const surplus = (speed: number) => given(speed) - taken(speed)
  const least = leastSpeed(fastest)
  const step = fastest / scanPoints
  let here = Math.min(Math.max(from, least), fastest)
  const rising = surplus(here) > 0
  for (;;) {
    const next = rising ? Math.min(here + step, fastest) : Math.max(here - step, least)
    if (next === here) return rising ? fastest : 0
    if (surplus(next) > 0 !== rising)
      return root(surplus, rising ? [here, next] : [next, here], fastest * 1e-9)
    here = next
  }
}
