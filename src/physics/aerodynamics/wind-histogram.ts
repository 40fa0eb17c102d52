/** Histogram of measured wind speed: bins from calm upward, in each of which every speed is equally frequent. */
import { refuse, requireBetween, requireNotNegative, requirePositive } from '../../refusal/require.ts'
import { type PowerCurve, requireCurve } from './annual-energy.ts'

/** Bin i reaches from i to i + 1 widths. */
export interface WindHistogram {
  /** > 0 [m/s] */
  readonly binWidth: number
  /** Time, hours or readings in each bin, in any one unit; at least one above zero. [1] */
  readonly count: ArrayLike<number>
}

function total({ binWidth, count }: WindHistogram): number {
  requirePositive('binWidth', binWidth, 'm/s')
  let sum = 0
  for (let i = 0; i < count.length; i++) {
    requireNotNegative(`count[${i}]`, count[i]!)
    sum += count[i]!
  }
  if (!(sum > 0))
    refuse({ name: 'counts', condition: 'above zero together', value: sum, code: 'below-minimum' })
  return sum
}

/**
 * Mean of a power of the wind speed over a histogram.
 *
 *   ⟨v^m⟩ = Σ p_i w^m ((i+1)^(m+1) − i^(m+1)) / (m+1)
 *
 * Holds: every speed equally frequent within a bin. Accuracy: of that histogram exact; ⟨v³⟩ of 0.5 m/s bins is off by 0.1 % for a mean of 5 m/s.
 *
 * @param histogram  bin width [m/s] and counts             [1]
 * @param exponent   m, from 0 to 6                          [1]
 * @returns          ⟨v^m⟩  in (m/s)^m: [m/s] for m = 1, for m = 3 [m³/s³]
 * @throws RangeError  no count above zero, a count below zero, width not above zero, m out of bounds
 * @source derived, integral of v^m over bins of even density
 * @example histogramMoment({ binWidth: 2, count: [1, 1] }, 1) // 2.0
 */
export function histogramMoment(histogram: WindHistogram, exponent: number): number {
  requireBetween('exponent', exponent, [0, 6])
  const N = total(histogram)
  const { binWidth: w, count } = histogram
  const m = exponent
  let sum = 0
  for (let i = 0; i < count.length; i++)
    if (count[i]! > 0) sum += (count[i]! / N) * ((i + 1) ** (m + 1) - i ** (m + 1))
  return (w ** m * sum) / (m + 1)
}

/**
 * Share of the time the wind is at or below a speed, by a histogram.
 *
 *   F = Σ_{j<i} p_j + p_i (v/w − i)
 *
 * Holds: every speed equally frequent within a bin. Accuracy: rounding only.
 *
 * @param histogram  bin width [m/s] and counts  [1]
 * @param windSpeed  v  ≥ 0                      [m/s]
 * @returns          F                           [1]
 * @throws RangeError  as histogramMoment; speed below zero
 * @source derived, integral of the even density within a bin
 * @example histogramShare({ binWidth: 2, count: [1, 1] }, 3) // 0.75
 */
export function histogramShare(histogram: WindHistogram, windSpeed: number): number {
  requireNotNegative('windSpeed', windSpeed, 'm/s')
  const N = total(histogram)
  const { binWidth, count } = histogram
  const at = windSpeed / binWidth
  let sum = 0
  for (let i = 0; i < count.length && i < at; i++) sum += count[i]! * Math.min(1, at - i)
  return Math.min(1, sum / N)
}

/**
 * Mean power of a power curve in the winds of a histogram.
 *
 *   P̄ = Σ p_i (1/w) ∫ P dv over each bin
 *
 * Holds: any curve of straight pieces, steps at both ends included. Accuracy: of that histogram exact, rounding only.
 *
 * @param curve      wind speeds [m/s], powers [W], what is above the last
 * @param histogram  bin width [m/s] and counts  [1]
 * @returns          P̄                           [W]
 * @throws RangeError  as histogramMoment; lists of unequal length, speeds not rising or below zero
 * @source derived, integral of the straight pieces over bins of even density
 * @example histogramMeanPower({ windSpeed: [0, 4], power: [0, 400] }, { binWidth: 2, count: [1, 1] }) // 200.0
 */
export function histogramMeanPower(curve: PowerCurve, histogram: WindHistogram): number {
  requireCurve(curve)
  const N = total(histogram)
  const { binWidth: w, count } = histogram
  const { windSpeed: v, power: P, above = 'hold' } = curve
  const last = v.length - 1
  // ∫ P dv from 0: piece by piece, asked with rising speeds only
  let piece = 0
  let done = 0
  const integralTo = (x: number): number => {
    while (piece < last && v[piece + 1]! <= x) {
      done += ((P[piece]! + P[piece + 1]!) / 2) * (v[piece + 1]! - v[piece]!)
      piece++
    }
    if (x <= v[0]!) return 0
    if (piece === last) return done + (above === 'hold' ? P[last]! * (x - v[last]!) : 0)
    const slope = (P[piece + 1]! - P[piece]!) / (v[piece + 1]! - v[piece]!)
    const d = x - v[piece]!
    return done + (P[piece]! + (slope * d) / 2) * d
  }
  let before = integralTo(0)
  let sum = 0
  for (let i = 0; i < count.length; i++) {
    const next = integralTo((i + 1) * w)
    if (count[i]! > 0) sum += (count[i]! / N) * ((next - before) / w)
    before = next
  }
  return sum
}
