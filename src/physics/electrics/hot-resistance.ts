/** Resistance of heating elements and filaments at the power they turn into heat. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Cold over hot resistance of a filament, and the exponent of its current over its voltage. */
export const filamentColdShare = 1 / 14
export const filamentCurrentExponent = 0.55

/**
 * Resistance of a heating element that loses its heat in proportion to its rise of temperature.
 *
 *   R = R_cold + (R_hot − R_cold) P/P_rated
 *
 * Holds: elements cooled by air or water, alloys whose resistance rises evenly with temperature. Accuracy: exact at
 * rest and at the rated power; between them an element at 650 °C that only radiates is off by a
 * third of R_hot − R_cold at most: under 3 % for nickel-chromium wire.
 *
 * @param element.cold        R_cold  at 20 °C, > 0                 [Ω]
 * @param element.hot         R_hot   at the rated power, > 0       [Ω]
 * @param element.ratedPower  P_rated                               [W]
 * @param power               P, 0 or above                         [W]
 * @returns                   R                                     [Ω]
 * @throws RangeError   resistances or rated power not above zero; power below zero
 * @source derived, from R linear in temperature and temperature rise linear in power
 * @example heaterResistance({ cold: 1, hot: 1.08, ratedPower: 100 }, 50) // 1.040
 */
export function heaterResistance(
  element: { readonly cold: number; readonly hot: number; readonly ratedPower: number },
  power: number,
): number {
  const { cold, hot, ratedPower } = element
  requirePositive('cold', cold, 'Ω')
  requirePositive('hot', hot, 'Ω')
  requirePositive('ratedPower', ratedPower, 'W')
  requireNotNegative('power', power, 'W')
  return Math.max(cold + ((hot - cold) * power) / ratedPower, Math.min(cold, hot) / 2)
}

/**
 * Resistance of an incandescent filament at a power.
 *
 *   R = (U_r²/P_r) (P/P_r)^(0.45/1.55) ≥ R_cold,  from I = (P_r/U_r) (U/U_r)^0.55
 *
 * Holds: half to one and a quarter of the rated volts; below, the curve bends to the cold resistance, taken as a
 * fourteenth of the hot one (common practice, no source). Accuracy: the exponent differs from lamp to lamp by 0.03,
 * the resistance at half the volts by 2 %.
 *
 * @param lamp.ratedVoltage  U_r, > 0      [V]
 * @param lamp.ratedPower    P_r, > 0      [W]
 * @param power              P, 0 or above [W]
 * @returns                  R             [Ω]
 * @throws RangeError   ratings not above zero; power below zero
 * @source fink1978, page 22-8, exponent 0.55 of the current (as quoted by an encyclopaedia; the book was not opened)
 * @example filamentResistance({ ratedVoltage: 12, ratedPower: 21 }, 21) // 6.857
 */
export function filamentResistance(
  lamp: { readonly ratedVoltage: number; readonly ratedPower: number },
  power: number,
): number {
  const { ratedVoltage, ratedPower } = lamp
  requirePositive('ratedVoltage', ratedVoltage, 'V')
  requirePositive('ratedPower', ratedPower, 'W')
  requireNotNegative('power', power, 'W')
  const hot = (ratedVoltage * ratedVoltage) / ratedPower
  const exponent = (1 - filamentCurrentExponent) / (1 + filamentCurrentExponent)
  return hot * Math.max(filamentColdShare, (power / ratedPower) ** exponent)
}
