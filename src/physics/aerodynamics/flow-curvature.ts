/** Flow curvature: a blade on a circular path sees its air come from another side at its nose than at its tail. */
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Shift of the angle of attack of a blade on a circular path: its tail swings outward as it turns about its own mounting.
 *
 *   Δα = ω c (3/4 − x_m) / W
 *
 * It is thin-aerofoil theory's rule that lift follows the flow at three quarters of the chord; it works as if the leading edge were turned inward.
 *
 * Holds: attached flow, chord up to a fifth of the radius. Accuracy: exact for the lift of a thin section turning steadily; beyond that chord an estimate.
 *
 * @param at.chordOverRadius  c/R  > 0                                            [1]
 * @param at.mount            x_m  mounting from the leading edge, over the chord  [1]
 * @param at.tipSpeedRatio    λ    ωR/v                                           [1]
 * @param at.airSpeed         W/v  past the blade, over the wind, > 0             [1]
 * @returns                   Δα   positive: air more from outside               [rad]
 * @throws RangeError         a value out of its bounds
 * @source goude2012, flow curvature in streamtube models, from memory, not opened
 * @example flowCurvatureAngle({ chordOverRadius: 0.1, mount: 0.25, tipSpeedRatio: 3, airSpeed: 3 }) // 0.05
 */
export function flowCurvatureAngle(at: {
  readonly chordOverRadius: number
  readonly mount: number
  readonly tipSpeedRatio: number
  readonly airSpeed: number
}): number {
  requirePositive('chordOverRadius', at.chordOverRadius)
  requireFinite('mount', at.mount)
  requireNotNegative('tipSpeedRatio', at.tipSpeedRatio)
  requirePositive('airSpeed', at.airSpeed)
  return (at.tipSpeedRatio * at.chordOverRadius * (0.75 - at.mount)) / at.airSpeed
}
