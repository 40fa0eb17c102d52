/** Fourier series of periodic waveforms: f(x) = Σ_h cos[h]·cos(h x) + sin[h]·sin(h x), x in 0…2π. */
import { refuse } from '../refusal/require.ts'

export interface FourierSeries {
  /** Cosine amplitudes by order; index 0 is the mean. */
  readonly cos: Float64Array
  /** Sine amplitudes by order, as long as `cos`; index 0 is zero. */
  readonly sin: Float64Array
}

export const zeroSeries = (orders: number): FourierSeries => ({
  cos: new Float64Array(orders + 1),
  sin: new Float64Array(orders + 1),
})

/**
 * Series through `samples` taken at x = 2π k/N, k = 0…N−1, up to order `orders` (< N/2).
 * Exact for band-limited waveforms; higher orders alias, as in any sampling.
 */
export function fourierSeries(samples: ArrayLike<number>, orders: number): FourierSeries {
  const N = samples.length
  if (!(orders >= 0 && 2 * orders < N))
    refuse({ name: 'orders', condition: `from 0 to below ${N / 2}`, value: orders, code: 'above-maximum' })
  const series = zeroSeries(orders)
  const c = new Float64Array(N)
  const s = new Float64Array(N)
  for (let k = 0; k < N; k++) {
    c[k] = Math.cos((2 * Math.PI * k) / N)
    s[k] = Math.sin((2 * Math.PI * k) / N)
  }
  for (let h = 0; h <= orders; h++) {
    let a = 0
    let b = 0
    for (let k = 0; k < N; k++) {
      const j = (h * k) % N
      a += samples[k]! * c[j]!
      b += samples[k]! * s[j]!
    }
    const factor = h === 0 ? 1 / N : 2 / N
    series.cos[h] = a * factor
    series.sin[h] = h === 0 ? 0 : b * factor
  }
  return series
}

export function seriesValue(f: FourierSeries, x: number): number {
  const c1 = Math.cos(x)
  const s1 = Math.sin(x)
  let c = 1
  let s = 0
  let sum = 0
  for (let h = 0; h < f.cos.length; h++) {
    sum += f.cos[h]! * c + f.sin[h]! * s
    const next = c * c1 - s * s1
    s = s * c1 + c * s1
    c = next
  }
  return sum
}

/** The waveform at x = 2π k/N, k = 0…N−1. */
export function seriesSamples(f: FourierSeries, N: number): Float64Array {
  const samples = new Float64Array(N)
  for (let k = 0; k < N; k++) samples[k] = seriesValue(f, (2 * Math.PI * k) / N)
  return samples
}

/** df/dx. */
export function seriesDerivative({ cos, sin }: FourierSeries): FourierSeries {
  const slope = zeroSeries(cos.length - 1)
  for (let h = 0; h < cos.length; h++) {
    slope.cos[h] = h * sin[h]!
    slope.sin[h] = -h * cos[h]!
  }
  return slope
}

/** f(x − lag): the waveform that arrives `lag` later. */
export function seriesDelayed(f: FourierSeries, lag: number): FourierSeries {
  const delayed = zeroSeries(f.cos.length - 1)
  for (let h = 0; h < f.cos.length; h++) {
    const c = Math.cos(h * lag)
    const s = Math.sin(h * lag)
    delayed.cos[h] = f.cos[h]! * c - f.sin[h]! * s
    delayed.sin[h] = f.sin[h]! * c + f.cos[h]! * s
  }
  return delayed
}

export function seriesScaled({ cos, sin }: FourierSeries, factor: number): FourierSeries {
  const scaled = zeroSeries(cos.length - 1)
  for (let h = 0; h < cos.length; h++) {
    scaled.cos[h] = cos[h]! * factor
    scaled.sin[h] = sin[h]! * factor
  }
  return scaled
}

export function seriesSum(all: readonly FourierSeries[]): FourierSeries {
  const orders = Math.max(0, ...all.map((f) => f.cos.length - 1))
  const sum = zeroSeries(orders)
  for (const f of all)
    for (let h = 0; h < f.cos.length; h++) {
      sum.cos[h] = sum.cos[h]! + f.cos[h]!
      sum.sin[h] = sum.sin[h]! + f.sin[h]!
    }
  return sum
}

/** Peak amplitude √(cos² + sin²) of order h. */
export const harmonicAmplitude = (f: FourierSeries, h: number): number =>
  h < f.cos.length ? Math.hypot(f.cos[h]!, f.sin[h]!) : 0

/** Phase φ of order h in amplitude·cos(h x − φ), −π…π. */
export const harmonicPhase = (f: FourierSeries, h: number): number => Math.atan2(f.sin[h] ?? 0, f.cos[h] ?? 0)

/** Root mean square over one period, mean included. */
export function seriesRms(f: FourierSeries): number {
  let sum = f.cos[0]! ** 2
  for (let h = 1; h < f.cos.length; h++) sum += (f.cos[h]! ** 2 + f.sin[h]! ** 2) / 2
  return Math.sqrt(sum)
}

/** Largest |f| over a period: sampled finely, then each summit that may win is climbed by Newton's method on df/dx. */
export function seriesPeak(f: FourierSeries): number {
  const N = Math.max(64, 16 * f.cos.length)
  const y = seriesSamples(f, N)
  const slope = seriesDerivative(f)
  const bend = seriesDerivative(slope)
  let best = 0
  for (let k = 0; k < N; k++) best = Math.max(best, Math.abs(y[k]!))
  // A summit of the highest order lies at most 1 − cos(π/16) = 2 % above its nearest sample, as a share of that order.
  const mayWin = 0.95 * best
  for (let k = 0; k < N; k++) {
    const here = Math.abs(y[k]!)
    if (here < mayWin || here < Math.abs(y[(k + N - 1) % N]!) || here < Math.abs(y[(k + 1) % N]!)) continue
    const start = (2 * Math.PI * k) / N
    const reach = (2 * Math.PI) / N
    let x = start
    for (let step = 0; step < 6; step++) {
      const change = seriesValue(slope, x) / seriesValue(bend, x)
      if (!Number.isFinite(change)) break
      x = Math.min(start + reach, Math.max(start - reach, x - change))
      if (Math.abs(change) < 1e-9 * reach) break
    }
    best = Math.max(best, Math.abs(seriesValue(f, x)))
  }
  return best
}
