/** One-sided pull of a ring of magnets that stands out of the middle of an iron sleeve. */
import { modifiedBessel } from '../../numerics/bessel.ts'
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Eccentricity over the decay length up to which the local gap stands for the true field. */
export const eccentricityRange: readonly [number, number] = [0, 0.5]

/**
 * Pull to the near side, of a ring whose pull on the sleeve falls exponentially with the local gap.
 *
 *   F = P I1(e/ℓ),  for a small e: F = P e/(2 ℓ)
 *
 * the pressure P/(2πRL) e^(e cos θ/ℓ) round the circumference, projected on the offset; P is the sum of the radial
 * pulls all round, ℓ = −P/(dP/dg).
 *
 * Holds: gap much shorter than the circumference, several pole pairs, unsaturated steel. Accuracy: exact for that local
 * law; real fields average over a pole pitch, so it errs upward, within eccentricityRange.
 *
 * @param ring.pull          P  sum of the radial pulls, ring in the middle, ≥ 0   [N]
 * @param ring.decay         ℓ  gap over which the pull falls by e, > 0            [m]
 * @param ring.eccentricity  e  offset of the middles, ≥ 0                         [m]
 * @returns                  F  to the near side                                   [N]
 * @throws RangeError        a value not finite or out of its sign
 * @source derived, integrating the local pressure over the circumference
 * @example eccentricPull({ pull: 1000, decay: 0.01, eccentricity: 0.001 }) // 50.06
 */
export function eccentricPull(ring: {
  readonly pull: number
  readonly decay: number
  readonly eccentricity: number
}): number {
  const { pull: P, decay: ℓ, eccentricity: e } = ring
  requireNotNegative('pull', P, 'N')
  requirePositive('decay', ℓ, 'm')
  requireNotNegative('eccentricity', e, 'm')
  const x = e / ℓ
  // below what a Bessel function is tabulated for, the straight line is exact to every digit
  return x < 1e-9 ? (P * x) / 2 : P * Math.exp(modifiedBessel(1, x).lnI)
}
