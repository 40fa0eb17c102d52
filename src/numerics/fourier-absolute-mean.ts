/** Mean of |f| over a period of a Fourier series, by its zeros and its integral between them. */
import { type FourierSeries, seriesDerivative, seriesSamples, seriesValue } from './fourier.ts'

/** Integral of f from 0 to x. */
function integral(f: FourierSeries, x: number): number {
  let sum = f.cos[0]! * x
  for (let h = 1; h < f.cos.length; h++)
    sum += (f.cos[h]! * Math.sin(h * x) + f.sin[h]! * (1 - Math.cos(h * x))) / h
  return sum
}

const leastSamples = 64
const samplesPerOrder = 16
const steps = 60

/** The zero between a and b, where f has unlike signs: Newton's step where it stays between, else the middle. */
function zeroBetween(f: FourierSeries, slope: FourierSeries, a: number, b: number, rising: boolean): number {
  let [low, high] = [a, b]
  let x = (a + b) / 2
  for (let step = 0; step < steps; step++) {
    const y = seriesValue(f, x)
    if (y === 0) return x
    if (y < 0 === rising) low = x
    else high = x
    const newton = x - y / seriesValue(slope, x)
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - x) < 1e-13 * Math.abs(b)) return next
    x = next
  }
  return x
}

/** f at equal steps of a period, ends included, and at the turning points next to its smallest values of one sign. */
function nodes(f: FourierSeries): [x: number, y: number][] {
  const N = Math.max(leastSamples, samplesPerOrder * f.cos.length)
  const step = (2 * Math.PI) / N
  const y = seriesSamples(f, N)
  const list: [number, number][] = []
  for (let k = 0; k <= N; k++) {
    const here = y[k % N]!
    const before = y[(k + N - 1) % N]!
    const after = y[(k + 1) % N]!
    const bend = before - 2 * here + after
    const turns = here * before > 0 && here * after > 0 && bend * here > 0
    const dip = turns && Math.abs(here) <= Math.min(Math.abs(before), Math.abs(after))
    const shift = dip ? (0.5 * step * (before - after)) / bend : 0
    const x = k * step
    const vertex: [number, number] = [x + shift, dip ? seriesValue(f, x + shift) : here]
    if (shift < 0 && k > 0) list.push(vertex)
    list.push([x, here])
    if (shift > 0 && k < N) list.push(vertex)
  }
  return list
}

/**
 * (1/2π) ∮ |f| dx. Exact but for rounding where neighbouring zeros are further apart than a sixteenth of the highest
 * order's period, and for most pairs closer than that, which bound next to no surface.
 */
export function seriesAbsoluteMean(f: FourierSeries): number {
  const slope = seriesDerivative(f)
  let sum = 0
  let integralBefore = 0
  let [last, before] = [0, 0]
  for (const [x, here] of nodes(f)) {
    if ((before < 0 && here > 0) || (before > 0 && here < 0)) {
      const value = integral(f, zeroBetween(f, slope, last, x, here > 0))
      sum += Math.abs(value - integralBefore)
      integralBefore = value
    }
    if (here !== 0) [last, before] = [x, here]
  }
  return (sum + Math.abs(integral(f, 2 * Math.PI) - integralBefore)) / (2 * Math.PI)
}
