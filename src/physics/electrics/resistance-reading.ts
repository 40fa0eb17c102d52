/** Resistance as it is read: two wires with their leads, or volts over amps by four wires. */
import { requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Resistance that two wires show: the winding and the leads with their contacts, all in one.
 *
 *   R' = R + Rl
 *
 * Holds: direct current, nothing turning. Accuracy: exact; the leads differ from touch to touch.
 *
 * @param pair.resistance  R   of the winding, ≥ 0                    [Ω]
 * @param pair.leads       Rl  both leads and contacts together, ≥ 0  [Ω]
 * @returns                R'                                         [Ω]
 * @throws RangeError      a negative resistance
 * @source lead-error-article, leads of 0.2 Ω spoil 2 Ω by 10 %
 * @example twoWireResistance({ resistance: 2, leads: 0.2 }) // 2.2
 */
export function twoWireResistance(pair: { readonly resistance: number; readonly leads: number }): number {
  requireNotNegative('resistance', pair.resistance, 'Ω')
  requireNotNegative('leads', pair.leads, 'Ω')
  return pair.resistance + pair.leads
}

export interface VoltsAndAmps {
  readonly voltage: number
  readonly current: number
  readonly voltageUncertainty: number
  readonly currentUncertainty: number
  readonly correlation?: number
}

/**
 * Standard uncertainty of a resistance found by volts over amps.
 *
 *   u²(R)/R² = u²(U)/U² + u²(I)/I² − 2 r u(U) u(I)/(U I),  R = U/I
 *
 * Holds: uncertainties small against the values. Accuracy: of first order.
 *
 * @param read.voltage             U  above zero                                [V]
 * @param read.current             I  above zero                                [A]
 * @param read.voltageUncertainty  u(U)  standard, ≥ 0                          [V]
 * @param read.currentUncertainty  u(I)  standard, ≥ 0                          [A]
 * @param read.correlation         r  of the two; 0 where left out              [1]
 * @returns                        u(R)                                         [Ω]
 * @throws RangeError              values not above zero, correlation outside −1…1
 * @source jcgm100, equation 16; example H.2
 * @example resistanceUncertainty({ voltage: 0.1, current: 1, voltageUncertainty: 0.0005, currentUncertainty: 0.01 }) // 0.001118
 */
export function resistanceUncertainty(read: VoltsAndAmps): number {
  const { voltage: U, current: I, voltageUncertainty: uU, currentUncertainty: uI, correlation: r = 0 } = read
  requirePositive('voltage', U, 'V')
  requirePositive('current', I, 'A')
  requireNotNegative('voltageUncertainty', uU, 'V')
  requireNotNegative('currentUncertainty', uI, 'A')
  requireBetween('correlation', r, [-1, 1])
  const a = uU / U
  const b = uI / I
  return (U / I) * Math.sqrt(Math.max(0, a * a + b * b - 2 * r * a * b))
}
