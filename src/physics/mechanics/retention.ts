/** What holds a magnet on a turning rotor: the pull outward and the stress in wall, band and bond. */
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Force outward on a mass carried round.
 *
 *   F = m r ω²
 *
 * Holds: always; r is to the centre of mass. Accuracy: exact.
 *
 * @param body.mass    m  ≥ 0                                          [kg]
 * @param body.radius  r  ≥ 0                                          [m]
 * @param body.speed   ω  either sign                                  [rad/s]
 * @returns            F  outward                                      [N]
 * @throws RangeError  a value not finite or out of its sign
 * @source derived, from Newton's second law in the turning frame
 * @example centrifugalForce({ mass: 0.06, radius: 0.12, speed: 1900 * Math.PI / 30 }) // 285
 */
export function centrifugalForce(body: {
  readonly mass: number
  readonly radius: number
  readonly speed: number
}): number {
  const { mass: m, radius: r, speed: ω } = body
  requireNotNegative('mass', m, 'kg')
  requireNotNegative('radius', r, 'm')
  requireFinite('speed', ω, 'rad/s')
  return m * r * ω * ω
}

// Rectangular plate, all edges held, even pressure: β1 (stress at the middle of the long edge), α (deflection).
const sides = [1, 1.2, 1.4, 1.6, 1.8, 2, 5]
const stressFactor = piecewiseLinear(sides, [0.3078, 0.3834, 0.4356, 0.468, 0.4872, 0.4974, 0.5])
const deflectionFactor = piecewiseLinear(sides, [0.0138, 0.0188, 0.0226, 0.0251, 0.0267, 0.0277, 0.0284])

/** Wall thickness over short side for which thin-plate bending holds; thicker walls bear more than it says. */
export const pocketWallRange: readonly [number, number] = [0, 0.25]

/**
 * Greatest bending stress and bulge of a pocket's outer wall that a magnet leans on.
 *
 *   σ = β1 F / (a b) · b² / t²,  w = α F / (a b) · b⁴ / (E t³)
 *
 * Holds: wall held at all four edges, the pull spread evenly over a × b, thin (t below b/4), bulge below t/2.
 * A magnet leans mostly on the wall's edges, so this is on the safe side; a wall open at one edge is not covered.
 * Accuracy: 1 % of thin-plate theory between the table's ratios of sides.
 *
 * @param wall.force      F  ≥ 0                                       [N]
 * @param wall.length     a  one side of the wall, > 0                 [m]
 * @param wall.width      b  the other side, > 0                       [m]
 * @param wall.thickness  t  > 0                                       [m]
 * @param wall.modulus    E  > 0                                       [Pa]
 * @returns               bending stress [Pa] and deflection           [m]
 * @throws RangeError     a value not finite or out of its sign
 * @source roark, table 11.4, case 8a (all edges fixed, uniform load, ν = 0.3), from memory, not opened
 * @example pocketWallStress({ force: 285, length: 0.04, width: 0.01, thickness: 0.002, modulus: 2e9 }).stress // 8.8908e6
 */
export function pocketWallStress(wall: {
  readonly force: number
  readonly length: number
  readonly width: number
  readonly thickness: number
  readonly modulus: number
}): { readonly stress: number; readonly deflection: number } {
  const { force: F, thickness: t, modulus: E } = wall
  requireNotNegative('force', F, 'N')
  requirePositive('length', wall.length, 'm')
  requirePositive('width', wall.width, 'm')
  requirePositive('thickness', t, 'm')
  requirePositive('modulus', E, 'Pa')
  const a = Math.max(wall.length, wall.width)
  const b = Math.min(wall.length, wall.width)
  const pressure = F / (a * b)
  const ratio = (b / t) ** 2
  return {
    stress: stressFactor(a / b) * pressure * ratio,
    deflection: (deflectionFactor(a / b) * pressure * ratio * b * b) / (E * t),
  }
}

/**
 * Mean shear stress where a wall or a glue line is sheared off.
 *
 *   τ = F / A
 *
 * Holds: mean over the area. Accuracy: exact as a mean; at the ends of a glue line it is two to three times that.
 *
 * @param joint.force  F  ≥ 0                                          [N]
 * @param joint.area   A  sheared area, > 0                            [m2]
 * @returns            τ                                               [Pa]
 * @throws RangeError  a value not finite or out of its sign
 * @source derived, from equilibrium
 * @example shearStress({ force: 285, area: 0.0008 }) // 356250
 */
export function shearStress(joint: { readonly force: number; readonly area: number }): number {
  requireNotNegative('force', joint.force, 'N')
  requirePositive('area', joint.area, 'm2')
  return joint.force / joint.area
}

/**
 * Hoop stress in a band round the rotor: its own weight, and the magnets that press on it.
 *
 *   σ = d ω² R² + n m r ω² / (2 π w t)
 *
 * Holds: thin band, magnets near enough to one another to press evenly; nothing else holds them.
 * Accuracy: exact for an even pressure; between spread-out magnets the band bends and bears more.
 *
 * @param band.radius       R  mean radius of the band, > 0            [m]
 * @param band.width        w  along the axis, > 0                     [m]
 * @param band.thickness    t  > 0                                     [m]
 * @param band.density      d  of the band, ≥ 0                        [kg/m3]
 * @param band.carriedMass  n m  of all magnets together, ≥ 0          [kg]
 * @param band.massRadius   r  to the magnets' centres, ≥ 0            [m]
 * @param band.speed        ω  either sign                             [rad/s]
 * @returns                 σ                                          [Pa]
 * @throws RangeError       a value not finite or out of its sign
 * @source shigley, section 3-16, thin rotating ring, from memory, not opened
 * @example bandHoopStress({ radius: 0.1, width: 0.02, thickness: 0.001, density: 7850, carriedMass: 0, massRadius: 0, speed: 200 }) // 3140000
 */
export function bandHoopStress(band: {
  readonly radius: number
  readonly width: number
  readonly thickness: number
  readonly density: number
  readonly carriedMass: number
  readonly massRadius: number
  readonly speed: number
}): number {
  const { radius: R, width: w, thickness: t, density: d, carriedMass, massRadius, speed: ω } = band
  requirePositive('radius', R, 'm')
  requirePositive('width', w, 'm')
  requirePositive('thickness', t, 'm')
  requireNotNegative('density', d, 'kg/m3')
  const outward = centrifugalForce({ mass: carriedMass, radius: massRadius, speed: ω })
  return d * (ω * R) ** 2 + outward / (2 * Math.PI * w * t)
}
