/** Where blades and generator agree: the steady states at a wind, and which of them the machine reaches from rest. */
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import type { RotorCurve } from './blade-rotor.ts'

export interface Air {
  /** ρ [kg/m³] */
  readonly density: number
  /** R of the blade tips [m]. */
  readonly radius: number
}

/** Power and torque of the blades at a wind and speed. */
export interface BladeMap {
  /** R of the blade tips [m]. */
  readonly radius: number
  /** Bound of the speeds worth looking at in a wind: a little past runaway [rad/s]. */
  readonly fastest: (wind: number) => number
  readonly power: (wind: number, speed: number) => number
  readonly torque: (wind: number, speed: number) => number
  /** Power in the wind through the swept area [W]. */
  readonly available: (wind: number) => number
  /** λ of a speed in a wind. */
  readonly tipSpeedRatio: (wind: number, speed: number) => number
}

export function bladeMap(curve: RotorCurve, { density, radius }: Air): BladeMap {
  const Cq = monotoneCubic(curve.tipSpeedRatio, curve.torque)
  const area = Math.PI * radius ** 2
  const last = curve.tipSpeedRatio[curve.tipSpeedRatio.length - 1]!
  const lastTorque = curve.torque[curve.torque.length - 1]!
  // past the table the blades brake: the torque goes on falling in a straight line
  const slope =
    (lastTorque - curve.torque[curve.torque.length - 2]!) /
    (last - curve.tipSpeedRatio[curve.tipSpeedRatio.length - 2]!)
  const torqueCoefficient = (λ: number) => (λ <= last ? Cq(λ) : lastTorque + Math.min(slope, 0) * (λ - last))
  const tipSpeedRatio = (wind: number, speed: number) => (speed * radius) / wind
  const torque = (wind: number, speed: number) =>
    0.5 * density * area * radius * wind ** 2 * torqueCoefficient(tipSpeedRatio(wind, speed))
  return {
    radius,
    fastest: (wind) => (curve.runaway * 1.02 * wind) / radius,
    torque,
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
