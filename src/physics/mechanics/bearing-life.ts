/** How long a rolling bearing lasts: equivalent loads, rating life, life at a higher reliability or at loads in turn. */
import { piecewiseLinear } from '../../numerics/interpolate.ts'
import { requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** f0 Fa / C0r of the rows of the table of deep-groove ball bearings, with e and Y; X is 0.56 in every row. */
const rows = [0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89]
const limitAt = piecewiseLinear(rows, [0.19, 0.22, 0.26, 0.28, 0.3, 0.34, 0.38, 0.42, 0.44])
const axialFactorAt = piecewiseLinear(rows, [2.3, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1])

/** Relative axial load f0 Fa / C0r that the table spans; outside it the end rows hold. */
export const relativeAxialLoadRange: readonly [number, number] = [0.172, 6.89]

/** P / C up to which the rating life is meant to hold; above it the contact may yield. */
export const bearingLoadRange: readonly [number, number] = [0, 0.5]

/**
 * Steady radial load that wears a single-row deep-groove ball bearing as radial and axial load together do.
 *
 *   P = max(Fr, X Fr + Y Fa);  X = 0.56, Y and e from the table by f0 Fa / C0r;  X = 1, Y = 0 if Fa / Fr ≤ e
 *
 * Holds: normal clearance, f0 Fa / C0r within relativeAxialLoadRange; straight between rows, the end row
 * outside. Accuracy: the table's, two digits of e and three of Y; P is nowhere below Fr, which closes a gap
 * of up to 0.5 % at Fa / Fr = e.
 *
 * @param loads.radial          Fr   ≥ 0                                             [N]
 * @param loads.axial           Fa   ≥ 0, either way                                 [N]
 * @param loads.staticRating    C0r  basic static radial rating, > 0                 [N]
 * @param loads.geometryFactor  f0   from the bearing's sheet, > 0; 14 if left out   [1]
 * @returns                     load P [N], limit e [1], radialFactor X [1], axialFactor Y [1]
 * @throws RangeError           a value not finite or out of its sign
 * @source iso281, table 3, from memory, not opened; the rows as open code that cites the standard prints them
 * @example equivalentBearingLoad({ radial: 5000, axial: 2000, staticRating: 10000, geometryFactor: 12.3 }).load // 5329.6
 */
export function equivalentBearingLoad(loads: {
  readonly radial: number
  readonly axial: number
  readonly staticRating: number
  readonly geometryFactor?: number | undefined
}): {
  readonly load: number
  readonly limit: number
  readonly radialFactor: number
  readonly axialFactor: number
} {
  const { radial: Fr, axial: Fa, staticRating: C0r, geometryFactor: f0 = 14 } = loads
  requireNotNegative('radial', Fr, 'N')
  requireNotNegative('axial', Fa, 'N')
  requirePositive('staticRating', C0r, 'N')
  requirePositive('geometryFactor', f0)
  // A ratio past every number is past the table as well.
  const relative = Math.min(f0 * (Fa / C0r), 1e3)
  const e = limitAt(relative)
  if (Fa <= e * Fr) return { load: Fr, limit: e, radialFactor: 1, axialFactor: 0 }
  const X = 0.56
  const Y = axialFactorAt(relative)
  return { load: Math.max(Fr, X * Fr + Y * Fa), limit: e, radialFactor: X, axialFactor: Y }
}

/**
 * Steady radial load that dents a single-row deep-groove ball bearing at rest as radial and axial load together do.
 *
 *   P0 = max(Fr, 0.6 Fr + 0.5 Fa)
 *
 * Holds: at rest or turning slowly, Fa up to half of C0. Accuracy: exact arithmetic; C0/P0 above 1 leaves no dent that
 * is felt, shocks ask for 1.5 to 2.
 *
 * @param loads.radial  Fr  ≥ 0                                        [N]
 * @param loads.axial   Fa  ≥ 0, either way                            [N]
 * @returns             P0                                             [N]
 * @throws RangeError   a value not finite or below zero
 * @source iso76, clause 5.1, as sheets of bearings print it
 * @example staticBearingLoad({ radial: 1000, axial: 2000 }) // 1600
 */
export function staticBearingLoad(loads: { readonly radial: number; readonly axial: number }): number {
  const { radial: Fr, axial: Fa } = loads
  requireNotNegative('radial', Fr, 'N')
  requireNotNegative('axial', Fa, 'N')
  return Math.max(Fr, 0.6 * Fr + 0.5 * Fa)
}

/**
 * Factor from the life that 90 of 100 bearings reach to the life that more of them reach.
 *
 *   a1 = Cγ + (1 − Cγ) (ln(1/R) / ln(1/0.9))^(1/β),  Cγ = 0.05, β = 1.5
 *
 * Holds: reliability R from 0.9 to 0.9995. Accuracy: the table of the standard to its last digit ± 1.
 *
 * @param reliability  R   share that lives, 0.9 to 0.9995             [1]
 * @returns            a1  from 1 down to 0.077                        [1]
 * @throws RangeError  R not finite or outside
 * @source iso281, table 12 and the three-parameter Weibull law behind it, from memory, not opened
 * @example reliabilityFactor(0.99) // 0.248
 */
export function reliabilityFactor(reliability: number): number {
  requireBetween('reliability', reliability, [0.9, 0.9995])
  return 0.05 + 0.95 * (Math.log(reliability) / Math.log(0.9)) ** (1 / 1.5)
}

/**
 * Life of a rolling bearing by fatigue, in turns and in time.
 *
 *   L = a1 10⁶ (C / P)^p,  t = 2π L / ω;  p = 3 for balls, 10/3 for rollers
 *
 * Holds: P within bearingLoadRange of C, clean and well lubricated, steady load and speed; it says nothing of
 * dirt, water, brinelling at rest or electric erosion. Accuracy: exact arithmetic; single bearings scatter
 * tenfold about it.
 *
 * @param bearing.dynamicRating  C   basic dynamic rating, > 0                              [N]
 * @param bearing.load           P   equivalent load, > 0                                   [N]
 * @param bearing.speed          ω   > 0                                                    [rad/s]
 * @param bearing.rolling        balls or rollers; balls if left out                        [1]
 * @param bearing.reliability    R   0.9 if left out                                        [1]
 * @returns                      turns L [1], time t [s], loadRatio P / C [1]
 * @throws RangeError            a value not finite or out of its bounds
 * @source iso281, clause 5.3.1 and 7.3.1, from memory, not opened
 * @example bearingLife({ dynamicRating: 5590, load: 1450, speed: 100 }).turns / 1e6 // 57.3
 */
export function bearingLife(bearing: {
  readonly dynamicRating: number
  readonly load: number
  readonly speed: number
  readonly rolling?: 'balls' | 'rollers' | undefined
  readonly reliability?: number | undefined
}): { readonly turns: number; readonly time: number; readonly loadRatio: number } {
  const { dynamicRating: C, load: P, speed: ω, rolling = 'balls', reliability: R = 0.9 } = bearing
  requirePositive('dynamicRating', C, 'N')
  requirePositive('load', P, 'N')
  requirePositive('speed', ω, 'rad/s')
  // At most the greatest number, so that a bearing all but unloaded still has a life that can be compared.
  const turns = Math.min(
    reliabilityFactor(R) * 1e6 * (C / P) ** (rolling === 'balls' ? 3 : 10 / 3),
    Number.MAX_VALUE,
  )
  return { turns, time: Math.min((2 * Math.PI * turns) / ω, Number.MAX_VALUE), loadRatio: P / C }
}

/**
 * Life at loads and speeds that take turns, each for its share of the time.
 *
 *   1 / t = Σ q_i / t_i
 *
 * Holds: wear that adds up in any order (Palmgren–Miner). Accuracy: exact for that rule.
 *
 * @param stages  share q of the time, ≥ 0 [1], and life t if it lasted, > 0 [s]
 * @returns       life, the greatest number where nothing wears           [s]
 * @throws RangeError  a value not finite or out of its sign
 * @source iso281, clause 5.3 with the linear rule of damage, from memory, not opened
 * @example alternatingLife([{ share: 0.5, time: 1000 }, { share: 0.5, time: 3000 }]) // 1500
 */
export function alternatingLife(
  stages: readonly { readonly share: number; readonly time: number }[],
): number {
  let rate = 0
  stages.forEach(({ share, time }, i) => {
    requireNotNegative(`stages[${i}].share`, share)
    requirePositive(`stages[${i}].time`, time, 's')
    rate += share / time
  })
  return rate > 0 ? Math.min(1 / rate, Number.MAX_VALUE) : Number.MAX_VALUE
}
