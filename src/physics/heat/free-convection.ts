/** Heat that rises by itself: Nusselt numbers of free convection on plates and cylinders. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Rayleigh numbers for which each correlation was published. */
export const verticalPlateRange: readonly [number, number] = [0.1, 1e12]
export const horizontalCylinderRange: readonly [number, number] = [1e-6, 1e12]
export const horizontalPlateUpRange: readonly [number, number] = [1e4, 1e11]
export const horizontalPlateDownRange: readonly [number, number] = [1e5, 1e11]

/**
 * Rayleigh number: buoyancy against viscosity and heat diffusion.
 *
 *   Ra = g β |ΔT| L³ / (ν α)
 *
 * Holds: β ΔT well below 1. Accuracy: exact by definition; that of the properties handed in.
 *
 * @param flow.temperatureDifference  ΔT  surface less surroundings, either sign  [K]
 * @param flow.length                 L   the length the correlation asks for, > 0 [m]
 * @param flow.expansion              β   volume expansion, > 0                   [1/K]
 * @param flow.kinematicViscosity     ν   > 0                                     [m2/s]
 * @param flow.diffusivity            α   thermal, > 0                            [m2/s]
 * @param flow.gravity                g   9.80665 if left out                     [m/s2]
 * @returns                           Ra                                          [1]
 * @throws RangeError                 a value not finite; a length or property not above zero
 * @source bergman2011, section 9.2, definition of the Rayleigh number, from memory, not opened
 * @example rayleighNumber({ temperatureDifference: 50, length: 0.08, expansion: 1 / 318, kinematicViscosity: 1.75e-5, diffusivity: 1.75e-5 / 0.7241, gravity: 9.81 }) // 1.867e6
 */
export function rayleighNumber(flow: {
  readonly temperatureDifference: number
  readonly length: number
  readonly expansion: number
  readonly kinematicViscosity: number
  readonly diffusivity: number
  readonly gravity?: number | undefined
}): number {
  const { length: L, expansion: β, kinematicViscosity: ν, diffusivity: α, gravity: g = 9.80665 } = flow
  const ΔT = Math.abs(flow.temperatureDifference)
  requireNotNegative('temperatureDifference', ΔT, 'K')
  requirePositive('length', L, 'm')
  requirePositive('expansion', β, '1/K')
  requirePositive('kinematicViscosity', ν, 'm2/s')
  requirePositive('diffusivity', α, 'm2/s')
  requireNotNegative('gravity', g, 'm/s2')
  return (g * β * ΔT * L ** 3) / (ν * α)
}

function check(number: { readonly rayleigh: number; readonly prandtl: number }): void {
  requireNotNegative('rayleigh', number.rayleigh)
  requirePositive('prandtl', number.prandtl)
}

/**
 * Mean Nusselt number of a vertical plate, over its height; also of a vertical cylinder with
 * diameter ≥ 35 · height / Gr^(1/4).
 *
 *   Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))²
 *
 * Holds: uniform surface temperature, 0.1 < Ra < 1e12, any Pr. Accuracy: ±10 % of measurements.
 *
 * @param number.rayleigh  Ra  over the height, ≥ 0                    [1]
 * @param number.prandtl   Pr  > 0                                     [1]
 * @returns                Nu  h · height / k                          [1]
 * @throws RangeError      a value not finite or out of its sign
 * @source churchill-chu1975-plate, equation 9, from memory, not opened
 * @example verticalPlateNusselt({ rayleigh: 7.649e8, prandtl: 0.7202 }) // 113.34
 */
export function verticalPlateNusselt(number: {
  readonly rayleigh: number
  readonly prandtl: number
}): number {
  check(number)
  const { rayleigh: Ra, prandtl: Pr } = number
  return (0.825 + (0.387 * Ra ** (1 / 6)) / (1 + (0.492 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2
}

/**
 * Mean Nusselt number of a horizontal cylinder, over its diameter.
 *
 *   Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))²
 *
 * Holds: uniform surface temperature, long cylinder, 1e-6 < Ra < 1e12. Accuracy: ±10 % of measurements.
 *
 * @param number.rayleigh  Ra  over the diameter, ≥ 0                  [1]
 * @param number.prandtl   Pr  > 0                                     [1]
 * @returns                Nu  h · diameter / k                        [1]
 * @throws RangeError      a value not finite or out of its sign
 * @source churchill-chu1975-cylinder, equation 10, from memory, not opened
 * @example horizontalCylinderNusselt({ rayleigh: 1.867e6, prandtl: 0.7241 }) // 17.39
 */
export function horizontalCylinderNusselt(number: {
  readonly rayleigh: number
  readonly prandtl: number
}): number {
  check(number)
  const { rayleigh: Ra, prandtl: Pr } = number
  return (0.6 + (0.387 * Ra ** (1 / 6)) / (1 + (0.559 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2
}

/**
 * Mean Nusselt number of a horizontal plate whose hot side looks up (or cold side down).
 *
 *   Nu = max(0.54 Ra^(1/4), 0.15 Ra^(1/3)),  length = area / perimeter
 *
 * Holds: 1e4 < Ra < 1e11. The greater of the two branches removes the step that the textbooks leave at
 * Ra = 1e7; they meet at 4.7e6. Accuracy: ±15 % of measurements.
 *
 * @param number.rayleigh  Ra  over area / perimeter, ≥ 0              [1]
 * @returns                Nu  h · (area / perimeter) / k              [1]
 * @throws RangeError      a value not finite or below zero
 * @source lloyd-moran1974, both branches as given in cengel2015, table 9-1
 * @example horizontalPlateUpNusselt({ rayleigh: 1e6 }) // 17.076
 */
export function horizontalPlateUpNusselt(number: { readonly rayleigh: number }): number {
  const { rayleigh: Ra } = number
  requireNotNegative('rayleigh', Ra)
  return Math.max(0.54 * Ra ** 0.25, 0.15 * Ra ** (1 / 3))
}

/**
 * Mean Nusselt number of a horizontal plate whose hot side looks down (or cold side up).
 *
 *   Nu = 0.27 Ra^(1/4),  length = area / perimeter
 *
 * Holds: 1e5 < Ra < 1e11. Accuracy: ±20 % of measurements.
 *
 * @param number.rayleigh  Ra  over area / perimeter, ≥ 0              [1]
 * @returns                Nu  h · (area / perimeter) / k              [1]
 * @throws RangeError      a value not finite or below zero
 * @source mcadams1954, as given in cengel2015, table 9-1, equation 9-24
 * @example horizontalPlateDownNusselt({ rayleigh: 1.195e7 }) // 15.875
 */
export function horizontalPlateDownNusselt(number: { readonly rayleigh: number }): number {
  const { rayleigh: Ra } = number
  requireNotNegative('rayleigh', Ra)
  return 0.27 * Ra ** 0.25
}
