/** Flux of a drum's magnets in the wall of an iron tube. */
import type { DrumBlock } from './iron-cylinder-source.ts'
import { blockShare, type OrderCharge, type OrderWaves, runMean, type Tube } from './iron-cylinder-wave.ts'

/** Alternating blocks between tubes, with the waves of each order. */
export interface TubedDrum {
  readonly magnets: DrumBlock & { readonly count: number; readonly polarization: number }
  readonly tubes: readonly Tube[]
  readonly waves: (order: number) => OrderWaves
}

/** Flux of one order into a tube and along its wall. */
export interface WallFlux {
  readonly order: number
  /** What turns into the wall between two poles, of cos kz, by k [T·m]. */
  readonly wall: Float64Array
  /** Of a whole pole, through the near surface and out of the far one [Wb]. */
  readonly entering: number
  readonly leaving: number
}

/**
 * Share of cos kz that reaches the wall between two poles at z = `at`, or its mean over the run. In the iron flux
 * spreads along the axis too (∇²Φ = 0 there, with m/R round it) and cannot leave through the ends.
 */
function wallShare(
  k: number,
  inverse: number,
  length: number,
  at: number | { readonly mean: number },
): number {
  const q = k * inverse
  const damped = 1 / (1 + q * q)
  if (!Number.isFinite(length))
    return damped * (typeof at === 'number' ? Math.cos(k * at) : runMean(k, at.mean))
  if (typeof at !== 'number') return runMean(k, length)
  const half = length / 2
  const e = Math.exp(-2 * (half / inverse))
  const cosh = Math.exp((at - half) / inverse) * (1 + Math.exp((-2 * at) / inverse))
  return damped * (Math.cos(k * at) + (q * Math.sin(k * half) * cosh) / (1 - e))
}

/** @internal Flux of one order of the whole ring into tube t. */
export function wallFlux(
  { magnets, tubes, waves }: TubedDrum,
  order: number,
  t: number,
  { charge, entering, leaving }: OrderCharge,
): WallFlux {
  const { k, step } = waves(order)
  const { radius, farRadius, length } = tubes[t]!
  const amplitude = magnets.count * blockShare(order) * magnets.polarization * step
  const run = Number.isFinite(length) ? length : magnets.axialLength
  const wall = new Float64Array(k.length)
  let [into, out] = [0, 0]
  for (let i = 0; i < k.length; i++) {
    const s = amplitude * charge[t]![i]!
    const [a, b] = [radius * s * entering[t]![i]!, farRadius * s * leaving[t]![i]!]
    wall[i] = (a - b) / order
    const v = (2 * run * runMean(k[i]!, run)) / order
    into += a * v
    out += b * v
  }
  return { order, wall, entering: into, leaving: out }
}

/** @internal Flux density along the circumference, mean over the wall, at an angle from the middle of a pole. */
export function wallDensity(
  { tubes, waves }: TubedDrum,
  fluxes: readonly WallFlux[],
  t: number,
  angle: number,
  at: number | { readonly mean: number },
): number {
  const { radius, farRadius, length } = tubes[t]!
  let sum = 0
  for (const { order, wall } of fluxes) {
    const { k } = waves(order)
    const inverse = (radius + farRadius) / (2 * order)
    let along = 0
    for (let i = 0; i < k.length; i++) along += wall[i]! * wallShare(k[i]!, inverse, length, at)
    sum += along * Math.sin(order * angle)
  }
  return Math.abs(sum) / Math.abs(radius - farRadius)
}
