/** Prandtl's loss factor: what a rotor of few blades loses at its tips and at its hub. */
import { requireBetween, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Least factor ever returned: at the very tip the factor is zero and the induction would have no bound. */
export const leastLossFactor = 1e-4

/** The factor itself, unguarded: for loops. @internal */
export const lossFactorAt = (B: number, r: number, R: number, Rh: number, absoluteSine: number): number => {
  const s = Math.max(absoluteSine, 1e-12)
  const F = oneEnd((B * (R - r)) / (2 * r * s)) * (Rh > 0 ? oneEnd((B * (r - Rh)) / (2 * Rh * s)) : 1)
  return Math.max(F, leastLossFactor)
}

/** Beyond f = 37 the factor is 1 to the last bit. */
const oneEnd = (f: number) => (f > 37 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-f)))

/**
 * Prandtl loss factor of tip and hub: ratio of the mean axial induction around the ring to that at the blade.
 *
 *   F = (2/π) arccos e^(−B (R − r) / (2 r |sin φ|)) · (2/π) arccos e^(−B (r − R_h) / (2 R_h |sin φ|))
 *
 * Holds: lightly loaded rotor, wake not expanding, hub radius ≤ r ≤ radius. Accuracy: a few % of F against the exact vortex
 * solution for three blades at tip-speed ratios above 5; poorer for fewer blades and slower rotors.
 *
 * @param at.bladeCount   B    whole number ≥ 1                             [1]
 * @param at.distance     r    of the element from the axis                 [m]
 * @param at.radius       R    of the rotor, > 0                            [m]
 * @param at.hubRadius    R_h  where the blade begins, ≥ 0; 0: no hub loss  [m]
 * @param at.inflowAngle  φ    between the relative wind and the disc       [rad]
 * @returns               F    from 1e-4 to 1                               [1]
 * @throws RangeError     distance outside the blade; any value not finite
 * @source burton2011, chapter 3 (tip-loss and root-loss factors), from memory, not opened
 * @example lossFactor({ bladeCount: 3, distance: 0.9, radius: 1, hubRadius: 0, inflowAngle: 0.1 }) // 0.87937
 */
export function lossFactor(at: {
  readonly bladeCount: number
  readonly distance: number
  readonly radius: number
  readonly hubRadius: number
  readonly inflowAngle: number
}): number {
  requirePositive('bladeCount', at.bladeCount)
  requirePositive('radius', at.radius, 'm')
  requireNotNegative('hubRadius', at.hubRadius, 'm')
  requireBetween('distance', at.distance, [at.hubRadius, at.radius], 'm')
  requirePositive('distance', at.distance, 'm')
  requireFinite('inflowAngle', at.inflowAngle, 'rad')
  return lossFactorAt(at.bladeCount, at.distance, at.radius, at.hubRadius, Math.abs(Math.sin(at.inflowAngle)))
}
