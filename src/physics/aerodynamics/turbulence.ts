/** Turbulence of the wind: how far it swings about its ten-minute mean. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Turbulence at 15 m/s and slope of the model for small machines. [1] */
export const smallTurbineTurbulence = { intensity15: 0.18, slope: 2 } as const

/**
 * Turbulence intensity of a record: standard deviation over mean.
 *
 *   I = σ / v̄
 *
 * Holds: ten minutes of readings, one each second or faster; slower readings miss the fast gusts. Accuracy: rounding only.
 *
 * @param wind.deviation  σ  ≥ 0   [m/s]
 * @param wind.mean       v̄  > 0   [m/s]
 * @returns               I        [1]
 * @throws RangeError     mean not above zero, deviation below zero
 * @source iec61400-2, definition of turbulence intensity, from memory, not opened
 * @example turbulenceIntensity({ deviation: 1.2, mean: 6 }) // 0.2
 */
export function turbulenceIntensity(wind: { readonly deviation: number; readonly mean: number }): number {
  requireNotNegative('deviation', wind.deviation, 'm/s')
  requirePositive('mean', wind.mean, 'm/s')
  return wind.deviation / wind.mean
}

/**
 * Turbulence intensity that the design rules for small turbines reckon with at a mean wind.
 *
 *   I = σ_1/v = I_15 (15 m/s + a v) / ((a + 1) v),   I_15 = 0.18, a = 2
 *
 * Holds: the standard's normal turbulence model for its classes I to IV. Accuracy: the formula exactly; sites among trees and houses are often above it.
 *
 * @param windSpeed  v  mean of ten minutes, > 0   [m/s]
 * @returns          I                             [1]
 * @throws RangeError  speed not above zero
 * @source iec61400-2, normal turbulence model, from memory, not opened; constants also in burton2001 page 22
 * @example normalTurbulenceIntensity(10) // 0.21
 */
export function normalTurbulenceIntensity(windSpeed: number): number {
  requirePositive('windSpeed', windSpeed, 'm/s')
  const { intensity15, slope: a } = smallTurbineTurbulence
  return (intensity15 * (15 + a * windSpeed)) / ((a + 1) * windSpeed)
}
