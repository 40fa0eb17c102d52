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
  let before = fastest / scanPoints / 50
  let left = surplus(before)
  for (let k = 1; k <= scanPoints; k++) {
    const speed = (fastest * k) / scanPoints
    const right = surplus(speed)
    if (left !== 0 && left > 0 !== right > 0)
      states.push({ speed: root(surplus, [before, speed], fastest * 1e-9), stable: left > 0 })
    before = speed
    left = right
  }
  return states
}

/** The state a rotor settles in that speeds up from rest: the first stable one, if it can leave rest at all. */
export function fromRest(states: readonly SteadyState[]): SteadyState | undefined {
  return states[0]?.stable === true ? states[0] : undefined
}
