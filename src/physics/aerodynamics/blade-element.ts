/** Blade-element momentum theory: power, thrust and torque of a horizontal-axis rotor from its blade's shape. */
import {
  type BladeRotor,
  type Cut,
  cutOf,
  type ElementOptions,
  newRing,
  requireTipSpeedRatio,
  solveRing,
} from './blade-ring.ts'

export type { AirStream, BladeRotor, ElementOptions } from './blade-ring.ts'

/** Coefficients on the swept area πR², dynamic pressure ½ρv² and, for torque, the radius. */
export interface RotorCoefficients {
  /** Cp = power / (½ρ πR² v³). [1] */
  readonly power: number
  /** Ct = thrust / (½ρ πR² v²). [1] */
  readonly thrust: number
  /** Cq = torque / (½ρ πR³ v²); Cp = λ Cq. [1] */
  readonly torque: number
}

/**
 * Power, thrust and torque coefficient of a rotor at a tip-speed ratio, rest and overspeed included.
 *
 *   C_t = Σ B c W² C_n Δr / (πR²),   C_q = Σ B c W² C_t r Δr / (πR³),   C_p = λ C_q
 *
 * C_n = C_l cos φ + C_d sin φ, C_t = C_l sin φ − C_d cos φ; φ of each ring solves sin φ / (1 − a) = cos φ (1 − k') / λ_r.
 *
 * Holds: steady wind along the axis, rings that do not touch each other; solidity to 0.4. Accuracy: against a 10 m rotor in a wind
 * tunnel 4 % in torque and 2 % in thrust at 7 m/s (attached flow); with `stallDelay` 9 % and 7 % at 10 to 15 m/s, where the inner half
 * is stalled, without it a limit, not a number (15 m/s: torque half). 20 rings: 0.5 % of the limit of many. Each ring works at its own
 * Reynolds number where the rotor has `polars` and the options a stream. A rotor's arrays are read once; changing them in place
 * afterwards has no effect.
 *
 * @param rotor             shape and section                     [1]
 * @param tipSpeedRatio     λ  ωR/v, 0 for a rotor at rest        [1]
 * @param options.elements  n  rings, default 20                  [1]
 * @returns                 C_p, C_t and C_q                      [1]
 * @throws RangeError       rotor malformed; tip-speed ratio below zero
 * @source ning2014, equations for the residual and its brackets, from memory, not opened
 * @example rotorCoefficients({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }, 5).power // 0.29485
 */
export function rotorCoefficients(
  rotor: BladeRotor,
  tipSpeedRatio: number,
  options: ElementOptions = {},
): RotorCoefficients {
  requireTipSpeedRatio(tipSpeedRatio)
  return summedRings(rotor, cutOf(rotor, options), tipSpeedRatio)
}

/** The rings added up; `about` holds inflow angles to look near to first, and is left with those found. @internal */
export const summedRings = (
  rotor: BladeRotor,
  cut: Cut,
  λ: number,
  about?: Float64Array,
): RotorCoefficients => {
  const B = rotor.bladeCount
  const Rh = rotor.hubRadius / rotor.radius
  const ring = newRing()
  let thrust = 0
  let torque = 0
  for (let i = 0; i < cut.r.length; i++) {
    solveRing(B, Rh, cut, i, λ, ring, about?.[i])
    if (about) about[i] = ring.φ
    const s = Math.sin(ring.φ)
    const c = Math.cos(ring.φ)
    const q = ((B * cut.c[i]!) / Math.PI) * ring.W * ring.W * cut.Δr
    thrust += q * (ring.lift * c + ring.drag * s)
    torque += q * (ring.lift * s - ring.drag * c) * cut.r[i]!
  }
  return { power: λ * torque, thrust, torque }
}

