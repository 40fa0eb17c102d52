/** How parts grow with heat, and what that does to a fit. */
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Growth of a length with temperature.
 *
 *   ΔL = α L ΔT
 *
 * Holds: α constant over the span, part free to grow. Accuracy: exact there; ±15 % for printed plastics.
 *
 * @param part.length                 L   ≥ 0                          [m]
 * @param part.expansion              α   either sign                  [1/K]
 * @param part.temperatureDifference  ΔT  either sign                  [K]
 * @returns                           ΔL                               [m]
 * @throws RangeError                 a value not finite; L below zero
 * @source shigley, section 3-15, temperature effects, from memory, not opened
 * @example thermalGrowth({ length: 0.1, expansion: 17e-6, temperatureDifference: 60 }) // 1.02e-4
 */
export function thermalGrowth(part: {
  readonly length: number
  readonly expansion: number
  readonly temperatureDifference: number
}): number {
  const { length: L, expansion: α, temperatureDifference: ΔT } = part
  requireNotNegative('length', L, 'm')
  requireFinite('expansion', α, '1/K')
  requireFinite('temperatureDifference', ΔT, 'K')
  return α * L * ΔT
}

/**
 * Stress in a part whose growth is held back all round in a plane, such as resin cast round a coil.
 *
 *   σ = E Δα ΔT / (1 − ν)
 *
 * Holds: thin layer on something far stiffer, elastic, no creep. Accuracy: exact there; plastics and
 * resins creep, so the true stress of a slow change is below it.
 *
 * @param layer.modulus                E   > 0                                            [Pa]
 * @param layer.poisson                ν   from 0 to below 0.5; 0.35 if left out          [1]
 * @param layer.expansionDifference    Δα  of the layer less what holds it, either sign   [1/K]
 * @param layer.temperatureDifference  ΔT  from the stress-free state, either sign        [K]
 * @returns                            σ   compressive if positive                        [Pa]
 * @throws RangeError                  a value not finite or out of its bounds
 * @source shigley, section 3-15, flat plate restrained at all edges, from memory, not opened
 * @example restrainedStress({ modulus: 3e9, poisson: 0.25, expansionDifference: 5e-5, temperatureDifference: 60 }) // 12000000
 */
export function restrainedStress(layer: {
  readonly modulus: number
  readonly poisson?: number | undefined
  readonly expansionDifference: number
  readonly temperatureDifference: number
}): number {
  const { modulus: E, poisson: ν = 0.35, expansionDifference: Δα, temperatureDifference: ΔT } = layer
  requirePositive('modulus', E, 'Pa')
  requireNotNegative('poisson', ν)
  requirePositive('0.5 - poisson', 0.5 - ν)
  requireFinite('expansionDifference', Δα, '1/K')
  requireFinite('temperatureDifference', ΔT, 'K')
  return (E * Δα * ΔT) / (1 - ν)
}
