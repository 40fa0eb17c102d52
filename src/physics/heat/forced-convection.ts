/** Heat that wind carries off: Nusselt numbers of forced convection on plates and cylinders. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Reynolds numbers for which each correlation was published. */
export const flatPlateRange: readonly [number, number] = [1e3, 1e7]
export const crossflowCylinderRange: readonly [number, number] = [1e2, 1e7]

/** Reynolds number over the length at which the boundary layer of a smooth plate turns turbulent. */
export const plateTransition = 5e5

/**
 * Mean Nusselt number of a flat plate along the wind, over its length.
 *
 *   Nu = 0.664 Re^(1/2) Pr^(1/3)                    for Re < 5e5
 *   Nu = (0.037 (Re^0.8 − Rec^0.8) + 0.664 Rec^(1/2)) Pr^(1/3)   beyond
 *
 * Holds: smooth leading edge, 0.6 < Pr < 60, up to Re = 1e7. Accuracy: 5 % laminar, 15 % turbulent.
 *
 * @param number.reynolds    Re   over the length, ≥ 0                          [1]
 * @param number.prandtl     Pr   > 0                                           [1]
 * @param number.transition  Rec  5e5 if left out; 0 for a tripped or ragged edge [1]
 * @returns                  Nu   h · length / k                                [1]
 * @throws RangeError        a value not finite or out of its sign
 * @source bergman2011, equations 7.30 and 7.38, from memory, not opened
 * @example flatPlateNusselt({ reynolds: 40241, prandtl: 2962 }) // 1913
 */
export function flatPlateNusselt(number: {
  readonly reynolds: number
  readonly prandtl: number
  readonly transition?: number | undefined
}): number {
  const { reynolds: Re, prandtl: Pr, transition: Rec = plateTransition } = number
  requireNotNegative('reynolds', Re)
  requirePositive('prandtl', Pr)
  requireNotNegative('transition', Rec)
  const laminar = 0.664 * Math.sqrt(Math.min(Re, Rec))
  return (laminar + 0.037 * Math.max(0, Re ** 0.8 - Rec ** 0.8)) * Math.cbrt(Pr)
}

/**
 * Mean Nusselt number of a cylinder across the wind, over its diameter.
 *
 *   Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4) · (1 + (Re/282000)^(5/8))^(4/5)
 *
 * Holds: Re Pr > 0.2, properties at film temperature. Accuracy: ±20 % of measurements.
 *
 * @param number.reynolds  Re  over the diameter, ≥ 0                  [1]
 * @param number.prandtl   Pr  > 0                                     [1]
 * @returns                Nu  h · diameter / k                        [1]
 * @throws RangeError      a value not finite or out of its sign
 * @source churchill-bernstein1977, equation 9, from memory, not opened
 * @example crossflowCylinderNusselt({ reynolds: 6071, prandtl: 0.7 }) // 40.64
 */
export function crossflowCylinderNusselt(number: {
  readonly reynolds: number
  readonly prandtl: number
}): number {
  const { reynolds: Re, prandtl: Pr } = number
  requireNotNegative('reynolds', Re)
  requirePositive('prandtl', Pr)
  return (
    0.3 +
    ((0.62 * Math.sqrt(Re) * Math.cbrt(Pr)) / (1 + (0.4 / Pr) ** (2 / 3)) ** 0.25) *
      (1 + (Re / 282000) ** (5 / 8)) ** 0.8
  )
}

/**
 * Nusselt number where free and forced convection help one another, all three over the same length.
 *
 *   Nu = (Nu_free³ + Nu_forced³)^(1/3)
 *
 * Holds: flows in the same sense or at right angles. Accuracy: ±15 % beside the two numbers' own.
 *
 * @param number.free    Nu_free    ≥ 0                                [1]
 * @param number.forced  Nu_forced  ≥ 0                                [1]
 * @returns              Nu                                            [1]
 * @throws RangeError    a value not finite or below zero
 * @source churchill1977, the exponent 3 for assisting flow, from memory, not opened
 * @example combinedNusselt({ free: 3, forced: 4 }) // 4.498
 */
export function combinedNusselt(number: { readonly free: number; readonly forced: number }): number {
  const { free, forced } = number
  requireNotNegative('free', free)
  requireNotNegative('forced', forced)
  const greater = Math.max(free, forced)
  // Cubes of the ratio alone: those of the numbers would leave the range of doubles.
  return greater === 0 ? 0 : greater * Math.cbrt(1 + (Math.min(free, forced) / greater) ** 3)
}

/**
 * Heat transfer coefficient from a Nusselt number.
 *
 *   h = Nu k / L
 *
 * Holds: by definition. Accuracy: exact; that of what is handed in.
 *
 * @param surface.nusselt       Nu  ≥ 0                                [1]
 * @param surface.conductivity  k   of the fluid, > 0                  [W/(m·K)]
 * @param surface.length        L   the length Nu refers to, > 0       [m]
 * @returns                     h                                      [W/(m2·K)]
 * @throws RangeError           a value not finite or out of its sign
 * @source derived, from the definition of the Nusselt number
 * @example heatTransferCoefficient({ nusselt: 17.39, conductivity: 0.02699, length: 0.08 }) // 5.867
 */
export function heatTransferCoefficient(surface: {
  readonly nusselt: number
  readonly conductivity: number
  readonly length: number
}): number {
  const { nusselt: Nu, conductivity: k, length: L } = surface
  requireNotNegative('nusselt', Nu)
  requirePositive('conductivity', k, 'W/(m·K)')
  requirePositive('length', L, 'm')
  return (Nu * k) / L
}
