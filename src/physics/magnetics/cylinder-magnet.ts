/** Magnetic field of discs and rods polarised along their axis, in free space. */
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import { requirePositive } from '../../refusal/require.ts'
import { addCylinderFluxDensity, addCylinderVectorPotential } from './cylinder-field.ts'
import {
  type FieldAccuracy,
  isPosed,
  requirePoints,
  requirePosed,
  switchAskedFor,
} from './magnet-argument.ts'

/** A solid cylinder about its local z axis, uniformly polarised along it. */
export interface CylinderMagnet {
  readonly centre: Vector3
  /** Rows: local x, y and z unit vectors in the machine frame. */
  readonly frame: Frame3
  readonly radius: number
  /** Full height along local z [m]. */
  readonly height: number
  /** J along local +z, sign allowed [T]. */
  readonly polarization: number
}

// Largest errors of the series cut after the fifth derivative, in units of the equal dipole's least value at the
// same distance, times (distance / unit)⁶: measured over directions and shapes, see the tests
const seriesErrorA = 0.6
const seriesErrorB = 7

/** @internal Where the series may take over in B and in A, in units of the larger of radius and half height. */
export const cylinderSwitch = {
  fluxDensity: (accuracy: FieldAccuracy) => switchAskedFor(accuracy, seriesErrorB, 9),
  vectorPotential: (accuracy: FieldAccuracy) => switchAskedFor(accuracy, seriesErrorA, 8),
}

/** @internal Refuses a cylinder without volume or pose. */
export function requireCylinder(magnet: CylinderMagnet, index: number): void {
  const { radius, height } = magnet
  if (radius > 0 && height > 0 && Number.isFinite(radius + height) && isPosed(magnet)) return
  const name = `magnets[${index}]`
  requirePositive(`${name}.radius`, radius, 'm')
  requirePositive(`${name}.height`, height, 'm')
  requirePosed(name, magnet)
}

/**
 * Flux density of axially polarised cylinders, summed, at each point; inside a magnet too (B, not μ0H).
 *
 *   Bρ = J/π [α C(k, 1, 1, −1)],  Bz = J/π a/(a+ρ) [β C(k, γ², 1, γ)], each from ζ = z − b to z + b
 *
 * with α = a/√(ζ²+(a+ρ)²), β = ζ/√(ζ²+(a+ρ)²), γ = (a−ρ)/(a+ρ), k² = (ζ²+(a−ρ)²)/(ζ²+(a+ρ)²) and C the
 * generalised complete elliptic integral. Both run on one sequence of arithmetic-geometric means. On the wall
 * the axial B is the mean of both sides; on the rim the logarithm of Bρ stops growing at a distance of
 * `edgeRounding` times the larger of radius and half height. A multipole series serves far points.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J close by; far
 * away 2e-10 of the value for a cylinder as long as wide, 1e-9 for one ten times as long or as flat; with `relativeError` what that asks for.
 *
 * @param magnets                 cylinders                                   [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the cylinder's dipole field allowed as error [1]
 * @returns                       flat Bx By Bz at each point                 [T]
 * @throws RangeError   radius or height not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source derby2010, equations 3 to 6 (field of an ideal solenoid), (from memory, not opened)
 * @example cylinderFluxDensity([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.01, height: 0.02, polarization: 1 }], new Float64Array([0, 0, 0]))[2] // 0.707107
 */
export function cylinderFluxDensity(
  magnets: readonly CylinderMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireCylinder)
  requirePoints(points)
  const asked = cylinderSwitch.fluxDensity(accuracy)
  const field = new Float64Array(points.length)
  for (const magnet of magnets) addCylinderFluxDensity(magnet, points, asked, field)
  return field
}

/**
 * Vector potential of axially polarised cylinders, summed, at each point: Coulomb gauge, zero at infinity.
 *
 *   Aφ = J a² ρ/(2π) [ζ ∫ sin²φ/(D² √(D²+ζ²)) dφ], φ = 0 … π, D² = a² + ρ² − 2aρ cos φ, from ζ = z − b to z + b
 *
 * the wall current's potential, integrated along the axis and by parts round the wall: no term cancels near the
 * axis. Close to the wall the integral is (C(k, 1, γ², 1) − γ² C(k, γ², 1, 1)) of complete elliptic integrals;
 * elsewhere evenly spaced angles are exact to rounding. A is continuous everywhere.
 *
 * Holds: free space, uniform fixed J (recoil permeability 1), any point. Accuracy: near 1e-15 J a close by; far
 * away 2e-10 of the value for a cylinder as long as wide, 1e-9 for one ten times as long or as flat; with `relativeError` what that asks for.
 *
 * @param magnets                 cylinders                                   [m], [T]
 * @param points                  flat x y z of each point                    [m]
 * @param accuracy.relativeError  share of the cylinder's dipole potential allowed as error [1]
 * @returns                       flat Ax Ay Az at each point                 [T·m]
 * @throws RangeError   radius or height not above zero, frame not orthonormal, any value not finite, length not 3n
 * @source derived, from the wall current J/μ0 and the potential of a current ring
 * @example cylinderVectorPotential([{ centre: [0, 0, 0], frame: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], radius: 0.01, height: 0.02, polarization: 1 }], new Float64Array([0.01, 0, 0]))[1] // 3.83895e-3
 */
export function cylinderVectorPotential(
  magnets: readonly CylinderMagnet[],
  points: Float64Array,
  accuracy: FieldAccuracy = {},
): Float64Array {
  magnets.forEach(requireCylinder)
  requirePoints(points)
  const asked = cylinderSwitch.vectorPotential(accuracy)
  const potential = new Float64Array(points.length)
  for (const magnet of magnets) addCylinderVectorPotential(magnet, points, asked, potential)
  return potential
}
