/** Copper that settles: its steady temperature when its resistance rises with it. */
import { requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Where copper melts, K: no answer above it has a meaning. */
export const copperMelting = 1357.77

export interface CopperEquilibrium {
  /** Steady temperature, or `ceiling` if there is none below it [K]. */
  readonly temperature: number
  /** Loss at that temperature [W]. */
  readonly loss: number
  /** No equilibrium below the ceiling: the coil warms until something gives. */
  readonly runaway: boolean
  /** Gain α Rth P0 of the loop; at 1 and above nothing holds the temperature [1]. */
  readonly gain: number
}

/**
 * Steady temperature of a winding under a given current, its resistance growing with temperature.
 *
 *   T = (Ta + Rth P0 (1 − α T0)) / (1 − α Rth P0)
 *
 * Holds: current held constant, resistance linear in temperature, thermal resistance constant.
 * Accuracy: exact there. With α Rth P0 ≥ 1, or T above the ceiling, it answers runaway: true with the ceiling.
 *
 * @param winding.loss               P0   I²R at the reference temperature, ≥ 0                     [W]
 * @param winding.thermalResistance  Rth  copper to ambient, ≥ 0                                    [K/W]
 * @param winding.ambient            Ta   > 0                                                       [K]
 * @param winding.coefficient        α    at the reference temperature; 0.00393 if left out         [1/K]
 * @param winding.reference          T0   of loss and coefficient; 293.15 if left out               [K]
 * @param winding.ceiling                 above ambient; melting of copper if left out              [K]
 * @returns                          temperature [K], loss [W], runaway, gain                       [1]
 * @throws RangeError                a value not finite or out of its sign; no resistance left at ambient
 * @source derived, from T = Ta + Rth P0 (1 + α (T − T0))
 * @example copperEquilibrium({ loss: 100, thermalResistance: 1, ambient: 293.15 }).temperature // 457.9
 */
export function copperEquilibrium(winding: {
  readonly loss: number
  readonly thermalResistance: number
  readonly ambient: number
  readonly coefficient?: number | undefined
  readonly reference?: number | undefined
  readonly ceiling?: number | undefined
}): CopperEquilibrium {
  const {
    loss: P0,
    thermalResistance: Rth,
    ambient: Ta,
    coefficient: α = 0.00393,
    reference: T0 = 293.15,
    ceiling = copperMelting,
  } = winding
  requireNotNegative('loss', P0, 'W')
  requireNotNegative('thermalResistance', Rth, 'K/W')
  requirePositive('ambient', Ta, 'K')
  requireNotNegative('coefficient', α, '1/K')
  requirePositive('reference', T0, 'K')
  requireFinite('ceiling', ceiling, 'K')
  requirePositive('ceiling less ambient', ceiling - Ta, 'K')
  const cold = 1 + α * (Ta - T0)
  requirePositive('resistance ratio at ambient', cold)
  const gain = α * Rth * P0
  const settled = gain < 1 ? Ta + (Rth * P0 * cold) / (1 - gain) : Number.POSITIVE_INFINITY
  const runaway = !(settled <= ceiling)
  const temperature = runaway ? ceiling : settled
  return { temperature, loss: P0 * (1 + α * (temperature - T0)), runaway, gain }
}
