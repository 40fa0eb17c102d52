/** Current density in a conductor and the heat it makes there. */
import { requireFinite, requirePositive } from '../../refusal/require.ts'

/**
 * Current density in a conductor.
 *
 *   J = I / A
 *
 * Holds: skin effect negligible. Accuracy: exact.
 *
 * @param conductor.current  I  rms where heat is meant                       [A]
 * @param conductor.area     A  of metal, all strands in hand together        [m²]
 * @returns                  J                                                [A/m²]
 * @throws RangeError        area not above zero; current not finite
 * @source derived, definition
 * @example currentDensity({ current: 3, area: 1e-6 }) // 3000000
 */
export function currentDensity(conductor: { readonly current: number; readonly area: number }): number {
  requireFinite('current', conductor.current, 'A')
  requirePositive('area', conductor.area, 'm²')
  return conductor.current / conductor.area
}

/**
 * Heat made per volume of conductor.
 *
 *   p = ρ J²
 *
 * Holds: skin effect negligible, ρ at the conductor's own temperature. Accuracy: exact.
 *
 * @param conductor.density      J  rms    [A/m²]
 * @param conductor.resistivity  ρ         [Ω·m]
 * @returns                      p         [W/m³]
 * @throws RangeError            resistivity not above zero; density not finite
 * @source derived, Joule's law per volume
 * @example heatPerVolume({ density: 5e6, resistivity: 2e-8 }) // 500000
 */
export function heatPerVolume(conductor: { readonly density: number; readonly resistivity: number }): number {
  requireFinite('density', conductor.density, 'A/m²')
  requirePositive('resistivity', conductor.resistivity, 'Ω·m')
  return conductor.resistivity * conductor.density ** 2
}
