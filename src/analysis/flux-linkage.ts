/** Flux of the whole rotor through one conductor shape against the rotor's angle, magnet by magnet. */
import { curveQuadrature } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import {
  type FourierSeries,
  fourierSeries,
  seriesDelayed,
  seriesScaled,
  seriesSum,
} from '../numerics/fourier.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import type { BlockMagnet } from '../physics/magnetics/block-magnet.ts'
import { blockVectorPotential } from '../physics/magnetics/block-magnet.ts'
import { pathLinkage } from '../physics/winding/path-linkage.ts'
import { fieldError, type RotorField } from './air-gap-field.ts'
import type { ConductorShape } from './conductor-layout.ts'

/** Harmonics weaker than this share of the fundamental in the open field are left out. */
const harmonicShare = 1e-4
const harmonicRange = [9, 25] as const

/**
 * Electrical orders worth keeping: those that outlive the way from magnet to wire, exp(−n π d/τ), odd count.
 * d is the least distance from magnet face to copper, τ the pole pitch there.
 */
export function keptHarmonics(machine: Machine, shape: ConductorShape): number {
  const { pitchRadius, poleCount } = machine.rotor
  const τ = (2 * Math.PI * pitchRadius) / poleCount
  const d = Math.max(shape.distance - shape.bundle.thickness / 2, 0.2e-3)
  const n = Math.ceil((-Math.log(harmonicShare) * τ) / (Math.PI * d))
  return Math.min(Math.max(n, harmonicRange[0]), harmonicRange[1]) | 1
}

/** Quadrature points of all filaments, weights in the steps. */
function quadrature(shape: ConductorShape, copies: number) {
  const order = 4
  const longestStep = Math.max(shape.turnLength / 12 / shape.repeats, 2 * shape.distance)
  const parts = shape.filaments.map(({ curve, weight }) => {
    const { points, steps } = curveQuadrature(curve, { longestStep, order })
    return { points, steps: steps.map((step) => step * weight) }
  })
  const length = parts.reduce((sum, part) => sum + part.points.length, 0)
  const points = new Float64Array(length * copies)
  const steps = new Float64Array(length * copies)
  for (let copy = 0; copy < copies; copy++) {
    let at = copy * length
    const angle = (2 * Math.PI * copy) / copies
    for (const part of parts) {
      points.set(turnPointsAboutZ(part.points, angle), at)
      steps.set(turnPointsAboutZ(part.steps, angle), at)
      at += part.points.length
    }
  }
  return { points, steps }
}

/** ψ at N rotor angles over `span`, for the given sources, of `copies` copies of the shape's filaments. */
export function linkageSamples(options: {
  readonly shape: ConductorShape
  readonly copies: number
  readonly sources: readonly BlockMagnet[]
  readonly span: number
  readonly count: number
}): Float64Array {
  const { shape, copies, sources, span, count } = options
  const { points, steps } = quadrature(shape, copies)
  const turned = new Float64Array(points.length * count)
  for (let k = 0; k < count; k++) turned.set(turnPointsAboutZ(points, (-span * k) / count), points.length * k)
  const A = blockVectorPotential(sources, turned, { relativeError: fieldError })
  const samples = new Float64Array(count)
  // A is seen from the rotor, and so must the steps be
  for (let k = 0; k < count; k++)
    samples[k] = pathLinkage(
      A.subarray(points.length * k, points.length * (k + 1)),
      turnPointsAboutZ(steps, (-span * k) / count),
    )
  return samples
}

export interface Linkage {
  /** ψ of one turn, averaged over the bundle [Wb]; its period is 1/`base` of a turn of the rotor. */
  readonly flux: FourierSeries
  /** Periods per turn of the rotor: p where the poles simply alternate, else 1. */
  readonly base: number
}

/** The sources that belong to the magnet position k: the block, its mate on the other disc, their images. */
function sourcesOfMagnet(field: RotorField, poleCount: number, k: number): BlockMagnet[] {
  const share = (2 * Math.PI) / poleCount
  return field.sources.filter(({ centre }) => {
    const turn = Math.atan2(centre[1], centre[0]) / share - k
    return Math.abs(turn - poleCount * Math.round(turn / poleCount)) < 0.5
  })
}

/**
 * Linkage by superposition: one magnet position is computed over the turn, the others follow by their angle
 * and sign, so that a weak, missing or turned magnet costs nothing more.
 */
export function rotorLinkage(machine: Machine, field: RotorField, shape: ConductorShape): Linkage {
  const { poleCount, polePairs, sequence, alternating } = machine.rotor
  const orders = keptHarmonics(machine, shape)
  // the linkage with one magnet repeats as often as the shape does round the shaft
  const own = fourierSeries(
    linkageSamples({
      shape,
      copies: shape.repeats,
      sources: sourcesOfMagnet(field, poleCount, 0),
      span: (2 * Math.PI) / shape.repeats,
      count: (2 * (orders + 1) * polePairs) / shape.repeats,
    }),
    (orders * polePairs) / shape.repeats,
  )
  if (alternating && shape.repeats === polePairs)
    // N and S lie half a period apart: every even order cancels
    return { base: polePairs, flux: oddOrders(own, poleCount) }
  const turn = spread(own, shape.repeats)
  const sum = seriesSum(
    sequence.map((sign, k) => {
      const sameAsFirst = sign * sequence[0]!
      return seriesScaled(seriesDelayed(turn, (2 * Math.PI * k) / poleCount), sameAsFirst)
    }),
  )
  return alternating ? { base: polePairs, flux: everyOrder(sum, polePairs) } : { base: 1, flux: sum }
}

function oddOrders(own: FourierSeries, factor: number): FourierSeries {
  const keep = (values: Float64Array) => values.map((value, h) => (h % 2 === 1 ? factor * value : 0))
  return { cos: keep(own.cos), sin: keep(own.sin) }
}

/** The same waveform seen over `times` of its periods. */
function spread(series: FourierSeries, times: number): FourierSeries {
  const orders = (series.cos.length - 1) * times
  const cos = new Float64Array(orders + 1)
  const sin = new Float64Array(orders + 1)
  for (let h = 0; h < series.cos.length; h++) {
    cos[h * times] = series.cos[h]!
    sin[h * times] = series.sin[h]!
  }
  return { cos, sin }
}

const everyOrder = (series: FourierSeries, step: number): FourierSeries => ({
  cos: series.cos.filter((_, h) => h % step === 0),
  sin: series.sin.filter((_, h) => h % step === 0),
})
