/** One space harmonic of a drum's potential with its answer in the iron, wave number by wave number along the axis. */
import { modifiedBessel } from '../../numerics/bessel.ts'
import { type EndedTube, endedCharge, functionsFor } from './iron-cylinder-end.ts'
import { type TubeWave, tubeReluctance, tubeWave } from './iron-cylinder-sheet.ts'
import {
  type BlockHarmonic,
  blockHarmonic,
  type DrumBlock,
  type SourceWave,
  sourceWave,
} from './iron-cylinder-source.ts'

/** A tube in coherent numbers: infinite length or permeability where nothing was said. */
export interface Tube {
  readonly side: 'inner' | 'outer'
  readonly radius: number
  readonly farRadius: number
  readonly length: number
  /** No permeability but an infinite one will be asked for. */
  readonly ideal: boolean
}

/** Everything about one order that no permeability changes. */
export interface OrderWaves {
  readonly order: number
  readonly step: number
  /** k at the middles of equal steps [1/m]. */
  readonly k: Float64Array
  /** 2 sin(kL/2)/k: the block's length. */
  readonly run: Float64Array
  readonly source: readonly SourceWave[]
  /** Per tube and k. */
  readonly tubes: readonly (readonly TubeWave[])[]
  /** Potential of the block on the tube per unit polarization. */
  readonly potential: readonly Float64Array[]
  /** I(kR inner) K(kR outer). */
  readonly coupling: Float64Array
}

/** Attenuation, in nepers, after which no further wave numbers are taken; and their greatest number. */
const attenuation = 8
const mostWaves = 160

/** Functions of z on a tube at most; a tube that would need more is taken as endless. */
const mostFunctions = 32

/** How far beyond the magnets' ends iron still counts, in lengths R/m. */
const deadOverhang = 4

/** @internal Waves of one order, as dense as the period along the axis and as many as the distances ask. */
export function orderWaves(block: DrumBlock, tubes: readonly Tube[], order: number): OrderWaves {
  const { radius, axialLength, thickness, width } = block
  const harmonic: BlockHarmonic = blockHarmonic(block, order)
  const corner = Math.hypot(radius + thickness / 2, width / 2)
  const outer = tubes.find(({ side }) => side === 'outer')
  const longest = Math.max(
    axialLength,
    ...tubes.map(({ length }) => Math.min(length, usefulLength(block, order))),
  )
  // copies of the machine along the axis must not see each other: (1 + d²)^−(m + ½) small
  const apart = radius * Math.min(2 * Math.sqrt(10 ** (5 / (order + 0.5)) - 1), 40)
  const period = Math.max(axialLength, longest) + apart
  // a tube close to the magnets' backs is smoothed by the magnets before the winding sees it
  const gap = outer === undefined ? thickness : outer.radius - corner
  const nearest = gap < thickness / 3 ? thickness : Math.min(gap, thickness)
  const highest = Math.max(attenuation / nearest, (2 * 30) / longest, (2 * order) / radius)
  const count = Math.min(Math.ceil((highest * period) / (2 * Math.PI)), mostWaves)
  const step = (2 * Math.PI) / period
  const k = Float64Array.from({ length: count }, (_, i) => (i + 0.5) * step)
  const run = k.map((k) => (2 * Math.sin((k * axialLength) / 2)) / k)
  const source: SourceWave[] = []
  for (let i = 0; i < count; i++) source.push(sourceWave(harmonic, k[i]!))
  const waves = tubes.map(({ radius, farRadius, ideal }) => {
    const list: TubeWave[] = []
    for (let i = 0; i < count; i++) list.push(tubeWave(order, k[i]!, radius, ideal ? 0 : farRadius))
    return list
  })
  const potential = tubes.map(({ side }, t) =>
    run.map((u, i) => {
      const { near } = waves[t]![i]!
      const { sumI, lnI, sumK, lnK } = source[i]!
      return side === 'inner' ? u * sumK * Math.exp(near.lnI + lnK) : u * sumI * Math.exp(near.lnK + lnI)
    }),
  )
  const coupling =
    tubes.length < 2
      ? new Float64Array(count)
      : k.map((_, i) => Math.exp(waves[0]![i]!.near.lnI + waves[1]![i]!.near.lnK))
  return { order, step, k, run, source, tubes: waves, potential, coupling }
}

const usefulLength = ({ axialLength, radius }: DrumBlock, order: number): number =>
  axialLength + (2 * deadOverhang * radius) / order

/** Charge of one order on the tubes, with the share of flux that enters and leaves each. */
export interface OrderCharge {
  readonly charge: readonly Float64Array[]
  readonly entering: readonly Float64Array[]
  readonly leaving: readonly Float64Array[]
}

