/** Flux linked with a closed wire path, and the volts it gives by motion. */
import { requireFinite, requireLength } from '../../refusal/require.ts'

/**
 * Flux linked with a closed path, from the vector potential at its quadrature points.
 *
 *   ψ = ∮ A·dl ≈ Σ A(points_i)·steps_i
 *
 * Holds: any closed path and any gauge of A. Accuracy: that of the quadrature that made the steps.
 *
 * @param vectorPotentialAtPoints  A  flat, Ax Ay Az for each point  [Wb/m]
 * @param steps                    dl flat, same points              [m]
 * @returns                        ψ  positive by the right-hand rule round the path [Wb]
 * @throws RangeError              lists of unlike length; a sum that is not finite
 * @source jackson1999, section 5.15 (flux through a circuit by Stokes' theorem); from memory, not opened
 * @example pathLinkage(new Float64Array([0, 0.5, 0]), new Float64Array([0, 2, 0])) // 1
 */
export function pathLinkage(vectorPotentialAtPoints: Float64Array, steps: Float64Array): number {
  requireLength('vectorPotentialAtPoints', vectorPotentialAtPoints, steps.length)
  let ψ = 0
  for (let i = 0; i < steps.length; i++) ψ += vectorPotentialAtPoints[i] * steps[i]
  requireFinite('linkage', ψ, 'Wb')
  return ψ
}

/**
 * EMF of a path at rest when the field turns with the rotor, from the flux density on the path.
 *
 *   e = ∮ (v × B)·dl,  v = −Ω ẑ × r
 *
 * The path seen from the rotor moves backwards, hence the minus sign; e = −dψ/dt of the same path. Holds: closed
 * path, field rigid in the rotor. Accuracy: that of the quadrature that made the steps.
 *
 * @param fluxDensityAtPoints  B  flat, Bx By Bz for each point              [T]
 * @param points               r  flat, x y z from a point on the axis       [m]
 * @param steps                dl flat, same points                          [m]
 * @param angularSpeed         Ω  of the rotor, positive turning by +θ       [rad/s]
 * @returns                    e  positive along the path                    [V]
 * @throws RangeError          lists of unlike length; a sum that is not finite
 * @source jackson1999, section 5.15 (Faraday's law for a moving circuit); from memory, not opened
 * @example motionalEmf(new Float64Array([0, 0, 1]), new Float64Array([2, 0, 0]), new Float64Array([1, 0, 0]), 10) // -20
 */
export function motionalEmf(
  fluxDensityAtPoints: Float64Array,
  points: Float64Array,
  steps: Float64Array,
  angularSpeed: number,
): number {
  requireLength('fluxDensityAtPoints', fluxDensityAtPoints, steps.length)
  requireLength('points', points, steps.length)
  requireFinite('angularSpeed', angularSpeed, 'rad/s')
  let sum = 0
  for (let i = 0; i < steps.length; i += 3) {
    const x = points[i]
    const y = points[i + 1]
    // (ẑ × r) × B = (x Bz, y Bz, −x Bx − y By)
    sum +=
      fluxDensityAtPoints[i + 2] * (x * steps[i] + y * steps[i + 1]) -
      (x * fluxDensityAtPoints[i] + y * fluxDensityAtPoints[i + 1]) * steps[i + 2]
  }
  const e = -angularSpeed * sum
  requireFinite('EMF', e, 'V')
  return e
}
