/** Power coefficients given by hand: a measured or borrowed Cp(λ) curve in place of a computed blade. */
import { monotoneCubic } from '../../numerics/interpolate.ts'
import { refuse, requireLength, requireNotNegative } from '../../refusal/require.ts'
import type { RotorCoefficients } from './blade-element.ts'
import { betzLimit } from './induction.ts'

/** Points of the curve. */
export interface PowerTable {
  /** λ, rising, from 0; the last is runaway. [1] */
  readonly tipSpeedRatio: ArrayLike<number>
  /** Cp at each; 0 at λ = 0 and at the last. [1] */
  readonly power: ArrayLike<number>
  /** Ct at each, if known. [1] */
  readonly thrust?: ArrayLike<number>
}

/** Least thrust coefficient a rotor of this power coefficient can have: Cp = 4a(1−a)², a ≤ 1/3. */
const leastThrust = (Cp: number): number => {
  if (Cp <= 0) return 0
  // Vieta's three cosines for a³ − 2a² + a − Cp/4 = 0; the least root.
  const a =
    2 / 3 + (2 / 3) * Math.cos((Math.acos(Math.max(-1, Math.min(1, (27 * Cp) / 8 - 1))) + 2 * Math.PI) / 3)
  return 4 * a * (1 - a)
}

/**
 * The coefficients of a rotor as a function of tip-speed ratio, from points of Cp(λ).
 *
 *   C_p(λ) = shape-keeping cubic through the points,   C_q = C_p / λ
 *
 * The first row must be (0, 0) and the last must have C_p = 0. At λ = 0 the torque is the slope of the curve, so the first point
 * after zero decides how the rotor starts. Past runaway the curve goes on as the straight line of its last piece, below zero.
 * Without a thrust column the thrust is the least a rotor of this power can have (momentum theory), 0 at runaway: too low there.
 *
 * Holds: between the points. Accuracy: that of the points; between them the curve never overshoots.
 *
 * @param table.tipSpeedRatio  λ    rising from 0                              [1]
 * @param table.power          C_p  zero or above, at most 16/27, 0 at the ends  [1]
 * @param table.thrust         C_t  zero or above, optional                    [1]
 * @returns                    function of λ giving C_p, C_t and C_q           [1]
 * @throws RangeError          lists of unequal length or under three rows, λ not rising from 0, C_p above 16/27, ends not zero
 * @source betz1920, limit of the power coefficient, from memory, not opened
 * @example powerTableCoefficients({ tipSpeedRatio: [0, 5, 10], power: [0, 0.4, 0] })(5).torque // 0.08
 */
export function powerTableCoefficients(table: PowerTable): (tipSpeedRatio: number) => RotorCoefficients {
  const { tipSpeedRatio: λ, power, thrust } = table
  const n = λ.length
  if (n < 3) refuse({ name: 'tipSpeedRatio', condition: 'at least 3 long', value: n, code: 'wrong-length' })
  requireLength('power', power, n)
  if (thrust) requireLength('thrust', thrust, n)
  for (let i = 0; i < n; i++) {
    requireNotNegative(`tipSpeedRatio[${i}]`, λ[i]!)
    requireNotNegative(`power[${i}]`, power[i]!)
    if (power[i]! > betzLimit)
      refuse({
        name: `power[${i}]`,
        condition: 'at most 16/27, the Betz limit',
        value: power[i],
        code: 'above-maximum',
      })
    if (thrust) requireNotNegative(`thrust[${i}]`, thrust[i]!)
  }
  const ends = [
    ['tipSpeedRatio[0]', λ[0]!],
    ['power[0]', power[0]!],
    [`power[${n - 1}]`, power[n - 1]!],
  ] as const
  for (const [name, value] of ends)
    if (value !== 0) refuse({ name, condition: 'zero', value, code: 'conflict' })
  const Cp = monotoneCubic(λ, power)
  const Ct = thrust ? monotoneCubic(λ, thrust) : undefined
  const last = λ[n - 1]!
  const slope0 = power[1]! / λ[1]!
  const slopeEnd = -power[n - 2]! / (last - λ[n - 2]!)
  return (tipSpeedRatio) => {
    requireNotNegative('tipSpeedRatio', tipSpeedRatio)
    const x = tipSpeedRatio
    const p = x > last ? slopeEnd * (x - last) : Cp(x)
    return {
      power: p,
      thrust: Ct ? Ct(x) : leastThrust(p),
      torque: x < 1e-9 * λ[1]! ? slope0 : p / x,
    }
  }
}
