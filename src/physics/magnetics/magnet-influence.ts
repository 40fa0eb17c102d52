/** What a magnet feels of others, and of itself, on the average over its volume. */
import { cuboidDemagnetizingFactor, cylinderDemagnetizingFactor } from './demagnetizing-factor.ts'
import { type Magnet, magnetAxis, magnetFluxDensity } from './magnet.ts'
import { magnetVolumePoints } from './magnet-volume.ts'
import { prismDemagnetizingFactor } from './prism-demagnetizing-factor.ts'

export interface FeelingAccuracy {
  /** Gauss points along each edge of the magnet that feels; 6 when left out. */
  readonly order?: number
  /** As of `magnetFluxDensity`; 1e-7 when left out. */
  readonly relativeError?: number
}

/**
 * Mean flux density of other magnets along a magnet's own axis, over its volume.
 *
 *   ⟨B·ĵ⟩ = (1/V) Σ_i w_i B(r_i)·ĵ
 *
 * ĵ is `magnetAxis` of the own magnet, whatever the sign of its J; B is the field of `sources` alone.
 *
 * Holds: sources outside the own magnet (there B = μ0H). Accuracy: of the sources' J, 2e-4 with a magnet a tenth of the
 * thickness away, better farther off; 1e-3 when one touches.
 *
 * @param own      the magnet that feels, of any shape; its J does not matter   [m], [T]
 * @param sources  the others, images included                                  [m], [T]
 * @param accuracy order of the quadrature; error of far sources                [1]
 * @returns        ⟨B·ĵ⟩                                                        [T]
 * @throws RangeError   what `magnetFluxDensity` refuses
 * @source derived, from the definition of the mean
 * @example magnetInfluence({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.01], polarization: 1 }, [{ centre: [0, 0, 0.03], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.01, height: 0.01, polarization: 1.3 }]) // 0.01871
 */
export function magnetInfluence(
  own: Magnet,
  sources: readonly Magnet[],
  { order = 6, relativeError = 1e-7 }: FeelingAccuracy = {},
): number {
  const { points, weights } = magnetVolumePoints(own, order)
  const B = magnetFluxDensity(sources, points, { relativeError })
  const [x, y, z] = magnetAxis(own)
  let mean = 0
  let volume = 0
  for (let i = 0; i < weights.length; i++) {
    mean += weights[i]! * (B[3 * i]! * x + B[3 * i + 1]! * y + B[3 * i + 2]! * z)
    volume += weights[i]!
  }
  return mean / volume
}

/**
 * Mean μ0H of a magnet along its own axis, over its volume, by itself alone, per unit of its J.
 *
 *   h = ⟨μ0H·ĵ⟩/J = −N
 *
 * with N the demagnetizing factor: closed forms for block and cylinder, a quadrature over the faces of a prism.
 *
 * Holds: uniform J in free space. Accuracy: block and cylinder rounding; prism 1e-6.
 *
 * @param own  any shape                                   [m], [T]
 * @returns    h  −1 (thin plate) to 0 (long rod)          [1]
 * @throws RangeError   lengths not above zero
 * @source derived, from the definition of the demagnetizing factor
 * @example selfFactor({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1.3 }) // -0.333333
 */
export function selfFactor(own: Magnet): number {
  if ('size' in own) return -cuboidDemagnetizingFactor(own.size)
  if ('outline' in own) return -prismDemagnetizingFactor(own)
  return -cylinderDemagnetizingFactor(own)
}
