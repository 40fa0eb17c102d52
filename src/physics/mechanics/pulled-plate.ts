/** How far an elastic part gives way to a pull that grows as it gives way, and when it snaps. */
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Deflection of a spring under a pull that grows exponentially as the gap closes.
 *
 *   k w = F e^(n w/ℓ),  u = n w/ℓ = −W0(−s),  s = n F/(k ℓ)
 *
 * W0 is Lambert's function. For a small s it is the linear law w = (F/k)/(1 − s), in which s is the stiffness of the
 * magnets over that of the part. Beyond s = 1/e no rest is left: the parts snap together.
 *
 * Holds: pull that falls by e over each length ℓ of gap, as between rows of alternating poles a quarter of their pole pair
 * apart or more; n = 2 where both sides give way alike. Accuracy: exact there; nearer the pull grows slower, so it is on
 * the safe side.
 *
 * @param part.pull       F  with the gap as drawn, ≥ 0                        [N]
 * @param part.decay      ℓ  −F/(dF/dx), > 0                                   [m]
 * @param part.stiffness  k  force at which the part gives way by a metre, > 0 [N/m]
 * @param part.sides      n  parts that give way alike, 1 or 2                 [1]
 * @returns               deflection w, undefined where it snaps [m]; amplification of F/k, undefined as well [1];
 *   closeness s e, 1 where it snaps [1]
 * @throws RangeError     a value not finite or out of its sign
 * @source derived, from equilibrium of a linear spring with an exponential force
 * @example pulledDeflection({ pull: 1000, decay: 0.02, stiffness: 1e7, sides: 2 }).amplification // 1.01015
 */
export function pulledDeflection(part: {
  readonly pull: number
  readonly decay: number
  readonly stiffness: number
  readonly sides: number
}): {
  readonly deflection: number | undefined
  readonly amplification: number | undefined
  readonly closeness: number
} {
  const { pull: F, decay: ℓ, stiffness: k, sides: n } = part
  requireNotNegative('pull', F, 'N')
  requirePositive('decay', ℓ, 'm')
  requirePositive('stiffness', k, 'N/m')
  requirePositive('sides', n)
  const s = (n * F) / (k * ℓ)
  requireFinite('pull over stiffness', s)
  const closeness = s * Math.E
  if (closeness > 1) return { deflection: undefined, amplification: undefined, closeness }
  if (s === 0) return { deflection: 0, amplification: 1, closeness }
  // u e^(−u) = s from below: Newton's steps on a concave function never pass the root.
  let u = s
  for (let step = 0; step < 60; step++) {
    const slope = (1 - u) * Math.exp(-u)
    const change = (s - u * Math.exp(-u)) / slope
    if (!(Math.abs(change) > 1e-15 * u) || !(slope > 1e-12)) break
    u = Math.min(1, u + change)
  }
  return { deflection: (u * ℓ) / n, amplification: u / s, closeness }
}
