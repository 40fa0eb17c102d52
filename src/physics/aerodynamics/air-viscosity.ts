/** Viscosity of the air, for Reynolds numbers. */
import { requirePositive } from '../../refusal/require.ts'

/** Temperatures for which the law was verified. [K] */
export const sutherlandRange = [100, 1900] as const

/**
 * Dynamic viscosity of air.
 *
 *   μ = 1.458e-6 T^(3/2) / (T + 110.4)
 *
 * Holds: 100 to 1900 K, any ordinary pressure. Accuracy: 2 %.
 *
 * @param temperature  T  > 0   [K]
 * @returns            μ        [Pa·s]
 * @throws RangeError  temperature not above zero
 * @source icao7488, section 2 on the viscosity, from memory, not opened
 * @example airViscosity(288.15) // 1.7894e-5
 */
export function airViscosity(temperature: number): number {
  requirePositive('temperature', temperature, 'K')
  return (1.458e-6 * temperature ** 1.5) / (temperature + 110.4)
}
