/** Curves through given points that never overshoot them. */
import { refuse, requireFinite, requireLength } from '../refusal/require.ts'

/**
 * Shape-keeping cubic through (x, y): inside, the weighted harmonic mean of the chords (Fritsch & Butland 1984), which
 * meets the condition of Fritsch & Carlson 1980; at the ends, the end chord. Beyond them the end value. x must rise.
 */
export function monotoneCubic(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length
  requireLength('y', y, n)
  if (n < 1) refuse({ name: 'x', condition: 'at least 1 long', value: n, code: 'wrong-length' })
  for (let i = 0; i < n; i++) requireFinite(`y[${i}]`, y[i]!)
  const step = new Float64Array(n)
  const chord = new Float64Array(n)
  for (let i = 0; i + 1 < n; i++) {
    step[i] = x[i + 1]! - x[i]!
    if (!(step[i]! > 0))
      refuse({ name: `x[${i + 1}]`, condition: `above x[${i}]`, value: x[i + 1], code: 'not-increasing' })
    chord[i] = (y[i + 1]! - y[i]!) / step[i]!
  }
  const slope = new Float64Array(n)
  for (let i = 1; i + 1 < n; i++) {
    const left = chord[i - 1]!
    const right = chord[i]!
    if (left * right <= 0) continue
    const w1 = 2 * step[i]! + step[i - 1]!
    const w2 = step[i]! + 2 * step[i - 1]!
    slope[i] = (w1 + w2) / (w1 / left + w2 / right)
  }
  if (n > 1) {
    slope[0] = chord[0]!
    slope[n - 1] = chord[n - 2]!
  }
  return hermite(x, y, slope)
}

/** Cubic pieces with the given values and slopes; the end value beyond the ends. */
function hermite(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  slope: ArrayLike<number>,
): (at: number) => number {
  const last = x.length - 1
  return (at) => {
    if (!(at > x[0]!)) return y[0]!
    if (at >= x[last]!) return y[last]!
    let low = 0
    let high = last
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (x[middle]! <= at) low = middle
      else high = middle
    }
    const h = x[low + 1]! - x[low]!
    const t = (at - x[low]!) / h
    const u = 1 - t
    return (
      y[low]! * (1 + 2 * t) * u * u +
      slope[low]! * h * t * u * u +
      y[low + 1]! * t * t * (3 - 2 * t) -
      slope[low + 1]! * h * t * t * u
    )
  }
}

/** Straight lines between the points; the end value beyond the ends. x must rise. */
export function piecewiseLinear(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length
  requireLength('y', y, n)
  if (n < 1) refuse({ name: 'x', condition: 'at least 1 long', value: n, code: 'wrong-length' })
  for (let i = 0; i < n; i++) requireFinite(`y[${i}]`, y[i]!)
  for (let i = 0; i + 1 < n; i++)
    if (!(x[i + 1]! > x[i]!))
      refuse({ name: `x[${i + 1}]`, condition: `above x[${i}]`, value: x[i + 1], code: 'not-increasing' })
  return (at) => {
    if (!(at > x[0]!)) return y[0]!
    if (at >= x[n - 1]!) return y[n - 1]!
    let low = 0
    let high = n - 1
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (x[middle]! <= at) low = middle
      else high = middle
    }
    const t = (at - x[low]!) / (x[high]! - x[low]!)
    return y[low]! + t * (y[high]! - y[low]!)
  }
}

/**
 * Cubic through (x, y) whose slopes come from the parabola through each point and its neighbours: exact for
 * parabolas, third order elsewhere, may overshoot at kinks. The end value beyond the ends. x must rise.
 */
export function smoothCubic(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length
  requireLength('y', y, n)
  if (n < 3) return piecewiseLinear(x, y)
  const chord = new Float64Array(n - 1)
  const slope = new Float64Array(n)
  for (let i = 0; i + 1 < n; i++) {
    const step = x[i + 1]! - x[i]!
    if (!(step > 0))
      refuse({ name: `x[${i + 1}]`, condition: `above x[${i}]`, value: x[i + 1], code: 'not-increasing' })
    chord[i] = (y[i + 1]! - y[i]!) / step
  }
  for (let i = 1; i + 1 < n; i++) {
    const left = x[i]! - x[i - 1]!
    const right = x[i + 1]! - x[i]!
    slope[i] = (chord[i - 1]! * right + chord[i]! * left) / (left + right)
  }
  slope[0] = 2 * chord[0]! - slope[1]!
  slope[n - 1] = 2 * chord[n - 2]! - slope[n - 2]!
  return hermite(x, y, slope)
}
