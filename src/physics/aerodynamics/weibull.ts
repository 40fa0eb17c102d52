/** Weibull distribution of wind speed: how often each wind blows at a place. */
import { gamma, logGamma } from '../../numerics/gamma.ts'
import { root } from '../../numerics/root.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'

/** Weibull's two numbers. Shape 2 is the Rayleigh distribution. */
export interface WindDistribution {
  /** A, the speed exceeded e⁻¹ of the time. [m/s] */
  readonly scale: number
  /** k. [1] */
  readonly shape: number
}

/** Shapes met at real sites; outside, the number still holds but the site is odd. */
export const usualShapeRange = [1.2, 4] as const

/** Shapes accepted: below, the energy of the wind is in storms that never come; above, it never changes. */
export const shapeBounds = [0.3, 100] as const

const requireDistribution = ({ scale, shape }: WindDistribution) => {
  requirePositive('scale', scale, 'm/s')
  requireBetween('shape', shape, shapeBounds)
}

/**
 * Scale of the distribution that has a given mean.
 *
 *   A = v̄ / Γ(1 + 1/k)
 *
 * Holds: any shape from 0.3 to 100. Accuracy: 1e-13.
 *
 * @param site.mean   v̄  mean wind speed, > 0       [m/s]
 * @param site.shape  k  2 for Rayleigh             [1]
 * @returns           A and k: scale [m/s], shape   [1]
 * @throws RangeError mean not above zero, shape outside 0.3…100
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example windDistribution({ mean: 5, shape: 2 }).scale // 5.641896
 */
export function windDistribution(site: { readonly mean: number; readonly shape: number }): WindDistribution {
  requirePositive('mean', site.mean, 'm/s')
  requireBetween('shape', site.shape, shapeBounds)
  return { scale: site.mean / gamma(1 + 1 / site.shape), shape: site.shape }
}

/**
 * Mean wind speed of a distribution.
 *
 *   v̄ = A Γ(1 + 1/k)
 *
 * Holds: any shape from 0.3 to 100. Accuracy: 1e-13.
 *
 * @param distribution.scale  A          [m/s]
 * @param distribution.shape  k          [1]
 * @returns                   v̄          [m/s]
 * @throws RangeError         scale not above zero, shape outside 0.3…100
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example meanWindSpeed({ scale: 5.641896, shape: 2 }) // 5.00000
 */
export function meanWindSpeed(distribution: WindDistribution): number {
  requireDistribution(distribution)
  return distribution.scale * gamma(1 + 1 / distribution.shape)
}

/**
 * Probability density of a wind speed.
 *
 *   f = (k/A) (v/A)^(k−1) e^(−(v/A)^k)
 *
 * Holds: v ≥ 0; for shapes below 1 the density has no bound at v = 0 and is given at 1e-9 A instead. Accuracy: rounding only.
 *
 * @param distribution  A [m/s] and k [1]
 * @param windSpeed     v                [m/s]
 * @returns             f                [s/m]
 * @throws RangeError   scale or speed out of their bounds
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example windSpeedDensity({ scale: 6, shape: 2 }, 4) // 0.14248
 */
export function windSpeedDensity(distribution: WindDistribution, windSpeed: number): number {
  requireDistribution(distribution)
  requireNotNegative('windSpeed', windSpeed, 'm/s')
  const { scale: A, shape: k } = distribution
  const x = k < 1 ? Math.max(windSpeed / A, 1e-9) : windSpeed / A
  return (k / A) * x ** (k - 1) * Math.exp(-(x ** k))
}

/**
 * Share of the time the wind is at or below a speed.
 *
 *   F = 1 − e^(−(v/A)^k)
 *
 * Holds: v ≥ 0. Accuracy: rounding only, small shares included.
 *
 * @param distribution  A [m/s] and k [1]
 * @param windSpeed     v                [m/s]
 * @returns             F                [1]
 * @throws RangeError   scale or speed out of their bounds
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example windSpeedShare({ scale: 6, shape: 2 }, 6) // 0.632121
 */
export function windSpeedShare(distribution: WindDistribution, windSpeed: number): number {
  requireDistribution(distribution)
  requireNotNegative('windSpeed', windSpeed, 'm/s')
  return -Math.expm1(-((windSpeed / distribution.scale) ** distribution.shape))
}

