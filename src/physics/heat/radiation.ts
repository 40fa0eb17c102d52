/** Heat that surfaces shine at one another. */
import { requireBetween, requirePositive } from '../../refusal/require.ts'

/** Stefan–Boltzmann constant, exact in the SI, W/(m²·K⁴). */
const σ = 5.670374419e-8

/**
 * Exchange factor of two large surfaces facing each other across a gap, or of a body (1) wrapped by another (2).
 *
 *   ε12 = 1 / (1/ε1 + (A1/A2) (1/ε2 − 1))
 *
 * Holds: grey, diffuse surfaces. Accuracy: exact for plates and concentric bodies.
 *
 * @param pair.first      ε1     emissivity of the inner surface, above 0, at most 1  [1]
 * @param pair.second     ε2     emissivity of the outer surface, above 0, at most 1  [1]
 * @param pair.areaRatio  A1/A2  1 if left out (plates); 0 for a small body in a room [1]
 * @returns               ε12    referred to the area of the first                    [1]
 * @throws RangeError     a value not finite or out of its bounds
 * @source cengel2015, table 13-3, infinite parallel plates and concentric cylinders, from memory, not opened
 * @example radiationExchangeFactor({ first: 0.9, second: 0.9 }) // 0.818
 */
export function radiationExchangeFactor(pair: {
  readonly first: number
  readonly second: number
  readonly areaRatio?: number | undefined
}): number {
  const { first: ε1, second: ε2, areaRatio = 1 } = pair
  requirePositive('first', ε1)
  requirePositive('second', ε2)
  requireBetween('first', ε1, [0, 1])
  requireBetween('second', ε2, [0, 1])
  requireBetween('areaRatio', areaRatio, [0, 1])
  return 1 / (1 / ε1 + areaRatio * (1 / ε2 - 1))
}

/**
 * Radiation written as a heat transfer coefficient, so that heat = h A (T1 − T2).
 *
 *   h = ε σ (T1² + T2²) (T1 + T2)
 *
 * Holds: grey surfaces. Accuracy: exact.
 *
 * @param exchange.surface       T1  absolute, > 0                            [K]
 * @param exchange.surroundings  T2  absolute, > 0                            [K]
 * @param exchange.emissivity    ε   or exchange factor, from 0 to 1          [1]
 * @returns                      h                                            [W/(m2·K)]
 * @throws RangeError            a value not finite or out of its bounds
 * @source derived, from the Stefan–Boltzmann law
 * @example radiationCoefficient({ surface: 350, surroundings: 300, emissivity: 1 }) // 7.832
 */
export function radiationCoefficient(exchange: {
  readonly surface: number
  readonly surroundings: number
  readonly emissivity: number
}): number {
  const { surface: T1, surroundings: T2, emissivity: ε } = exchange
  requirePositive('surface', T1, 'K')
  requirePositive('surroundings', T2, 'K')
  requireBetween('emissivity', ε, [0, 1])
  return ε * σ * (T1 * T1 + T2 * T2) * (T1 + T2)
}
