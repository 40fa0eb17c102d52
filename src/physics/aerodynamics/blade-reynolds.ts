/** Reynolds number a blade works at: which polar to take for it. */
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'
import type { BladeRotor } from './blade-ring.ts'

/** Below this the polar of a smooth section changes from one builder's blade to the next. [1] */
export const leastTrustedReynolds = 1e5

/**
 * Reynolds number of a blade at three quarters of its radius.
 *
 *   Re = c v √((2/3)² + (0.75 λ)²) / ν
 *
 * Holds: near the design point, where the wind in the disc is two thirds of the free wind. Accuracy: 5 % of the elements' own at 0.75 R for λ ≥ 2.
 *
 * @param rotor                  chord [m] at its stations
 * @param at.tipSpeedRatio       λ  ≥ 0   [1]
 * @param at.windSpeed           v  ≥ 0   [m/s]
 * @param at.kinematicViscosity  ν  > 0   [m²/s]
 * @returns                      Re       [1]
 * @throws RangeError            a value out of its bounds
 * @source derived, velocity triangle at a = 1/3
 * @example bladeReynolds({ bladeCount: 3, radius: 1, hubRadius: 0.15, station: Float64Array.of(0.5, 1), chord: Float64Array.of(0.1, 0.1), twist: Float64Array.of(0, 0), pitch: 0, polar: { angle: Float64Array.of(0, 1), lift: Float64Array.of(0, 1), drag: Float64Array.of(0, 1), reynolds: 1e5 } }, { tipSpeedRatio: 6, windSpeed: 5, kinematicViscosity: 1.5e-5 }) // 1.5164e5
 */
export function bladeReynolds(
  rotor: BladeRotor,
  at: { readonly tipSpeedRatio: number; readonly windSpeed: number; readonly kinematicViscosity: number },
): number {
  requireNotNegative('tipSpeedRatio', at.tipSpeedRatio)
  requireNotNegative('windSpeed', at.windSpeed, 'm/s')
  requirePositive('kinematicViscosity', at.kinematicViscosity, 'm²/s')
  const chord = piecewiseLinear(rotor.station, rotor.chord)(0.75 * rotor.radius)
  return (chord * at.windSpeed * Math.hypot(2 / 3, 0.75 * at.tipSpeedRatio)) / at.kinematicViscosity
}