/** @internal Charge on the tubes for given relative permeabilities. */
export function orderCharge(
  block: DrumBlock,
  tubes: readonly Tube[],
  waves: OrderWaves,
  permeability: readonly number[],
): OrderCharge {
  const { order, k, step, potential, coupling } = waves
  const count = k.length
  const entering = tubes.map(() => new Float64Array(count))
  const leaving = tubes.map(() => new Float64Array(count))
  const kernel = tubes.map(({ side }, t) =>
    k.map((k, i) => {
      const wave = waves.tubes[t]![i]!
      const answer = tubeReluctance(wave, k, permeability[t]!, side)
      entering[t]![i] = answer.entering
      leaving[t]![i] = answer.leaving
      return Math.exp(wave.near.lnI + wave.near.lnK) + answer.reluctance
    }),
  )
  const useful = usefulLength(block, order)
  if (tubes.some(({ length }) => length < useful)) {
    const scale = Math.max(block.radius / order, 1.2 * block.thickness)
    const ended: EndedTube[] = tubes.map(({ radius, length }, t) => ({
      radius,
      length: Math.min(length, useful),
      functions: functionsFor(Math.min(length, useful), scale, k[count - 1]!),
      kernel: kernel[t]!,
      potential: potential[t]!,
    }))
    // where that takes many functions the ends are a small part of the whole
    if (ended.every(({ functions }) => functions <= mostFunctions))
      return { charge: endedCharge(k, step, ended, coupling), entering, leaving }
  }
  const charge = tubes.map(() => new Float64Array(count))
  for (let i = 0; i < count; i++)
    if (tubes.length === 1) charge[0]![i] = -potential[0]![i]! / (tubes[0]!.radius * kernel[0]![i]!)
    else if (tubes.length === 2) {
      const [a, b, c] = [kernel[0]![i]!, kernel[1]![i]!, coupling[i]!]
      const [p, q] = [potential[0]![i]!, potential[1]![i]!]
      const determinant = a * b - c * c
      charge[0]![i] = -(p * b - q * c) / (determinant * tubes[0]!.radius)
      charge[1]![i] = -(q * a - p * c) / (determinant * tubes[1]!.radius)
    }
  return { charge, entering, leaving }
}

/** Potential and slope along the radius of one order, per unit polarization of one block. */
export interface Potential {
  /** [m] */
  readonly value: number
  /** [1] */
  readonly slope: number
}

export interface RunPotential {
  readonly open: Potential
  readonly iron: Potential
  /** Of the open field, had the block's faces no width over which this order cancels. */
  readonly envelope: Potential
}

/** @internal Weights of wave numbers for the mean over −l/2 … l/2; for the middle where the length is zero. */
export const runMean = (k: number, length: number): number => {
  const x = (k * length) / 2
  return x === 0 ? 1 : Math.sin(x) / x
}

/** @internal C of a single block's order: Φ = J C Σ Δk cos kz …, from 1/|r − r′| = (2/π) Σ e^imθ ∫ cos kz I K dk. */
export const blockShare = (order: number): number => (order === 0 ? 1 : 2) / (2 * Math.PI * Math.PI)

/** @internal Means over a run −l/2 … l/2 at a radius between the tubes, per unit polarization of one block. */
export function runPotential(
  block: DrumBlock,
  tubes: readonly Tube[],
  waves: OrderWaves,
  { charge }: OrderCharge,
  place: { readonly radius: number; readonly length: number },
): RunPotential {
  const { order, k, step, run, source } = waves
  const { radius, length } = place
  const outside = radius > block.radius
  const sums = new Float64Array(6)
  for (let i = 0; i < k.length; i++) {
    const at = modifiedBessel(order, k[i]! * radius)
    const v = step * runMean(k[i]!, length)
    const { sumI, lnI, sumK, lnK, envelopeI, envelopeK } = source[i]!
    const slope = k[i]! * (outside ? at.slopeK : at.slopeI)
    const u = v * run[i]! * Math.exp(outside ? lnI + at.lnK : lnK + at.lnI)
    const open = u * (outside ? sumI : sumK)
    const most = u * (outside ? envelopeI : envelopeK)
    sums[0]! += open
    sums[1]! += open * slope
    sums[4]! += most
    sums[5]! += most * slope
    for (let t = 0; t < tubes.length; t++) {
      const { near } = waves.tubes[t]![i]!
      const inner = tubes[t]!.side === 'inner'
      const exponent = inner ? near.lnI + at.lnK : near.lnK + at.lnI
      const Φ = v * tubes[t]!.radius * charge[t]![i]! * Math.exp(exponent)
      sums[2]! += Φ
      sums[3]! += Φ * k[i]! * (inner ? at.slopeK : at.slopeI)
    }
  }
  const C = blockShare(order)
  const potential = (j: number): Potential => ({ value: C * sums[j]!, slope: C * sums[j + 1]! })
  return { open: potential(0), iron: potential(2), envelope: potential(4) }
}
