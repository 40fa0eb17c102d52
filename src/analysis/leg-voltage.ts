/** Volts of a coil's legs alone, and of ideal ones as long as the magnets, from the field on the winding's own levels. */
import { curvePolyline } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import { type FourierSeries, fourierSeries } from '../numerics/fourier.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { fieldAt, levelAbove, type RotorField } from './air-gap-field.ts'
import type { ConductorShape } from './conductor-layout.ts'

/** Orders of the electrical fundamental that are told. */
export const toldHarmonics = [1, 3, 5, 7] as const

/** Amplitude and phase as a − jb of a cos + b sin, turned by `lag`. */
export interface Phasor {
  readonly re: number
  readonly im: number
}
export const zero: Phasor = { re: 0, im: 0 }
export const plus = (p: Phasor, q: Phasor, factor = 1): Phasor => ({
  re: p.re + factor * q.re,
  im: p.im + factor * q.im,
})
export const delayed = ({ re, im }: Phasor, lag: number): Phasor => ({
  re: re * Math.cos(lag) + im * Math.sin(lag),
  im: im * Math.cos(lag) - re * Math.sin(lag),
})
export const size = ({ re, im }: Phasor): number => Math.hypot(re, im)
export const phasor = ({ cos, sin }: FourierSeries, order: number): Phasor => ({
  re: cos[order] ?? 0,
  im: -(sin[order] ?? 0),
})

/** Enough for the seventh harmonic: the thirteenth is the first to be mistaken for it. */
const samplesPerPair = 20

export interface Seen {
  readonly machine: Machine
  readonly field: RotorField
  /** Periods per turn of the shaft, and order of the working harmonic in them. */
  readonly base: number
  readonly order: number
}

/** Field through the surface (radial on a drum, axial on a disc) at points of radius and height, over the rotor's turn. */
function normalField(
  { machine, field, base, order }: Seen,
  places: readonly (readonly [r: number, z: number])[],
) {
  const { arrangement, alternating } = machine.rotor
  const samples = samplesPerPair * order
  // poles that alternate show the second half of a period as the first reversed
  const computed = alternating ? samples / 2 : samples
  const angles = Array.from({ length: computed }, (_, k) => (2 * Math.PI * k) / (base * samples))
  const points = new Float64Array(3 * computed * places.length)
  places.forEach(([r, z], place) => {
    angles.forEach((φ, k) => {
      points.set([r * Math.cos(φ), r * Math.sin(φ), z], 3 * (computed * place + k))
    })
  })
  const B = fieldAt(field, points)
  const drum = arrangement === 'drum'
  return places.map((_, place) => {
    const normal = new Float64Array(samples)
    angles.forEach((φ, k) => {
      const at = 3 * (computed * place + k)
      normal[k] = drum ? B[at]! * Math.cos(φ) + B[at + 1]! * Math.sin(φ) : B[at + 2]!
      if (alternating) normal[k + computed] = -normal[k]!
    })
    return fourierSeries(normal, 7 * order)
  })
}

/** The field between the ends of the magnets on one level of the winding, at Gauss points along the shaft or radius. */
export interface LevelField {
  /** Radius (drum) or height (disc). */
  readonly level: number
  /** From the middle of the magnets, along the shaft or the radius. */
  readonly along: Float64Array
  /** EMF over speed of a run by Σ lever·B: the point's radius times its share of the length. */
  readonly lever: Float64Array
  readonly series: readonly FourierSeries[]
}

const pointsAlong = 16

export function levelField(seen: Seen, distance: number): LevelField {
  const { rotor } = seen.machine
  const level = levelAbove(seen.machine, distance)
  const half = rotor.magnet.length / 2
  const { nodes, weights } = gaussLegendre(pointsAlong)
  const drum = rotor.arrangement === 'drum'
  const radius = nodes.map((x) => (drum ? level : rotor.pitchRadius + half * x))
  return {
    level,
    along: nodes.map((x) => half * x),
    lever: weights.map((weight, k) => half * weight * radius[k]!),
    series: normalField(
      seen,
      Array.from(nodes, (x, k): readonly [number, number] => [radius[k]!, drum ? half * x : level]),
    ),
  }
}

/** Half the EMF over speed of an ideal full-pitch turn on that level [V·s/rad]. */
export const idealRun = ({ lever, series }: LevelField, order: number): number =>
  size(series.reduce((sum, own, k) => plus(sum, phasor(own, order), lever[k]!), zero))

/** A place where a path passes a point along the shaft or radius: azimuth, direction, and the field it meets there. */
interface Crossing {
  readonly azimuth: number
  readonly weight: number
  readonly field: LevelField
  readonly point: number
}

/** Where the paths of the filaments cross the circles of the Gauss points under the magnets. */
function crossings({ machine }: Seen, shape: ConductorShape, fields: readonly LevelField[]): Crossing[] {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const { along } = fields[0]!
  return shape.filaments.flatMap(({ curve, weight }) => {
    const corners = curvePolyline(curve, { sagitta: 2e-4 * rotor.pitchRadius })
    const found: Crossing[] = []
    const place = (i: number) => {
      const r = Math.hypot(corners[i]!, corners[i + 1]!)
      return drum
        ? { at: corners[i + 2]!, level: r, azimuth: Math.atan2(corners[i + 1]!, corners[i]!) }
        : {
            at: r - rotor.pitchRadius,
            level: corners[i + 2]!,
            azimuth: Math.atan2(corners[i + 1]!, corners[i]!),
          }
    }
    for (let i = 3; i < corners.length; i += 3) {
      const [from, to] = [place(i - 3), place(i)]
      const turn = to.azimuth - from.azimuth
      const onward = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))
      along.forEach((s, point) => {
        if (from.at < s === to.at < s) return
        const t = (s - from.at) / (to.at - from.at)
        const level = from.level + t * (to.level - from.level)
        const field = fields.reduce((a, b) => (Math.abs(b.level - level) < Math.abs(a.level - level) ? b : a))
        found.push({
          azimuth: from.azimuth + t * onward,
          weight: to.at > from.at ? weight : -weight,
          field,
          point,
        })
      })
    }
    return found
  })
}

/**
 * EMF over speed of one turn by those parts alone that lie between the ends of the magnets, (v × B)·dl: Ω r B_z dr on
 * a disc, Ω r B_r dz on a drum, but for a sign that all parts share.
 */
export function legsVoltage(
  seen: Seen,
  shape: ConductorShape,
  fields: readonly LevelField[],
): (order: number) => Phasor {
  const found = crossings(seen, shape, fields)
  return (order) =>
    found.reduce((total, { azimuth, weight, field, point }) => {
      const { cos, sin } = field.series[point]!
      // β(φ − θ) over θ: the conjugate of β's own phasor, turned by φ
      const own: Phasor = { re: cos[order] ?? 0, im: sin[order] ?? 0 }
      return plus(total, delayed(own, order * seen.base * azimuth), weight * field.lever[point]!)
    }, zero)
}
