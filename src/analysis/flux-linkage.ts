/** Flux of the whole rotor through one conductor shape against the rotor's angle, magnet by magnet. */
import type { Filament } from '../geometry/bundle.ts'
import { type Curve, curveQuadrature, pieceLength, piecePoint } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import {
  type FourierSeries,
  fourierSeries,
  harmonicAmplitude,
  seriesDelayed,
  seriesScaled,
  seriesSum,
} from '../numerics/fourier.ts'
import { turnPointsAboutZ } from '../numerics/vector.ts'
import { type Magnet, magnetVectorPotential } from '../physics/magnetics/magnet.ts'
import { pathLinkage } from '../physics/winding/path-linkage.ts'
import type { Pole, RotorField } from './air-gap-field.ts'
import type { ConductorShape } from './conductor-layout.ts'
import type { IronResponse } from './iron-response.ts'

/** Harmonics weaker than this share of the fundamental in the open field are left out. */
const harmonicShare = 1e-3
const harmonicRange = [9, 25] as const

/**
 * Electrical orders worth keeping: those that outlive the way from magnet to wire, exp(−n π d/τ), odd count.
 * d is the distance from magnet face to the middle of the bundle, τ the pole pitch there.
 */
export function keptHarmonics(machine: Machine, shape: ConductorShape): number {
  const { pitchRadius, poleCount } = machine.rotor
  const τ = (2 * Math.PI * pitchRadius) / poleCount
  const d = Math.max(shape.distance, 0.2e-3)
  const n = Math.ceil((-Math.log(harmonicShare) * τ) / (Math.PI * d))
  return Math.min(Math.max(n, harmonicRange[0]), harmonicRange[1]) | 1
}

/** Error of one distant magnet's share of the linkage: moves the fundamental by some 1e-5. */
const linkageError = 1e-3

/** Gauss points per panel, and the panel they serve, in distances from magnet to wire. */
const greatestOrder = 10
const pointsPerDistance = 0.5

/** Points along the curve as close as the field's own scale asks: about as many per distance to the magnets. */
function curvePoints(curve: Curve, distance: number) {
  return curve.pieces.map((piece) => {
    const points = 2 + (pointsPerDistance * pieceLength(piece)) / Math.max(distance, 1e-3)
    const panels = Math.ceil(points / greatestOrder)
    return curveQuadrature(
      { closed: false, pieces: [piece] },
      { longestStep: (1.0001 * pieceLength(piece)) / panels, order: Math.ceil(points / panels) },
    )
  })
}

/** Quadrature points of all filaments, weights in the steps. */
function quadrature(shape: ConductorShape, copies: number, fineness: number) {
  const parts = shape.filaments.flatMap(({ curve, weight }) =>
    curvePoints(curve, shape.distance / fineness).map(({ points, steps }) => ({
      points,
      steps: steps.map((step) => step * weight),
    })),
  )
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
  readonly sources: readonly Magnet[]
  /** Rotor angle of the first sample, 0 when left out [rad]. */
  readonly from?: number
  readonly span: number
  readonly count: number
  /** Points along the wire against the usual number. */
  readonly fineness?: number
}): Float64Array {
  const { shape, copies, sources, from = 0, span, count, fineness = 1 } = options
  const angle = (k: number) => -from - (span * k) / count
  const { points, steps } = quadrature(shape, copies, fineness)
  const size = points.length
  const turned = new Float64Array(size * count)
  for (let k = 0; k < count; k++) turned.set(turnPointsAboutZ(points, angle(k)), size * k)
  const A = magnetVectorPotential(sources, turned, { relativeError: linkageError })
  // A is seen from the rotor, and so must the steps be
  return Float64Array.from({ length: count }, (_, k) =>
    pathLinkage(A.subarray(size * k, size * (k + 1)), turnPointsAboutZ(steps, angle(k))),
  )
}

/** A pole so many pole pitches beyond the end of a coil meets it as a few points: what is left there is small and smooth. */
const farPitches = 2

