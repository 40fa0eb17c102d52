/** A rotor turned out of the wind: what is left of power, thrust and torque, and the yaw that holds them. */
import { root } from '../../numerics/root.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'

/** Yaw angles for which wind-tunnel and field rotors bear the two rules out; beyond, an estimate. [rad] */
export const yawVerifiedTo = (40 * Math.PI) / 180

/** Greatest thrust coefficient of a disc for which momentum theory gives the induction. [1] */
const greatestMomentumThrust = 0.96

/** What a yawed rotor keeps, each as a ratio to the same rotor facing the wind. */
export interface YawReduction {
  /** Wind in which the rotor facing it would do the same, over the true wind. [1] */
  readonly wind: number
  /** At the tip-speed ratio that suits that wind. [1] */
  readonly power: number
  /** Along the rotor's axis. [1] */
  readonly thrust: number
  readonly torque: number
}

/** From behind (|γ| > 90°) nothing drives the blades the way they were shaped for. */
const cosineOf = (yawAngle: number): number => {
  requireFinite('yawAngle', yawAngle, 'rad')
  return Math.max(0, Math.cos(yawAngle))
}

const reductionOf = (κ: number): YawReduction => ({ wind: κ, power: κ ** 3, thrust: κ ** 2, torque: κ ** 2 })

/**
 * What a yawed rotor keeps by axial momentum: it works with the wind square to its disc.
 *
 *   κ = cos γ,   P/P_0 = κ³,   T/T_0 = Q/Q_0 = κ²
 *
 * The rotor in wind v does what it would do facing κ v at the same speed of turning: look its curve up at λ = ωR/(κ v).
 *
 * Holds: |γ| ≤ 40°, steady yaw; from behind (|γ| > 90°) zero is returned. Accuracy: the rule of common use. Measured exponents
 * of power run from 1.9 (large-eddy simulation, gebraad2016) to 3, so at 30° the power may be 17 % higher than given.
 *
 * @param yawAngle  γ  wind to axis                        [rad]
 * @returns         ratios of wind, power, thrust, torque  [1]
 * @throws RangeError  yaw angle not finite
 * @source burton2001, section 3.10.1, equations 3.88 to 3.91
 * @example yawReduction(Math.PI / 6).power // 0.649519
 */
export function yawReduction(yawAngle: number): YawReduction {
  return reductionOf(cosineOf(yawAngle))
}

/**
 * What a yawed rotor keeps when its induction eases as it is turned away: the most optimistic of the momentum theories.
 *
 *   κ = cos γ / (1 − a_0 sin²γ),   a_0 = (1 − √(1 − C_T)) / 2,   P/P_0 = κ³,   T/T_0 = Q/Q_0 = κ²
 *
 * From a = C_T' cos²γ / (4 + C_T' cos²γ) with C_T' = C_T / (1 − a_0)², equal for equal states of the blades.
 *
 * Holds: |γ| ≤ 40°, C_T up to 0.96 (higher is taken as that), blades kept in the same state. Accuracy: the sideways speed of the wake is
 * left out, at most 1.5 % of κ; the blades' changing angles in a turn are not in it, so real rotors lie between this and yawReduction.
 *
 * @param at.yawAngle           γ    wind to axis                     [rad]
 * @param at.thrustCoefficient  C_T  of the rotor facing the wind, ≥ 0 [1]
 * @returns                     ratios of wind, power, thrust, torque [1]
 * @throws RangeError           a value not finite, thrust coefficient below zero
 * @source heck2023, equations 2.19 and 2.20, as implemented in the file Rotor.py of Howland-Lab/MITWake; the paper was not opened
 * @example yawReductionHeck2023({ yawAngle: Math.PI / 6, thrustCoefficient: 8 / 9 }).power // 0.843252
 */
export function yawReductionHeck2023(at: {
  readonly yawAngle: number
  readonly thrustCoefficient: number
}): YawReduction {
  requireNotNegative('thrustCoefficient', at.thrustCoefficient)
  const c = cosineOf(at.yawAngle)
  const a0 = (1 - Math.sqrt(1 - Math.min(at.thrustCoefficient, greatestMomentumThrust))) / 2
  return reductionOf(c / (1 - a0 * (1 - c * c)))
}

/**
 * Yaw that keeps the power of a rotor from rising above what it is in a given wind.
 *
 *   γ = arccos(v_held / v) for v > v_held, at most γ_max
 *
 * Holds: as yawReduction, its own inverse; an ideal tail, without play, friction or lag. Accuracy: rounding only; that of the rule as there.
 *
 * @param at.windSpeed  v       ≥ 0                                   [m/s]
 * @param at.heldWind   v_held  from which power is held, > 0         [m/s]
 * @param at.greatest   γ_max   where the stop is; default π/2        [rad]
 * @returns             γ                                             [rad]
 * @throws RangeError   a value out of its bounds
 * @source derived, yawReduction solved for the yaw angle
 * @example furlYaw({ windSpeed: 20, heldWind: 10 }) // 1.047198
 */
export function furlYaw(at: {
  readonly windSpeed: number
  readonly heldWind: number
  readonly greatest?: number
}): number {
  const { windSpeed, heldWind, greatest = Math.PI / 2 } = at
  requireNotNegative('windSpeed', windSpeed, 'm/s')
  requirePositive('heldWind', heldWind, 'm/s')
  requireBetween('greatest', greatest, [0, Math.PI / 2], 'rad')
  return windSpeed <= heldWind ? 0 : Math.min(greatest, Math.acos(heldWind / windSpeed))
}

/**
 * Yaw at which the thrust beside the yaw axis is balanced by what brings the rotor back.
 *
 *   e T_0 κ²(γ) = M(γ),   the least such γ in 0…γ_max
 *
 * 0 while the thrust cannot overcome M(0); γ_max (the stop) where it overcomes M everywhere.
 *
 * Holds: steady wind, an axis at rest; M(γ) rising or steady. Accuracy: 1e-9 of γ_max; that of the rule as yawReduction.
 *
 * @param at.thrustMoment  e T_0  thrust facing the wind times its arm about the yaw axis, ≥ 0  [N·m]
 * @param at.restoring     M(γ)   what spring, weight or tail bring against it at a yaw [rad]   [N·m]
 * @param at.greatest      γ_max  where the stop is; default π/2                                [rad]
 * @returns                γ                                                                    [rad]
 * @throws RangeError      a value out of its bounds, restoring moment not finite
 * @source derived, balance of moments about the yaw axis with the thrust of yawReduction
 * @example furlYawAgainst({ thrustMoment: 4, restoring: () => 1 }) // 1.047198
 */
export function furlYawAgainst(at: {
  readonly thrustMoment: number
  readonly restoring: (yawAngle: number) => number
  readonly greatest?: number
}): number {
  const { thrustMoment, restoring, greatest = Math.PI / 2 } = at
  requireNotNegative('thrustMoment', thrustMoment, 'N·m')
  requireBetween('greatest', greatest, [0, Math.PI / 2], 'rad')
  const excess = (γ: number): number => {
    const M = restoring(γ)
    if (!Number.isFinite(M))
      refuse({ name: 'restoring', condition: 'finite', value: M, unit: 'N·m', code: 'not-finite' })
    return thrustMoment * yawReduction(γ).thrust - M
  }
  if (excess(0) <= 0) return 0
  const steps = 64
  for (let k = 1; k <= steps; k++) {
    const γ = (greatest * k) / steps
    if (excess(γ) <= 0) return root(excess, [(greatest * (k - 1)) / steps, γ], 1e-9 * greatest)
  }
  return greatest
}
