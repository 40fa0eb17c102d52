/** Heat that crosses the narrow air gap between a turning cylinder and a still one round it. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Taylor numbers between the first vortices and the end of the measurements. */
export const annulusTaylorRange: readonly [number, number] = [1700, 1e7]
/** Gap over the inner radius up to which the narrow-gap Taylor number stands for the flow. */
export const annulusGapRange: readonly [number, number] = [0, 0.2]

/**
 * Taylor number of the air in a gap whose inner wall turns.
 *
 *   Ta = ω² (r + δ/2) δ³ / ν²
 *
 * Holds: narrow gap, δ/r ≤ 0.2, long cylinders, no flow along the axis; there the vortices begin near 1700.
 * Accuracy: exact by definition; the factor of wide gaps is left out, which moves the beginning by a fifth at
 * δ/r = 0.2.
 *
 * @param gap.speed               ω  of the inner wall, ≥ 0              [rad/s]
 * @param gap.innerRadius         r  > 0                                 [m]
 * @param gap.width               δ  > 0                                 [m]
 * @param gap.kinematicViscosity  ν  > 0                                 [m2/s]
 * @returns                       Ta                                     [1]
 * @throws RangeError             a value not finite or out of its sign
 * @source becker-kaye1962, definition of the modified Taylor number, geometrical factor taken as 1, from memory, not opened
 * @example annulusTaylorNumber({ speed: 100, innerRadius: 0.05, width: 0.002, kinematicViscosity: 1.6e-5 }) // 15938
 */
export function annulusTaylorNumber(gap: {
  readonly speed: number
  readonly innerRadius: number
  readonly width: number
  readonly kinematicViscosity: number
}): number {
  const { speed: ω, innerRadius: r, width: δ, kinematicViscosity: ν } = gap
  requireNotNegative('speed', ω, 'rad/s')
  requirePositive('innerRadius', r, 'm')
  requirePositive('width', δ, 'm')
  requirePositive('kinematicViscosity', ν, 'm2/s')
  return ((ω * δ) / ν) ** 2 * (r + δ / 2) * δ
}

/**
 * Nusselt number from wall to wall of a gap whose inner wall turns, over twice the gap.
 *
 *   Nu = max(2, min(0.128 Ta^0.367, 0.409 Ta^0.241))
 *
 * Below Ta = 1700 the air goes round in layers and only conducts: Nu = 2, which is h = k/δ; the two powers meet
 * near 1e4. When the outer wall turns no vortices form: then take 2.
 *
 * Holds: narrow gap, no flow along the axis, Ta ≤ 1e7, air. Accuracy: conduction exact but for the curvature;
 * beyond, ±20 % of the measurements (from memory).
 *
 * @param taylor      Ta  see `annulusTaylorNumber`, ≥ 0       [1]
 * @returns           Nu  2 h δ / k, h from wall to wall       [1]
 * @throws RangeError Ta not finite or negative
 * @source becker-kaye1962, correlation without axial flow, from memory, not opened
 * @example annulusNusselt(1e5) // 6.56
 */
export function annulusNusselt(taylor: number): number {
  requireNotNegative('taylor', taylor)
  return Math.max(2, Math.min(0.128 * taylor ** 0.367, 0.409 * taylor ** 0.241))
}