/** Share of the usual points along the wire that serves a far pole, on the middle filament. */
const farFineness = 0.3

interface Sampling {
  readonly count: number
  /** Pole pitch [rad]. */
  readonly pitch: number
  /** Points along the wire against the usual number. */
  readonly fineness: number
}

/** ψ at the first `count` of N angles over a turn of one coil: poles near it on all filaments, far ones on the middle. */
function coilSamples(
  shape: ConductorShape,
  sources: readonly Magnet[],
  { count, of, pitch, fineness }: Sampling & { readonly of: number },
): Float64Array {
  const step = (2 * Math.PI) / of
  const reach = azimuthReach(shape) + farPitches * pitch
  const near = Math.min(count, Math.ceil(reach / step))
  const far = Math.max(0, Math.min(count, of - near + 1) - near)
  const part = (from: number, length: number, coarse: boolean) =>
    linkageSamples({
      shape: coarse ? { ...shape, filaments: [middleFilament(shape)] } : shape,
      copies: 1,
      sources,
      from: from * step,
      span: length * step,
      count: length,
      fineness: coarse ? farFineness : fineness,
    })
  const ψ = new Float64Array(count)
  ψ.set(part(0, near, false))
  if (far > 0 && near > 0) {
    // the middle filament encloses somewhat less or more than the mean of all: by the same share wherever the pole is far
    const coarse = part(near - 1, far + 1, true)
    const share = coarse[0] === 0 ? 1 : ψ[near - 1]! / coarse[0]!
    ψ.set(
      coarse.subarray(1).map((value) => share * value),
      near,
    )
  }
  if (near + far < count) ψ.set(part(near + far, count - near - far, false), near + far)
  return ψ
}

const middleFilament = ({ filaments }: ConductorShape): Filament => ({
  ...filaments.reduce((best, one) => (Math.hypot(...one.offset) < Math.hypot(...best.offset) ? one : best)),
  weight: 1,
})

/** Greatest azimuth of the coil off its own middle [rad]. */
function azimuthReach({ filaments }: ConductorShape): number {
  let most = 0
  for (const { curve } of filaments)
    for (const piece of curve.pieces)
      for (const t of [0, 0.5, 1]) {
        const [x, y] = piecePoint(piece, t)
        most = Math.max(most, Math.abs(Math.atan2(y, x)))
      }
  return most
}

/** ψ with one magnet at N angles of a full period, the mirrored half taken over from the computed one. */
function periodSamples(
  shape: ConductorShape,
  sources: readonly Magnet[],
  { count, pitch, fineness }: Sampling,
): Float64Array {
  const span = (2 * Math.PI) / shape.repeats
  const copies = shape.repeats
  const samples = (computed: number) =>
    // a piece of a path by itself is not small and smooth far away
    copies === 1 && shape.filaments.every(({ curve }) => curve.closed)
      ? coilSamples(shape, sources, { count: computed, of: count, pitch, fineness })
      : linkageSamples({ shape, copies, sources, span: (span * computed) / count, count: computed, fineness })
  if (shape.parity === 'none') return samples(count)
  const computed = count / 2 + 1
  const half = samples(computed)
  const sign = shape.parity === 'even' ? 1 : -1
  return Float64Array.from({ length: count }, (_, k) => (k < computed ? half[k]! : sign * half[count - k]!))
}

export interface Linkage {
  /** ψ of one turn, averaged over the bundle [Wb]; its period is 1/`base` of a turn of the rotor. */
  readonly flux: FourierSeries
  /** Periods per turn of the rotor: p where the poles simply alternate, else 1. */
  readonly base: number
}

/** Wire that runs on far past the magnets has their ends in the middle of its pieces: it takes more points. */
function finenessFor({ rotor: { magnet } }: Machine, { filaments, distance }: ConductorShape): number {
  const longest = Math.max(
    ...filaments[0]!.curve.pieces.map((piece) => (piece.shape.kind === 'line' ? pieceLength(piece) : 0)),
  )
  return longest > magnet.length + 2 * distance ? 3 : 1
}

