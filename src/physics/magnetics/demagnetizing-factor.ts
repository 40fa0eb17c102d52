/** Demagnetizing factor of a uniformly polarised cuboid, averaged over its volume. */
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
