/** Power in the wind: what blows through an area, what an ideal disc could take, and how fast the tip then runs. */
import { requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Power of the wind through an area.
 *
 *   P = ½ ρ A v³
 *
 * Holds: steady wind square to the area. Accuracy: rounding only.
 *
 * @param wind.density  ρ  > 0    [kg/m³]
 * @param wind.area     A  > 0    [m²]
 * @param wind.speed    v  ≥ 0    [m/s]
 * @returns             P         [W]
 * @throws RangeError   density or area not above zero, speed below zero
 * @source manwell2009, section 2.2 on available power, from memory, not opened
 * @example windPower({ density: 1.225, area: Math.PI * 0.75 ** 2, speed: 5 }) // 135.30
 */
export function windPower(wind: {
  readonly density: number
  readonly area: number
  readonly speed: number
}): number {
  requirePositive('density', wind.density, 'kg/m³')
  requirePositive('area', wind.area, 'm²')
  requireNotNegative('speed', wind.speed, 'm/s')
  return 0.5 * wind.density * wind.area * wind.speed ** 3
}

/**
 * Power coefficient of an ideal disc that slows the wind by a factor.
 *
 *   C_p = 4 a (1 − a)²
 *
 * Holds: 0 ≤ a ≤ 0.5, no swirl, no drag; greatest at a = 1/3, 16/27. Accuracy: rounding only.
 *
 * @param induction  a   [1]
 * @returns          C_p [1]
 * @throws RangeError    induction outside 0…1
 * @source betz1920, from memory, not opened
 * @example idealDiscPower(1 / 3) // 0.592593
 */
export function idealDiscPower(induction: number): number {
  requireBetween('induction', induction, [0, 1])
  return 4 * induction * (1 - induction) ** 2
}

/**
 * Push of the wind on a rotor.
 *
 *   T = ½ ρ A v² C_t
 *
 * Holds: any rotor whose thrust coefficient is known; 8/9 for the ideal one. Accuracy: that of C_t.
 *
 * @param wind.density      ρ    > 0   [kg/m³]
 * @param wind.area         A    > 0   [m²]
 * @param wind.speed        v    ≥ 0   [m/s]
 * @param wind.coefficient  C_t  ≥ 0   [1]
 * @returns                 T          [N]
 * @throws RangeError       density or area not above zero, speed or coefficient below zero
 * @source manwell2009, section 3.2 on the ideal rotor, from memory, not opened
 * @example windThrust({ density: 1.225, area: Math.PI * 0.75 ** 2, speed: 10, coefficient: 8 / 9 }) // 96.211
 */
export function windThrust(wind: {
  readonly density: number
  readonly area: number
  readonly speed: number
  readonly coefficient: number
}): number {
  requirePositive('density', wind.density, 'kg/m³')
  requirePositive('area', wind.area, 'm²')
  requireNotNegative('speed', wind.speed, 'm/s')
  requireNotNegative('coefficient', wind.coefficient)
  return 0.5 * wind.density * wind.area * wind.speed ** 2 * wind.coefficient
}

/**
 * Speed of the shaft at a tip-speed ratio.
 *
 *   ω = λ v / R
 *
 * Holds: always, a definition. Accuracy: rounding only.
 *
 * @param at.tipSpeedRatio  λ  ≥ 0   [1]
 * @param at.windSpeed      v  ≥ 0   [m/s]
 * @param at.radius         R  > 0   [m]
 * @returns                 ω        [rad/s]
 * @throws RangeError       radius not above zero, ratio or wind below zero
 * @source manwell2009, section 3.3 on the tip speed ratio, from memory, not opened
 * @example (rotorSpeed({ tipSpeedRatio: 6, windSpeed: 4, radius: 0.75 }) * 30) / Math.PI // 305.58
 */
export function rotorSpeed(at: {
  readonly tipSpeedRatio: number
  readonly windSpeed: number
  readonly radius: number
}): number {
  requireNotNegative('tipSpeedRatio', at.tipSpeedRatio)
  requireNotNegative('windSpeed', at.windSpeed, 'm/s')
  requirePositive('radius', at.radius, 'm')
  return (at.tipSpeedRatio * at.windSpeed) / at.radius
}

/**
 * Tip-speed ratio of a turning rotor.
 *
 *   λ = ω R / v
 *
 * Holds: always, a definition. Accuracy: rounding only.
 *
 * @param at.speed      ω  ≥ 0   [rad/s]
 * @param at.windSpeed  v  > 0   [m/s]
 * @param at.radius     R  > 0   [m]
 * @returns             λ        [1]
 * @throws RangeError   wind or radius not above zero, speed below zero
 * @source manwell2009, section 3.3 on the tip speed ratio, from memory, not opened
 * @example tipSpeedRatio({ speed: 32, windSpeed: 4, radius: 0.75 }) // 6.0
 */
export function tipSpeedRatio(at: {
  readonly speed: number
  readonly windSpeed: number
  readonly radius: number
}): number {
  requireNotNegative('speed', at.speed, 'rad/s')
  requirePositive('windSpeed', at.windSpeed, 'm/s')
  requirePositive('radius', at.radius, 'm')
  return (at.speed * at.radius) / at.windSpeed
}