/** Poles that stand and weigh alike in every ring are one source. */
function joinedPoles(poles: readonly Pole[]): readonly Pick<Pole, 'sources' | 'places'>[] {
  const [first, ...others] = poles
  const alike = others.every(({ places }) =>
    places.every(({ angle, factor }, k) => {
      const mate = first!.places[k]!
      return angle === mate.angle && Math.abs(factor - mate.factor) < 1e-12
    }),
  )
  return alike ? [{ places: first!.places, sources: poles.flatMap(({ sources }) => sources) }] : poles
}

/**
 * Linkage by superposition: one pole is computed over the turn, the others follow by their angle, sign and strength, so
 * that a weak, missing or shifted magnet costs nothing more.
 */
export function rotorLinkage(
  machine: Machine,
  field: RotorField,
  shape: ConductorShape,
  orders: number = keptHarmonics(machine, shape),
): Linkage {
  const { poleCount, polePairs, alternating, piecesPerPole } = machine.rotor
  // pieces set end to end lie to one side of where their pole begins
  const seen = piecesPerPole > 1 ? { ...shape, parity: 'none' as const } : shape
  const perPole = joinedPoles(field.poles).map(({ sources, places }) => {
    // the linkage with one magnet repeats as often as the shape does round the shaft
    const filamentsOnly = fourierSeries(
      periodSamples(seen, sources, {
        count: (2 * (orders + 1) * polePairs) / shape.repeats,
        pitch: Math.PI / polePairs,
        fineness: finenessFor(machine, shape),
      }),
      (orders * polePairs) / shape.repeats,
    )
    return { places, own: spreadEvenly(filamentsOnly, shape.repeats * shape.spreadAngle) }
  })
  const [only, ...more] = perPole
  const answered = (flux: FourierSeries, base: number): Linkage => ({
    base,
    flux: field.iron === undefined ? flux : withIron(flux, base, shape.distance, field.iron),
  })
  if (alternating && more.length === 0 && shape.repeats === polePairs)
    // N and S lie half a period apart: every even order cancels
    return answered(oddOrders(only!.own, poleCount * only!.places[0]!.factor), polePairs)
  const sum = seriesSum(
    perPole.flatMap(({ own, places }) => {
      const turn = spread(own, shape.repeats)
      // a magnet ahead by `angle` does now what the first one does when the rotor has turned by as much
      return places.map(({ angle, factor }) => seriesScaled(seriesDelayed(turn, -angle), factor))
    }),
  )
  return alternating ? answered(everyOrder(sum, polePairs), polePairs) : answered(sum, 1)
}

/** Orders weaker than this share of the strongest are left as they are: their gain is not worth asking for. */
const weakShare = 1e-6

function withIron(flux: FourierSeries, base: number, distance: number, iron: IronResponse): FourierSeries {
  const size = Array.from(flux.cos, (_, h) => harmonicAmplitude(flux, h))
  const least = weakShare * Math.max(...size.slice(1))
  const scale = size.map((amplitude, h) =>
    h === 0 || amplitude <= least ? 1 : iron.gain(h * base, distance, 'run').normal,
  )
  return {
    cos: flux.cos.map((value, h) => value * scale[h]!),
    sin: flux.sin.map((value, h) => value * scale[h]!),
  }
}

/** Mean of the series over shifts of ± half of `width`: sin x / x on every order. */
function spreadEvenly(series: FourierSeries, width: number): FourierSeries {
  if (width === 0) return series
  const factor = (h: number) => (h === 0 ? 1 : Math.sin((h * width) / 2) / ((h * width) / 2))
  return {
    cos: series.cos.map((value, h) => value * factor(h)),
    sin: series.sin.map((value, h) => value * factor(h)),
  }
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
