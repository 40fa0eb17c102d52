/** Heat that a turning body throws off: Nusselt numbers of discs and cylinders in still air. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Prandtl numbers for which the fit below follows the similarity solution within 0.01 %. */
export const rotatingDiscPrandtlRange: readonly [number, number] = [0.65, 1]
/** Reynolds numbers ω R²/ν of the disc correlations. */
export const rotatingDiscRange: readonly [number, number] = [1e3, 1e7]
/** Reynolds numbers ω D²/(2 ν) of the cylinder correlation. */
export const rotatingCylinderRange: readonly [number, number] = [8e2, 1e5]

/** Reynolds number ω R²/ν at which the boundary layer of a smooth disc turns turbulent. */
export const discTransition = 2.4e5

/**
 * Mean Nusselt number of one face of a disc turning in still air, over its radius.
 *
 *   Nu = c Re^(1/2),  c = 0.39624 Pr^(0.5484 − 0.0659 ln Pr)   for Re < Rec (c = 0.326 in air)
 *   Nu = 0.015 Re^0.8 − (Rec/Re)^(1/2) (0.015 Rec^0.8 − c Rec^(1/2))   beyond
 *
 * The second line is a laminar centre and a turbulent rim, so the number does not jump. In laminar flow the
 * coefficient is the same at every radius.
 *
 * Holds: isothermal free disc, no wall within a few boundary layers; turbulent part for air. A stator close
 * by changes it by ±30 %; magnets that stand proud of the disc stir it: then take transition = 0.
 * Accuracy: 0.01 % of the similarity solution (laminar); measurements lie up to 10 % higher.
 *
 * @param number.reynolds    Re   ω R² / ν, ≥ 0                                 [1]
 * @param number.prandtl     Pr   > 0                                           [1]
 * @param number.transition  Rec  2.4e5 if left out; 0 for turbulent throughout [1]
 * @returns                  Nu   h R / k                                       [1]
 * @throws RangeError        a value not finite or out of its sign
 * @source cobb-saunders1956, turbulent number and transition, from memory, not opened; laminar after millsaps-pohlhausen1952
 * @example rotatingDiscNusselt({ reynolds: 1e4, prandtl: 0.71 }) // 32.6
 */
export function rotatingDiscNusselt(number: {
  readonly reynolds: number
  readonly prandtl: number
  readonly transition?: number | undefined
}): number {
  const { reynolds: Re, prandtl: Pr, transition: Rec = discTransition } = number
  requireNotNegative('reynolds', Re)
  requirePositive('prandtl', Pr)
  requireNotNegative('transition', Rec)
  const c = 0.39624 * Pr ** (0.5484 - 0.0659 * Math.log(Pr))
  const laminar = (re: number) => c * Math.sqrt(re)
  if (Re <= Rec) return laminar(Re)
  const turbulent = (re: number) => 0.015 * re ** 0.8
  return turbulent(Re) - Math.sqrt(Rec / Re) * (turbulent(Rec) - laminar(Rec))
}

/**
 * Mean Nusselt number of a horizontal cylinder turning in still air, over its diameter.
 *
 *   Nu = 0.133 Re^(2/3) Pr^(1/3),  Re = ω D² / (2 ν)
 *
 * Holds: long smooth cylinder, 800 < Re < 1e5; below, free convection rules: combine the two. Written for
 * water; a correlation measured in air lies 10–20 % below it. Accuracy: +20 % −10 %.
 *
 * @param number.reynolds  Re  surface speed × diameter / ν, ≥ 0       [1]
 * @param number.prandtl   Pr  > 0                                     [1]
 * @returns                Nu  h D / k                                 [1]
 * @throws RangeError      a value not finite or out of its sign
 * @source becker1963, final correlation, from memory, not opened
 * @example rotatingCylinderNusselt({ reynolds: 27000, prandtl: 1 }) // 119.7
 */
export function rotatingCylinderNusselt(number: {
  readonly reynolds: number
  readonly prandtl: number
}): number {
  const { reynolds: Re, prandtl: Pr } = number
  requireNotNegative('reynolds', Re)
  requirePositive('prandtl', Pr)
  return 0.133 * Re ** (2 / 3) * Math.cbrt(Pr)
}

/**
 * Air that one face of a turning disc draws in along the shaft and throws out at its rim.
 *
 *   Q = 0.8845 π R² (ν ω)^(1/2)
 *
 * Holds: free disc, laminar, Re ≤ 2.4e5; a still wall closer than a few (ν/ω)^(1/2) lets less through.
 * Accuracy: exact for the free laminar disc; in the gap of a machine good to a factor of two.
 *
 * @param disc.speed               ω  ≥ 0                             [rad/s]
 * @param disc.radius              R  > 0                             [m]
 * @param disc.kinematicViscosity  ν  > 0                             [m2/s]
 * @returns                        Q  volume per time                 [m3/s]
 * @throws RangeError              a value not finite or out of its sign
 * @source derived, from the inflow 0.8845 (ν ω)^(1/2) of the similarity solution far from the disc
 * @example rotatingDiscInflow({ speed: 40, radius: 0.15, kinematicViscosity: 1.6e-5 }) // 0.0015817
 */
export function rotatingDiscInflow(disc: {
  readonly speed: number
  readonly radius: number
  readonly kinematicViscosity: number
}): number {
  const { speed: ω, radius: R, kinematicViscosity: ν } = disc
  requireNotNegative('speed', ω, 'rad/s')
  requirePositive('radius', R, 'm')
  requirePositive('kinematicViscosity', ν, 'm2/s')
  return 0.8845 * Math.PI * R * R * Math.sqrt(ν * ω)
}
