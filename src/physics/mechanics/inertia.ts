/** How hard a rotor is to spin up: polar moments of inertia about its axis. */
import { refuse, requireFinite, requireLength, requireNotNegative } from '../../refusal/require.ts'

/**
 * Moment of inertia of a ring or disc about its axis.
 *
 *   I = m (ri² + ro²) / 2
 *
 * Holds: even density; a disc has ri = 0, a thin hoop ri = ro. Accuracy: exact.
 *
 * @param ring.mass    m   ≥ 0                                         [kg]
 * @param ring.inner   ri  ≥ 0                                         [m]
 * @param ring.outer   ro  at least ri                                 [m]
 * @returns            I                                               [kg·m2]
 * @throws RangeError  a value not finite or out of its sign; ro below ri
 * @source shigley, table A-18, from memory, not opened
 * @example ringInertia({ mass: 2, inner: 0, outer: 0.1 }) // 0.01
 */
export function ringInertia(ring: {
  readonly mass: number
  readonly inner: number
  readonly outer: number
}): number {
  const { mass: m, inner: ri, outer: ro } = ring
  requireNotNegative('mass', m, 'kg')
  requireNotNegative('inner', ri, 'm')
  requireNotNegative('outer', ro, 'm')
  if (ro < ri)
    refuse({ name: 'outer', condition: 'at least inner', value: ro, unit: 'm', code: 'below-minimum' })
  return (m * (ri * ri + ro * ro)) / 2
}

/**
 * Moment of inertia of a block about an axis that runs along one of its edges' directions.
 *
 *   I = m ((a² + b²) / 12 + r²)
 *
 * Holds: even density; a and b are the sides across the axis, r from the axis to the block's middle.
 * Accuracy: exact.
 *
 * @param block.mass    m  ≥ 0                                         [kg]
 * @param block.length  a  ≥ 0                                         [m]
 * @param block.width   b  ≥ 0                                         [m]
 * @param block.radius  r  ≥ 0                                         [m]
 * @returns             I                                              [kg·m2]
 * @throws RangeError   a value not finite or out of its sign
 * @source shigley, table A-18, rectangular prism, with the parallel-axis theorem, from memory, not opened
 * @example blockInertia({ mass: 0.06, length: 0.04, width: 0.02, radius: 0.12 }) // 8.74e-4
 */
export function blockInertia(block: {
  readonly mass: number
  readonly length: number
  readonly width: number
  readonly radius: number
}): number {
  const { mass: m, length: a, width: b, radius: r } = block
  requireNotNegative('mass', m, 'kg')
  requireNotNegative('length', a, 'm')
  requireNotNegative('width', b, 'm')
  requireNotNegative('radius', r, 'm')
  return m * ((a * a + b * b) / 12 + r * r)
}

/**
 * Mass of a blade, its moment of inertia about the rotor's axis, and its centre of mass.
 *
 *   m = ∫ μ dr,  I = ∫ μ r² dr,  rc = ∫ μ r dr / m ;  μ = mass per length, straight between stations
 *
 * Holds: a blade thin against its radius; multiply by the number of blades. Accuracy: exact for μ straight
 * between stations.
 *
 * @param blade.radii          r  rising, ≥ 0 (n, at least 2)          [m]
 * @param blade.massPerLength  μ  ≥ 0 (n)                              [kg/m]
 * @returns                    mass [kg], inertia [kg·m2], centre      [m]
 * @throws RangeError          lists that do not match or do not rise; a value not finite or below zero
 * @source derived, integrating each piece in closed form
 * @example bladeInertia({ radii: [0, 1], massPerLength: [3, 3] }).inertia // 1
 */
export function bladeInertia(blade: {
  readonly radii: ArrayLike<number>
  readonly massPerLength: ArrayLike<number>
}): { readonly mass: number; readonly inertia: number; readonly centre: number } {
  const { radii, massPerLength } = blade
  requireLength('massPerLength', massPerLength, radii.length)
  if (radii.length < 2)
    refuse({ name: 'radii', condition: 'at least 2 long', value: radii.length, code: 'wrong-length' })
  let mass = 0
  let moment = 0
  let inertia = 0
  requireNotNegative('radii[0]', radii[0]!, 'm')
  requireNotNegative('massPerLength[0]', massPerLength[0]!, 'kg/m')
  for (let i = 1; i < radii.length; i++) {
    const a = radii[i - 1]!
    const b = radii[i]!
    const p = massPerLength[i - 1]!
    const q = massPerLength[i]!
    requireFinite(`radii[${i}]`, b, 'm')
    requireNotNegative(`massPerLength[${i}]`, q, 'kg/m')
    if (!(b > a))
      refuse({
        name: `radii[${i}]`,
        condition: `above radii[${i - 1}]`,
        value: b,
        unit: 'm',
        code: 'not-increasing',
      })
    const h = b - a
    mass += (h * (p + q)) / 2
    moment += (h * (p * (2 * a + b) + q * (a + 2 * b))) / 6
    inertia += (h * (p * (3 * a * a + 2 * a * b + b * b) + q * (a * a + 2 * a * b + 3 * b * b))) / 12
  }
  return { mass, inertia, centre: mass > 0 ? moment / mass : (radii[0]! + radii[radii.length - 1]!) / 2 }
}
