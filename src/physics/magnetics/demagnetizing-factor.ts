/** Demagnetizing factors of uniformly polarised cuboids and cylinders, averaged over the volume. */
import { completeElliptic } from '../../numerics/elliptic.ts'
import { requirePositive } from '../../refusal/require.ts'

/** Longest to shortest edge up to which rounding leaves six digits. */
export const demagnetizingAspectRange = [1, 1000] as const

/**
 * Magnetometric demagnetizing factor of a cuboid along its third edge.
 *
 *   N = −⟨H⟩/M, πN = closed form in a, b, c with logarithms of (r + x)/(r − x) and one arctangent
 *
 * The factors along the three edges sum to one; a cube has 1/3.
 *
 * Holds: uniform polarization along the third edge, average over the volume. Accuracy: rounding, a few 1e-16
 * times the square of longest over shortest edge, within `demagnetizingAspectRange`.
 *
 * @param size  2a, 2b, 2c; edges, the third along the polarization   [m]
 * @returns     N  from 0 (long rod) to 1 (thin plate)                [1]
 * @throws RangeError   an edge not above zero or not finite
 * @source aharoni1998, equation 1 (from memory, not opened)
 * @example cuboidDemagnetizingFactor([1, 1, 1]) // 0.333333
 */
export function cuboidDemagnetizingFactor(size: readonly [number, number, number]): number {
  size.forEach((edge, i) => {
    requirePositive(`size[${i}]`, edge, 'm')
  })
  const unit = Math.max(...size)
  const [a, b, c] = [size[0] / unit, size[1] / unit, size[2] / unit]
  const R = Math.hypot(a, b, c)
  const [ab, bc, ac] = [Math.hypot(a, b), Math.hypot(b, c), Math.hypot(a, c)]
  // ln((r + x)/(r − x)) with r − x = (r² − x²)/(r + x): no cancellation when x is nearly r
  const ln = (r: number, x: number, rest: number) => Math.log((r + x) ** 2 / rest)
  const πN =
    ((c * c - b * b) / (2 * b * c)) * ln(R, a, b * b + c * c) +
    ((c * c - a * a) / (2 * a * c)) * ln(R, b, a * a + c * c) +
    (b / (2 * c)) * ln(ab, a, b * b) +
    (a / (2 * c)) * ln(ab, b, a * a) -
    (c / (2 * a)) * ln(bc, b, c * c) -
    (c / (2 * b)) * ln(ac, a, c * c) +
    2 * Math.atan((a * b) / (c * R)) +
    (a ** 3 + b ** 3 - 2 * c ** 3) / (3 * a * b * c) +
    ((a * a + b * b - 2 * c * c) / (3 * a * b * c)) * R +
    (c / (a * b)) * (ac + bc) -
    (ab ** 3 + bc ** 3 + ac ** 3) / (3 * a * b * c)
  return Math.min(1, Math.max(0, πN / Math.PI))
}

/**
 * Magnetometric demagnetizing factor of a cylinder along its axis.
 *
 *   N = 1 − K_L,  K_L = 4/(3π k′) [(k′²/k²)(K − E) + E − k],  k = d/√(d²+h²), k′ = h/√(d²+h²)
 *
 * The mean B of the cylinder is J times the factor K_L by which a solenoid of its shape falls short of an endless
 * one, since both are the flux of the same current sheet through itself.
 *
 * Holds: uniform polarization along the axis, average over the volume. Accuracy: rounding, 1e-15 times the larger of 1 and
 * diameter over height; within `demagnetizingAspectRange` 1e-12.
 *
 * @param cylinder.radius  d/2                                        [m]
 * @param cylinder.height  h                                          [m]
 * @returns                N  from 0 (long rod) to 1 (thin disc)      [1]
 * @throws RangeError   radius or height not above zero or not finite
 * @source grover1946, chapter 16 Nagaoka's factor in Lorenz's closed form (from memory, not opened)
 * @example cylinderDemagnetizingFactor({ radius: 0.5, height: 1 }) // 0.311577
 */
export function cylinderDemagnetizingFactor(cylinder: {
  readonly radius: number
  readonly height: number
}): number {
  requirePositive('radius', cylinder.radius, 'm')
  requirePositive('height', cylinder.height, 'm')
  const unit = Math.max(cylinder.radius, cylinder.height)
  const d = (2 * cylinder.radius) / unit
  const h = cylinder.height / unit
  const diagonal = Math.hypot(d, h)
  const k = d / diagonal
  const kʹ = h / diagonal
  const { E, difference } = completeElliptic(k, kʹ)
  const K_L = (4 / (3 * Math.PI * kʹ)) * ((kʹ / k) ** 2 * difference + E - k)
  return Math.min(1, Math.max(0, 1 - K_L))
}
