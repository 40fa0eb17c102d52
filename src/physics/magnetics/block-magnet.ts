/** Magnetic field of uniformly polarised cuboids ("blocks") in any pose, in free space. */
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import { requirePositive } from '../../refusal/require.ts'
import { addFluxDensity } from './block-flux-density.ts'
import { addVectorPotential } from './block-vector-potential.ts'
import {
  type FieldAccuracy,
  isPosed,
  requirePoints,
  requirePosed,
  switchAskedFor,
} from './magnet-argument.ts'

/** A cuboid of uniform polarization along its local z axis. */
export interface BlockMagnet {
  readonly centre: Vector3
  /** Rows: local x, y and z unit vectors in the machine frame. */
  readonly frame: Frame3
  /** Full edge lengths along local x, y and z [m]. */
  readonly size: Vector3
  /** J along local +z, sign allowed [T]. */
  readonly polarization: number
}

// Largest errors of the series cut after the fifth derivative, in units of the equal dipole's value at the
// same distance, times (distance / half longest edge)⁶: measured over directions and shapes, see the tests.
const seriesErrorA = 1.6
const seriesErrorB = 12

/** @internal Where the series may take over in B and in A, in half longest edges. */
export const blockSwitch = {
  fluxDensity: (accuracy: FieldAccuracy) => switchAskedFor(accuracy, seriesErrorB, 9),
  vectorPotential: (accuracy: FieldAccuracy) => switchAskedFor(accuracy, seriesErrorA, 8),
}

/** @internal Refuses a block without volume or pose; its index is spelt out only at fault: few points see many blocks. */
export function requireBlock(magnet: BlockMagnet, index: number): void {
  const [w, l, t] = magnet.size
  if (w > 0 && l > 0 && t > 0 && Number.isFinite(w + l + t) && isPosed(magnet)) return
  const name = `magnets[${index}]`
  for (let i = 0; i < 3; i++) requirePositive(`${name}.size[${i}]`, magnet.size[i]!, 'm')
  requirePosed(name, magnet)
}

/**
 * Flux density of polarised blocks, summed, at each point; inside a magnet too (B, not μ0H).
 *
 *   B = J/4π (Σ± ln(Y+R), Σ± ln(X+R), Σ± sgn(XY) atan(Z R/|XY|)) over the eight corners
 *
 * with X, Y, Z from corner to point in the block's own axes, R their length, ± the product of the three
 * corner signs. The eight logarithms of a component are one logarithm of a ratio of sums of positive
 * terms, so edges' extensions cost no digits; beyond `distantRatio` a multipole series (dipole, octupole
 * and 32-pole) takes over. On a face the tangential B is the mean of both sides. On an edge B has no
 * limit: there the logarithm stops growing at a distance of `edgeRounding` half longest edges.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J close by; far
 * away 2e-10 (l³/V)^(2/3) of the value, l the longest edge; with `relativeError` what that asks for.
 *
 * @param magnets                 blocks                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the block's dipole field allowed as error [1]
 * @returns                       flat Bx By Bz at each point                 [T]
 * @throws RangeError   size not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source yang1990, closed form of the cuboid (from memory, not opened); pairing of corners derived here
 * @example blockFluxDensity([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0, 0, 0]))[2] // 0.666667
 */
export function blockFluxDensity(
  magnets: readonly BlockMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireBlock)
  requirePoints(points)
  const asked = blockSwitch.fluxDensity(accuracy)
  const field = new Float64Array(points.length)
  for (const magnet of magnets) addFluxDensity(magnet, points, asked, field)
  return field
}

/**
 * Vector potential of polarised blocks, summed, at each point: Coulomb gauge, zero at infinity.
 *
 *   A = J/4π (Σ± F(X,Y,Z), −Σ± F(Y,X,Z), 0),  F = X ln(Z+R) + Z ln(X+R) − Y atan(X Z/(Y R))
 *
 * in the block's own axes: the surface currents of the four side walls, each wall's ∬da/R in closed form.
 * The four arctangents of a wall are one angle of a product of complex numbers; logarithms are taken of
 * ratios. A is continuous everywhere, faces and edges included; a multipole series serves far points.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J l close by; far
 * away 2e-10 (l³/V)^(2/3) of the value, l the longest edge; with `relativeError` what that asks for.
 *
 * @param magnets                 blocks                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the block's dipole potential allowed as error [1]
 * @returns                       flat Ax Ay Az at each point                 [T·m]
 * @throws RangeError   size not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source derived, from the surface currents J/μ0 of the side walls and the potential of a uniform rectangle
 * @example blockVectorPotential([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], size: [0.02, 0.02, 0.02], polarization: 1 }], new Float64Array([0.01, 0, 0]))[1] // 4.13309e-3
 */
export function blockVectorPotential(
  magnets: readonly BlockMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireBlock)
  requirePoints(points)
  const asked = blockSwitch.vectorPotential(accuracy)
  const potential = new Float64Array(points.length)
  for (const magnet of magnets) addVectorPotential(magnet, points, asked, potential)
  return potential
}
