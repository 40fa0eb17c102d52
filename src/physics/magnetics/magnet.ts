/** Magnetic field of magnets of any shape together, in free space. */
import type { Vector3 } from '../../numerics/vector.ts'
import { addFluxDensity } from './block-flux-density.ts'
import { type BlockMagnet, blockSwitch, requireBlock } from './block-magnet.ts'
import { addVectorPotential } from './block-vector-potential.ts'
import { addCylinderFluxDensity, addCylinderVectorPotential } from './cylinder-field.ts'
import { type CylinderMagnet, cylinderSwitch, requireCylinder } from './cylinder-magnet.ts'
import { type FieldAccuracy, requirePoints } from './magnet-argument.ts'
import { addPrismFluxDensity, addPrismVectorPotential } from './prism-field.ts'
import { type PrismMagnet, prismSwitch } from './prism-magnet.ts'
import { outlineMoments, requirePrism } from './prism-shape.ts'

/** A magnet of uniform J, told apart by its keys: a block has `size`, a prism `outline`, a cylinder `radius`. */
export type Magnet = BlockMagnet | CylinderMagnet | PrismMagnet

/** @internal Refuses a magnet without volume or pose. */
export function requireMagnet(magnet: Magnet, index: number): void {
  if ('size' in magnet) requireBlock(magnet, index)
  else if ('outline' in magnet) requirePrism(magnet, index)
  else requireCylinder(magnet, index)
}

/**
 * Flux density of magnets, summed, at each point; inside a magnet too (B, not μ0H).
 *
 *   B = Σ B(block) + Σ B(cylinder) + Σ B(prism)
 *
 * Holds: free space, uniform fixed J, any point. Accuracy: as `blockFluxDensity`, `cylinderFluxDensity`
 * and `prismFluxDensity`.
 *
 * @param magnets                 magnets of any shape                        [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of one magnet's dipole field allowed as error [1]
 * @returns                       flat Bx By Bz at each point                 [T]
 * @throws RangeError   a magnet without volume, frame not orthonormal, any value not finite, length not 3n
 * @source derived, from superposition
 * @example magnetFluxDensity([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0, 0, 0]))[2] // 0.666667
 */
export function magnetFluxDensity(
  magnets: readonly Magnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireMagnet)
  requirePoints(points)
  const block = blockSwitch.fluxDensity(accuracy)
  const cylinder = cylinderSwitch.fluxDensity(accuracy)
  const prism = prismSwitch.fluxDensity(accuracy)
  const field = new Float64Array(points.length)
  for (const magnet of magnets)
    if ('size' in magnet) addFluxDensity(magnet, points, block, field)
    else if ('outline' in magnet) addPrismFluxDensity(magnet, points, prism, field)
    else addCylinderFluxDensity(magnet, points, cylinder, field)
  return field
}

/**
 * Vector potential of magnets, summed, at each point: Coulomb gauge, zero at infinity.
 *
 *   A = Σ A(block) + Σ A(cylinder) + Σ A(prism)
 *
 * Holds: free space, uniform fixed J, any point. Accuracy: as `blockVectorPotential`,
 * `cylinderVectorPotential` and `prismVectorPotential`.
 *
 * @param magnets                 magnets of any shape                        [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of one magnet's dipole potential allowed as error [1]
 * @returns                       flat Ax Ay Az at each point                 [T·m]
 * @throws RangeError   a magnet without volume, frame not orthonormal, any value not finite, length not 3n
 * @source derived, from superposition
 * @example magnetVectorPotential([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0.01, 0, 0]))[1] // 4.13309e-3
 */
export function magnetVectorPotential(
  magnets: readonly Magnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireMagnet)
  requirePoints(points)
  const block = blockSwitch.vectorPotential(accuracy)
  const cylinder = cylinderSwitch.vectorPotential(accuracy)
  const prism = prismSwitch.vectorPotential(accuracy)
  const potential = new Float64Array(points.length)
  for (const magnet of magnets)
    if ('size' in magnet) addVectorPotential(magnet, points, block, potential)
    else if ('outline' in magnet) addPrismVectorPotential(magnet, points, prism, potential)
    else addCylinderVectorPotential(magnet, points, cylinder, potential)
  return potential
}

/**
 * Unit vector along which a magnet's J counts as positive, in the machine frame.
 *
 *   ĵ = frame[2] (block, cylinder),  ĵ = Σ_i direction_i frame[i] (prism)
 *
 * Holds: any pose. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape                              [m], [T]
 * @returns       ĵ  whatever the sign of J              [1]
 * @throws RangeError   never
 * @source derived, from the definition of the shapes
 * @example magnetAxis({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.01, height: 0.005, polarization: -1 })[2] // 1
 */
export function magnetAxis(magnet: Magnet): Vector3 {
  const { frame } = magnet
  if (!('outline' in magnet)) return frame[2]
  const [a, b, c] = magnet.direction
  return [
    a * frame[0][0] + b * frame[1][0] + c * frame[2][0],
    a * frame[0][1] + b * frame[1][1] + c * frame[2][1],
    a * frame[0][2] + b * frame[1][2] + c * frame[2][2],
  ]
}

/**
 * Volume of a magnet.
 *
 *   V = a b c (block),  V = π r² h (cylinder),  V = A h (prism)
 *
 * Holds: any shape. Accuracy: exact; rounding only.
 *
 * @param magnet  any shape        [m], [T]
 * @returns       V                [m³]
 * @throws RangeError   never
 * @source derived, from elementary geometry
 * @example magnetVolume({ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.01, height: 0.005, polarization: 1 }) // 1.5708e-6
 */
export function magnetVolume(magnet: Magnet): number {
  if ('size' in magnet) return magnet.size[0] * magnet.size[1] * magnet.size[2]
  if ('outline' in magnet) return outlineMoments(magnet.outline).area * magnet.height
  return Math.PI * magnet.radius ** 2 * magnet.height
}
