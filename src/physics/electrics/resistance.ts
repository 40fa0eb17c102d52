/** Resistance of a wire from its length, section, material and temperature. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Temperature at which resistivity and its coefficient are stated, 20 °C [K]. */
export const RESISTIVITY_REFERENCE = 293.15

/** Range in which the linear law holds for copper and aluminium well within 1 % (common practice, no source) [K]. */
export const RESISTANCE_LINEAR_RANGE = [233.15, 473.15] as const

/**
 * Resistance at a temperature as a multiple of that at 20 °C.
 *
 *   R / R20 = 1 + α (T − T20)
 *
 * Holds: pure metals from −40 to 200 °C (RESISTANCE_LINEAR_RANGE). Accuracy: 1 % there; the law itself exact.
 *
 * @param wire.coefficient  α  at 20 °C, 0.00393 for annealed copper  [1/K]
 * @param wire.temperature  T                                         [K]
 * @returns                 R / R20                                   [1]
 * @throws RangeError       temperature not above zero; a ratio that is not above zero
 * @source iec-60028, value of the constant-mass temperature coefficient (from memory, not opened)
 * @example resistanceRatio({ coefficient: 0.00393, temperature: 353.15 }) // 1.2358
 */
export function resistanceRatio(wire: {
  readonly coefficient: number
  readonly temperature: number
}): number {
  const { coefficient: α, temperature: T } = wire
  requireFinite('coefficient', α, '1/K')
  requirePositive('temperature', T, 'K')
  const ratio = 1 + α * (T - RESISTIVITY_REFERENCE)
  if (!(ratio > 0))
    refuse({ name: '1 + α (T − T20)', condition: 'above zero', value: ratio, code: 'below-minimum' })
  return ratio
}

/**
 * Resistivity at a temperature.
 *
 *   ρ = ρ20 (1 + α (T − T20))
 *
 * Holds: as resistanceRatio; thermal expansion (0.002 %/K) is not counted. Accuracy: 1 % from −40 to 200 °C.
 *
 * @param metal.resistivity  ρ20  at 20 °C, 1/58e6 for annealed copper  [Ω·m]
 * @param metal.coefficient  α    at 20 °C                              [1/K]
 * @param metal.temperature  T                                          [K]
 * @returns                  ρ                                          [Ω·m]
 * @throws RangeError        resistivity or temperature not above zero
 * @source iec-60028, resistivity 1/58 Ω·mm²/m and coefficient of annealed copper at 20 °C (from memory, not opened)
 * @example 1e8 * resistivityAtTemperature({ resistivity: 1 / 58e6, coefficient: 0.00393, temperature: 353.15 }) // 2.13069
 */
export function resistivityAtTemperature(metal: {
  readonly resistivity: number
  readonly coefficient: number
  readonly temperature: number
}): number {
  requirePositive('resistivity', metal.resistivity, 'Ω·m')
  return metal.resistivity * resistanceRatio(metal)
}

/**
 * Resistance of a conductor to direct current.
 *
 *   R = ρ l / A
 *
 * Holds: uniform section, skin effect negligible. Accuracy: that of ρ and A.
 *
 * @param conductor.length       l  along the path                          [m]
 * @param conductor.area         A  of metal, all strands in hand together  [m²]
 * @param conductor.resistivity  ρ  at the conductor's own temperature      [Ω·m]
 * @returns                      R                                          [Ω]
 * @throws RangeError            negative length; area or resistivity not above zero
 * @source derived, Ohm's law on a uniform bar
 * @example conductorResistance({ length: 100, area: 1e-6, resistivity: 1 / 58e6 }) // 1.72414
 */
export function conductorResistance(conductor: {
  readonly length: number
  readonly area: number
  readonly resistivity: number
}): number {
  requireNotNegative('length', conductor.length, 'm')
  requirePositive('area', conductor.area, 'm²')
  requirePositive('resistivity', conductor.resistivity, 'Ω·m')
  return (conductor.resistivity * conductor.length) / conductor.area
}
