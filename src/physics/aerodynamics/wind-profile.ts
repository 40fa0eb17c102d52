/** Wind profile: how the wind grows with height over the ground. */
import { refuse, requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'

/** Heights above ground for which the two laws are used. [m] */
export const profileHeightRange = [5, 100] as const

/** Exponents met over land, from smooth ground to towns. [1] */
export const shearExponentRange = [0.05, 0.45] as const

/**
 * Wind at another height by the power law.
 *
 *   v_2 / v_1 = (h_2 / h_1)^α
 *
 * Holds: open country, 5 to 100 m, means over ten minutes or longer. Accuracy: ±10 % of v when α is guessed, ±3 % when it was measured at the site.
 *
 * @param at.windSpeed  v_1  ≥ 0, at height `from`  [m/s]
 * @param at.from       h_1  > 0                    [m]
 * @param at.to         h_2  > 0                    [m]
 * @param at.exponent   α    from −1 to 1           [1]
 * @returns             v_2                         [m/s]
 * @throws RangeError   heights not above zero, exponent outside −1…1
 * @source manwell2009, section 2.3 on the power law profile, from memory, not opened
 * @example windSpeedByPowerLaw({ windSpeed: 1, from: 10, to: 18, exponent: 0.2 }) // 1.1247
 */
export function windSpeedByPowerLaw(at: {
  readonly windSpeed: number
  readonly from: number
  readonly to: number
  readonly exponent: number
}): number {
  requireBetween('windSpeed', at.windSpeed, [0, Number.MAX_VALUE], 'm/s')
  requirePositive('from', at.from, 'm')
  requirePositive('to', at.to, 'm')
  requireBetween('exponent', at.exponent, [-1, 1])
  return at.windSpeed * (at.to / at.from) ** at.exponent
}

/**
 * Wind at another height by the logarithmic law.
 *
 *   v_2 / v_1 = ln((h_2 − d)/z_0) / ln((h_1 − d)/z_0)
 *
 * Holds: neutral air over even ground, heights well above the roughness and the displacement. Accuracy: ±10 % of v when z_0 is guessed from a table.
 *
 * @param at.windSpeed     v_1  ≥ 0, at height `from`                           [m/s]
 * @param at.from          h_1  above z_0 + d                                   [m]
 * @param at.to            h_2  above z_0 + d                                   [m]
 * @param at.roughness     z_0  > 0                                             [m]
 * @param at.displacement  d    of the flow over bushes or roofs, ≥ 0; default 0  [m]
 * @returns                v_2                                                  [m/s]
 * @throws RangeError      a height inside the roughness; roughness not above zero
 * @source manwell2009, section 2.3 on the logarithmic profile, from memory, not opened
 * @example windSpeedByLogLaw({ windSpeed: 5, from: 10, to: 18, roughness: 0.1 }) // 5.6382
 */
export function windSpeedByLogLaw(at: {
  readonly windSpeed: number
  readonly from: number
  readonly to: number
  readonly roughness: number
  readonly displacement?: number
}): number {
  const { windSpeed, from, to, roughness: z0, displacement: d = 0 } = at
  requireBetween('windSpeed', windSpeed, [0, Number.MAX_VALUE], 'm/s')
  requirePositive('roughness', z0, 'm')
  requireBetween('displacement', d, [0, Number.MAX_VALUE], 'm')
  for (const [name, h] of [
    ['from', from],
    ['to', to],
  ] as const) {
    requireFinite(name, h, 'm')
    if (!(h > z0 + d))
      refuse({
        name,
        condition: `above roughness plus displacement, ${z0 + d} m`,
        value: h,
        unit: 'm',
        code: 'below-minimum',
      })
  }
  return (windSpeed * Math.log((to - d) / z0)) / Math.log((from - d) / z0)
}

/**
 * Shear exponent from the wind at two heights.
 *
 *   α = ln(v_2/v_1) / ln(h_2/h_1)
 *
 * Holds: means of the same hours at both heights. Accuracy: an error of 2 % in one speed is 0.03 in α from 10 to 20 m.
 *
 * @param at.lowSpeed   v_1  > 0                 [m/s]
 * @param at.highSpeed  v_2  > 0                 [m/s]
 * @param at.low        h_1  > 0                 [m]
 * @param at.high       h_2  > 0, not equal h_1  [m]
 * @returns             α                        [1]
 * @throws RangeError   a speed or height not above zero, heights equal
 * @source manwell2009, section 2.3 on the power law profile, from memory, not opened
 * @example shearExponent({ lowSpeed: 4, highSpeed: 4.595, low: 10, high: 20 }) // 0.20006
 */
export function shearExponent(at: {
  readonly lowSpeed: number
  readonly highSpeed: number
  readonly low: number
  readonly high: number
}): number {
  requirePositive('lowSpeed', at.lowSpeed, 'm/s')
  requirePositive('highSpeed', at.highSpeed, 'm/s')
  requirePositive('low', at.low, 'm')
  requirePositive('high', at.high, 'm')
  if (at.low === at.high)
    refuse({
      name: 'high',
      condition: 'another height than low',
      value: at.high,
      unit: 'm',
      code: 'conflict',
    })
  return Math.log(at.highSpeed / at.lowSpeed) / Math.log(at.high / at.low)
}
