/** Magnetic field of straight prisms polarised in any direction, in free space. */
import { type FieldAccuracy, requirePoints, switchAskedFor } from './magnet-argument.ts'
import { addPrismFluxDensity, addPrismVectorPotential } from './prism-field.ts'
import { type PrismMagnet, requirePrism } from './prism-shape.ts'

export type { PrismMagnet } from './prism-shape.ts'

// Largest errors of the series cut after the third moments, in units of the equal dipole's least value at the same
// distance, times (distance / unit)⁴: measured over directions and shapes, see the tests
const seriesErrorA = 1.2
const seriesErrorB = 7

/** @internal Where the series may take over in B and in A, in units of the largest extent from the centroid. */
export const prismSwitch = {
  fluxDensity: (accuracy: FieldAccuracy) =>
    accuracy.relativeError === undefined
      ? Number.POSITIVE_INFINITY
      : switchAskedFor(accuracy, seriesErrorB, 7),
  vectorPotential: (accuracy: FieldAccuracy) =>
    accuracy.relativeError === undefined
      ? Number.POSITIVE_INFINITY
      : switchAskedFor(accuracy, seriesErrorA, 6),
}

/**
 * Flux density of uniformly polarised prisms, summed, at each point; inside a magnet too (B, not μ0H).
 *
 *   B = 1/4π Σ_faces [(n (J·n) − J) Ω + (J·n) Σ_edges m ∫dl/R]
 *
 * with n the outward normal of a face, Ω its solid angle (positive before it, negative behind), m the normal of an edge
 * in the face's plane, outward, and ∫dl/R = ln((R0+R1+ℓ)/(R0+R1−ℓ)). The charge sheets' field, with the J
 * inside expressed by the solid angles, which sum to −4π there: no question of inside or outside is ever asked. On a face
 * the tangential B is the mean of both sides. On an edge B has no limit: there the logarithm stops growing at
 * `edgeRounding` units. Far points are served by a series of moments up to the third.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point; outlines need not be convex. Accuracy: near
 * 1e-15 J close by; far away 1e-9 of the value; with `relativeError` what that asks for.
 *
 * @param magnets                 prisms                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the prism's dipole field allowed as error [1]
 * @returns                       flat Bx By Bz at each point                 [T]
 * @throws RangeError   outline clockwise, crossed or with an edge of no length, height not above zero, direction
 *   not a unit vector, frame not orthonormal, any value not finite, length not 3n
 * @source wilton1984, potential of a uniform polygon and its gradient (from memory, not opened); assembly derived
 * @example prismFluxDensity([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], outline: new Float64Array([-0.01, -0.01, 0.01, -0.01, 0.01, 0.01, -0.01, 0.01]), height: 0.02, direction: [0, 0, 1], polarization: 1 }], new Float64Array([0, 0, 0]))[2] // 0.666667
 */
export function prismFluxDensity(
  magnets: readonly PrismMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requirePrism)
  requirePoints(points)
  const asked = prismSwitch.fluxDensity(accuracy)
  const field = new Float64Array(points.length)
  for (const magnet of magnets) addPrismFluxDensity(magnet, points, asked, field)
  return field
}

/**
 * Vector potential of uniformly polarised prisms, summed, at each point: Coulomb gauge, zero at infinity.
 *
 *   A = 1/4π Σ_faces (J × n) ∬dS/R,  ∬dS/R = Σ_edges P ∫dl/R − |d| |Ω|
 *
 * the surface currents of all faces, each face's ∬dS/R in closed form; P is the distance from the point's foot to an
 * edge, d that from the point to the plane. A is continuous everywhere, faces and edges included.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point; outlines need not be convex. Accuracy: near
 * 1e-15 J l close by; far away 1e-9 of the value; with `relativeError` what that asks for.
 *
 * @param magnets                 prisms                                      [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the prism's dipole potential allowed as error [1]
 * @returns                       flat Ax Ay Az at each point                 [T·m]
 * @throws RangeError   outline clockwise, crossed or with an edge of no length, height not above zero, direction
 *   not a unit vector, frame not orthonormal, any value not finite, length not 3n
 * @source wilton1984, potential of a uniform polygon (from memory, not opened); assembly derived
 * @example prismVectorPotential([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], outline: new Float64Array([-0.01, -0.01, 0.01, -0.01, 0.01, 0.01, -0.01, 0.01]), height: 0.02, direction: [0, 0, 1], polarization: 1 }], new Float64Array([0.01, 0, 0]))[1] // 4.13309e-3
 */
export function prismVectorPotential(
  magnets: readonly PrismMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requirePrism)
  requirePoints(points)
  const asked = prismSwitch.vectorPotential(accuracy)
  const potential = new Float64Array(points.length)
  for (const magnet of magnets) addPrismVectorPotential(magnet, points, asked, potential)
  return potential
}