/**
 * Torque coefficient of the rotor standing still: what has to overcome cogging and bearings before it turns.
 *
 *   C_q0 = torque / (½ρ πR³ v²) = Σ B c W² C_t r Δr / (πR³) at λ = 0
 *
 * Holds: as rotorCoefficients; every section is stalled, so the extended polar decides. Accuracy: rather
 * too low: 0.55 to 0.6 of the torque of flat plates (wood2001), whose author found real machines to start in less wind than those say.
 *
 * @param rotor             shape and section   [1]
 * @param options.elements  n  rings            [1]
 * @returns                 C_q0                [1]
 * @throws RangeError       rotor malformed
 * @source derived, rotorCoefficients at λ = 0
 * @example rotorTorqueAtRest({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }) // 0.012437
 */
export function rotorTorqueAtRest(rotor: BladeRotor, options: ElementOptions = {}): number {
  return rotorCoefficients(rotor, 0, options).torque
}

/** Rows of coefficients over tip-speed ratio. */
export interface PowerCoefficientTable {
  readonly tipSpeedRatio: Float64Array
  readonly power: Float64Array
  readonly thrust: Float64Array
  readonly torque: Float64Array
}

/**
 * The three coefficients at a list of tip-speed ratios.
 *
 *   C_p(λ) = λ C_q(λ)
 *
 * Holds: as rotorCoefficients. Accuracy: as rotorCoefficients.
 *
 * @param rotor             shape and section                      [1]
 * @param tipSpeedRatios    λ  each zero or above, in any order    [1]
 * @param options.elements  n  rings                               [1]
 * @returns                 λ, C_p, C_t, C_q                       [1]
 * @throws RangeError       rotor malformed; a tip-speed ratio below zero
 * @source derived, rotorCoefficients row by row
 * @example powerCoefficientTable({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }, [0, 5]).power[0] // 0
 */
export function powerCoefficientTable(
  rotor: BladeRotor,
  tipSpeedRatios: ArrayLike<number>,
  options: ElementOptions = {},
): PowerCoefficientTable {
  const tipSpeedRatio = Float64Array.from(tipSpeedRatios)
  const n = tipSpeedRatio.length
  const table = {
    tipSpeedRatio,
    power: new Float64Array(n),
    thrust: new Float64Array(n),
    torque: new Float64Array(n),
  }
  tipSpeedRatio.forEach((λ, i) => {
    const row = rotorCoefficients(rotor, λ, options)
    table.power[i] = row.power
    table.thrust[i] = row.thrust
    table.torque[i] = row.torque
  })
  return table
}

/**
 * Tip-speed ratio at which an unloaded rotor stops gaining speed.
 *
 *   C_q(λ) = 0, the greatest such λ
 *
 * Holds: as rotorCoefficients; searched up to λ = 60. Accuracy: 1e-6 of the theory's own root; the theory there hangs on the drag at small lift, about 10 %.
 *
 * @param rotor             shape and section                                     [1]
 * @param options.elements  n  rings                                              [1]
 * @returns                 λ  of runaway; 60 if still driven there, 0 if never   [1]
 * @throws RangeError       rotor malformed
 * @source derived, root of rotorCoefficients
 * @example runawayTipSpeedRatio({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.2, 1), chord: Float64Array.of(0.2, 0.08), twist: Float64Array.of(0.35, 0.05), pitch: 0, polar: { angle: Float64Array.of(-0.2, 0.2), lift: Float64Array.of(-1, 1), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 } }) // 7.6084
 */
export function runawayTipSpeedRatio(rotor: BladeRotor, options: ElementOptions = {}): number {
  const torque = (λ: number) => rotorCoefficients(rotor, λ, options).torque
  if (torque(greatestSearchedRatio) > 0) return greatestSearchedRatio
  let high = greatestSearchedRatio
  let low = high
  while (low > 0) {
    low = low > 2 ? low / 1.04 : low - 0.1
    if (low < 0) low = 0
    if (torque(low) > 0) break
    high = low
  }
  if (low === 0 && !(torque(0) > 0)) return 0
  while (high - low > 1e-6) {
    const middle = (low + high) / 2
    if (torque(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Up to here runaway is looked for. */
export const greatestSearchedRatio = 60
