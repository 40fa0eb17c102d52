/** Curves through given points that never overshoot them. */
import { refuse, requireLength } from '../refusal/require.ts'

/**
 * Shape-keeping cubic through (x, y) by the Fritsch–Carlson slopes (Fritsch & Carlson 1980);
 * beyond the ends it goes on as the end value. x must rise.
 */
export function monotoneCubic(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const n = x.length
  requireLength('y', y, n)
  if (n < 1) refuse({ name: 'x', condition: 'at least 1 long', value: n, code: 'wrong-length' })
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
    const h = step[low]!
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
