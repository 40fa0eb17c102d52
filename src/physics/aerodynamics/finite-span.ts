/** Finite span: what a blade with two free ends makes of its section's polar. */
import { requirePositive } from '../../refusal/require.ts'
import type { Polar } from './polar.ts'

/** Least step between neighbouring angles of the result: where lift drops steeply the shift could turn their order. [rad] */
const leastStep = 1e-5

/**
 * Polar of a blade of given aspect ratio from that of its section: the same lift at a larger angle, and with more drag.
 *
 *   α = α₂ + C_L / (π AR),   C_D = C_D₂ + C_L² / (π AR)
 *
 * Holds: a straight blade, elliptic loading; blades of constant chord lose about 5 % more than that. Accuracy: for aspect ratios above 4
 * a few % of the lift slope; in the stall, where the line of lift is not what it is taken for, an estimate.
 *
 * @param polar                of the section                          [1]
 * @param options.aspectRatio  AR  length over chord, > 0              [1]
 * @returns                    points at the shifted angles            [1]
 * @throws RangeError          aspect ratio not above zero
 * @source prandtl1921, finite wings, elliptic distribution of lift, from memory, not opened
 * @example finiteSpanPolar({ angle: Float64Array.of(0, 0.1), lift: Float64Array.of(0, 0.6), drag: Float64Array.of(0.01, 0.01), reynolds: 1e5 }, { aspectRatio: 6 }).drag[1] // 0.029099
 */
export function finiteSpanPolar(polar: Polar, options: { readonly aspectRatio: number }): Polar {
  requirePositive('aspectRatio', options.aspectRatio)
  const k = 1 / (Math.PI * options.aspectRatio)
  const n = polar.angle.length
  const angle = polar.angle.map((α, i) => α + k * polar.lift[i]!)
  for (let i = 1; i < n; i++) angle[i] = Math.max(angle[i]!, angle[i - 1]! + leastStep)
  // the ends of a polar round the whole circle stay where they are
  for (let i = n - 1; i >= 0; i--)
    angle[i] = Math.max(-Math.PI, Math.min(angle[i]!, Math.PI - (n - 1 - i) * leastStep))
  return { ...polar, angle, drag: polar.drag.map((drag, i) => drag + k * polar.lift[i]! ** 2) }
}
