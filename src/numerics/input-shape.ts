/** Shapes in which an uncertain input may be spread: quantile, mean and deviation of each. */
import { refuse, requireBetween, requireFinite, requireNotNegative } from '../refusal/require.ts'
import { normalQuantile } from './normal-quantile.ts'

export type InputShape =
  /** Best value and standard deviation (JCGM 101:2008, 6.4.7; its clauses here from memory, not opened). */
  | { readonly kind: 'normal'; readonly mean: number; readonly deviation: number }
  /** Anything between two limits, all alike (6.4.2). */
  | { readonly kind: 'rectangular'; readonly from: number; readonly to: number }
  /** Rises straight to a peak and falls straight; with the peak in the middle, 6.4.5. */
  | { readonly kind: 'triangular'; readonly from: number; readonly peak: number; readonly to: number }
  /** What a sinusoid of unknown phase shows: most often near its limits (6.4.6). */
  | { readonly kind: 'arcsine'; readonly from: number; readonly to: number }

function width(from: number, to: number): number {
  requireFinite('from', from)
  requireFinite('to', to)
  if (to < from)
    refuse({ name: 'from and to', condition: 'in rising order', value: [from, to], code: 'not-increasing' })
  requireFinite('to − from', to - from)
  return to - from
}

function normal({ mean, deviation }: { readonly mean: number; readonly deviation: number }): void {
  requireFinite('mean', mean)
  requireNotNegative('deviation', deviation)
}

/** Place of the peak between the limits, 0 … 1; ½ when the limits meet. */
function peakShare(from: number, peak: number, to: number): number {
  const w = width(from, to)
  requireBetween('peak', peak, [from, to])
  return w === 0 ? 0.5 : (peak - from) / w
}

/**
 * The value that the input stays below with probability `p`.
 *
 * Normal: 0 < p < 1, mean + deviation z(p). The others, 0 ≤ p ≤ 1, with w = to − from and c = (peak − from)/w:
 * rectangular from + w p; triangular from + w √(p c) up to p = c, then to − w √((1 − p)(1 − c)); arcsine
 * from + w sin²(πp/2). Closed forms; rounding only.
 */
export function shapeQuantile(shape: InputShape, p: number): number {
  if (shape.kind === 'normal') {
    normal(shape)
    return shape.mean + shape.deviation * normalQuantile(p)
  }
  requireBetween('p', p, [0, 1])
  const { from, to } = shape
  const w = width(from, to)
  if (shape.kind === 'rectangular') return from + w * p
  if (shape.kind === 'arcsine') return from + w * Math.sin((Math.PI * p) / 2) ** 2
  const c = peakShare(from, shape.peak, to)
  return p < c ? from + w * Math.sqrt(p * c) : to - w * Math.sqrt((1 - p) * (1 - c))
}

/**
 * Mean and standard deviation of the input.
 *
 * Rectangular w/√12 (JCGM 101:2008, 6.4.2.3), triangular w √((1 − c + c²)/18) (w/√24 with the peak in the middle,
 * 6.4.5.3), arcsine w/√8 (6.4.6.3). Closed forms; rounding only.
 */
export function shapeMoments(shape: InputShape): { readonly mean: number; readonly deviation: number } {
  if (shape.kind === 'normal') {
    normal(shape)
    return { mean: shape.mean, deviation: shape.deviation }
  }
  const { from, to } = shape
  const w = width(from, to)
  if (shape.kind === 'rectangular') return { mean: from + w / 2, deviation: w / Math.sqrt(12) }
  if (shape.kind === 'arcsine') return { mean: from + w / 2, deviation: w / Math.sqrt(8) }
  const c = peakShare(from, shape.peak, to)
  return { mean: from + (w * (1 + c)) / 3, deviation: w * Math.sqrt((1 - c + c * c) / 18) }
}
