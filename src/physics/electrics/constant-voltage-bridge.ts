/** Closed forms for a three-phase bridge that feeds a constant voltage from EMF behind inductance. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

export interface ConstantVoltageBridge {
  /** E, of one phase of the star [V]. */
  readonly emfPeak: number
  /** X = ω L of one phase [Ω]. */
  readonly reactance: number
  /** Load voltage with the thresholds of two diodes [V]. */
  readonly voltage: number
}

/**
 * Vo/E up to which all three lines conduct all the time: at the instant a line current passes zero its EMF,
 * (π/3) X Idc, must exceed the Vo/3 that then stands at its terminal.
 */
export const CONSTANT_VOLTAGE_RATIO_MOST = 9 / Math.sqrt(4 * Math.PI ** 2 + 9)

const checked = (bridge: ConstantVoltageBridge) => {
  requireNotNegative('emfPeak', bridge.emfPeak, 'V')
  requirePositive('reactance', bridge.reactance, 'Ω')
  requireNotNegative('voltage', bridge.voltage, 'V')
}

/**
 * Mean current of a three-phase bridge into a constant voltage, all orders of the six-step voltage counted.
 *
 *   Idc = (3/π) √(E² − (2π Vo/9)²) / X
 *
 * which is (3/π) I1 cos δ with X I1 = √(E² − (1 + 2q) V1²), sin δ = q V1/(X I1), V1 = 2 Vo/π and
 * q = Σ 1/n² over n = 5, 7, 11, 13 … = π²/9 − 1.
 *
 * Holds: R = 0, sinusoidal symmetrical EMF, all lines conducting all the time: Vo/E ≤ 9/√(4π² + 9) = 1.2926.
 * Accuracy: exact there; 0.05 % low at 1.30, 4 % at 1.35, 25 % at 1.4, zero above 1.43 where the real bridge
 * conducts up to √3.
 *
 * @param bridge.emfPeak    E                                          [V]
 * @param bridge.reactance  X                                          [Ω]
 * @param bridge.voltage    Vo  load with the thresholds of two diodes [V]
 * @returns                 Idc  mean                                  [A]
 * @throws RangeError       reactance not above zero; negative voltage
 * @source derived, six-step spectrum of the bridge voltage against a sinusoidal EMF
 * @example constantVoltageBridgeCurrent({ emfPeak: 1, reactance: 1, voltage: 0.8 }) // 0.7921
 */
export function constantVoltageBridgeCurrent(bridge: ConstantVoltageBridge): number {
  checked(bridge)
  const { emfPeak: E, reactance: X, voltage: Vo } = bridge
  const drop = E ** 2 - ((2 * Math.PI * Vo) / 9) ** 2
  return drop <= 0 ? 0 : ((3 / Math.PI) * Math.sqrt(drop)) / X
}

/**
 * The same from the fundamental alone.
 *
 *   Idc = (3/π) √(E² − (2 Vo/π)²) / X
 *
 * Holds: R = 0; Vo/E below about 0.6. Accuracy: 2 % high at Vo/E = 0.6, 8 % at 1.0, 34 % at 1.3.
 *
 * @param bridge.emfPeak    E                                          [V]
 * @param bridge.reactance  X                                          [Ω]
 * @param bridge.voltage    Vo  load with the thresholds of two diodes [V]
 * @returns                 Idc  mean                                  [A]
 * @throws RangeError       reactance not above zero; negative voltage
 * @source caliskan2003, fundamental approximation (from memory, not opened)
 * @example constantVoltageBridgeFundamental({ emfPeak: 1, reactance: 1, voltage: 0.8 }) // 0.8218
 */
export function constantVoltageBridgeFundamental(bridge: ConstantVoltageBridge): number {
  checked(bridge)
  const { emfPeak: E, reactance: X, voltage: Vo } = bridge
  const drop = E ** 2 - ((2 * Vo) / Math.PI) ** 2
  return drop <= 0 ? 0 : ((3 / Math.PI) * Math.sqrt(drop)) / X
}