/**
 * Mean of the cubes over the cube of the mean: how much more the wind carries than its mean speed says.
 *
 *   ⟨v³⟩ / ⟨v⟩³ = Γ(1 + 3/k) / Γ(1 + 1/k)³
 *
 * Holds: any shape from 0.3 to 100; 6/π for Rayleigh. Accuracy: 1e-13.
 *
 * @param shape  k                         [1]
 * @returns      the energy pattern factor [1]
 * @throws RangeError  shape outside 0.3…100
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example energyPatternFactor(2) // 1.9098593
 */
export function energyPatternFactor(shape: number): number {
  requireBetween('shape', shape, shapeBounds)
  return Math.exp(logGamma(1 + 3 / shape) - 3 * logGamma(1 + 1 / shape))
}

/**
 * Distribution from a mean and a standard deviation, by the two moments.
 *
 *   σ² / v̄² = Γ(1 + 2/k) / Γ(1 + 1/k)² − 1
 *
 * Holds: turbulence of long records, σ/v̄ from 0.013 to 5. Accuracy: exact inverse, 1e-10.
 *
 * @param record.mean       v̄  > 0         [m/s]
 * @param record.deviation  σ  > 0         [m/s]
 * @returns                 A [m/s], k     [1]
 * @throws RangeError       mean or deviation not above zero, or their ratio outside the shapes 0.3…100
 * @source manwell2009, section 2.4 on the Weibull distribution, from memory, not opened
 * @example windDistributionFromMoments({ mean: 5, deviation: 2.613625 }).shape // 2.0000
 */
export function windDistributionFromMoments(record: {
  readonly mean: number
  readonly deviation: number
}): WindDistribution {
  requirePositive('mean', record.mean, 'm/s')
  requirePositive('deviation', record.deviation, 'm/s')
  const wanted = Math.log1p((record.deviation / record.mean) ** 2)
  const excess = (lnK: number) => {
    const k = Math.exp(lnK)
    return logGamma(1 + 2 / k) - 2 * logGamma(1 + 1 / k) - wanted
  }
  const [least, greatest] = [Math.log(shapeBounds[0]), Math.log(shapeBounds[1])]
  if (excess(least) < 0 || excess(greatest) > 0)
    refuse({
      name: 'deviation / mean',
      condition: 'that of a shape from 0.3 to 100',
      value: record.deviation / record.mean,
      code: excess(least) < 0 ? 'above-maximum' : 'below-minimum',
    })
  return windDistribution({ mean: record.mean, shape: Math.exp(root(excess, [least, greatest], 1e-13)) })
}

/** Bins of wind speed; the last one is open upward, so that the shares sum to 1. */
export interface WindBins {
  /** Lower edge. [m/s] */
  readonly from: Float64Array
  /** Upper edge; Infinity in the last. [m/s] */
  readonly to: Float64Array
  /** Share of the time in the bin. [1] */
  readonly share: Float64Array
}

/**
 * Shares of the time between given edges, exact for the distribution; two open ends are added so that they sum to 1.
 *
 *   p_i = e^(−(v_i/A)^k) − e^(−(v_{i+1}/A)^k)
 *
 * Holds: edges from 0 upward. Accuracy: rounding only.
 *
 * @param distribution  A [m/s] and k [1]
 * @param edges         v_i  rising, ≥ 0                     [m/s]
 * @returns             edges [m/s] and share of each bin    [1]
 * @throws RangeError   edges not rising, below zero or none
 * @source derived, difference of windSpeedShare at the two edges
 * @example windBins({ scale: 6, shape: 2 }, [0, 3, 6]).share[1] // 0.410921
 */
export function windBins(distribution: WindDistribution, edges: ArrayLike<number>): WindBins {
  requireDistribution(distribution)
  if (edges.length < 1)
    refuse({ name: 'edges', condition: 'at least 1 long', value: 0, code: 'wrong-length' })
  const list: number[] = []
  for (let i = 0; i < edges.length; i++) {
    requireFinite(`edges[${i}]`, edges[i]!, 'm/s')
    requireNotNegative(`edges[${i}]`, edges[i]!, 'm/s')
    if (i > 0 && !(edges[i]! > edges[i - 1]!))
      refuse({
        name: `edges[${i}]`,
        condition: `above edges[${i - 1}]`,
        value: edges[i],
        code: 'not-increasing',
      })
    list.push(edges[i]!)
  }
  if (list[0]! > 0) list.unshift(0)
  const exceeded = (v: number) => Math.exp(-((v / distribution.scale) ** distribution.shape))
  const from = Float64Array.from(list)
  const to = Float64Array.from([...list.slice(1), Number.POSITIVE_INFINITY])
  return { from, to, share: from.map((v, i) => exceeded(v) - exceeded(to[i]!)) }
}
