/** The elements that a conductor's path is cut into: their places, their parts, the EMF of each. */
import { type CurvePiece, curveQuadrature, pieceLength, piecePoint } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import type { RotorField } from './air-gap-field.ts'
import type { ConductorShape } from './conductor-layout.ts'
import { cutField } from './cut-field.ts'
import { keptHarmonics } from './flux-linkage.ts'
import { type WirePart, wirePart } from './wire-part.ts'
import type { WireElements } from './wire-reading.ts'

/** Elements that the repeating part of a path is cut into, about; more where the magnets are near. */
const usualElements = 72
const mostElements = 480
/** Gauss points in an element. */
const order = 3
/** Nodes of the field along a level, in distances from magnet face to wire. */
const nodeDistance = 0.4
/** Nearest that a wire is taken to lie to the faces when steps are chosen [m]. */
const leastDistance = 0.5e-3

/** Magnet face to the nearest filament. */
const nearest = ({ distance, filaments }: ConductorShape): number =>
  Math.max(distance - Math.max(...filaments.map(({ offset }) => Math.abs(offset[1]))), leastDistance)

/** Elements of each piece. */
function countsOf(shape: ConductorShape): number[] {
  const lengths = shape.filaments[0]!.curve.pieces.map(pieceLength)
  const whole = lengths.reduce((sum, length) => sum + length, 0)
  const step = Math.max(Math.min(whole / usualElements, 1.2 * nearest(shape)), whole / mostElements)
  return shape.filaments[0]!.curve.pieces.map((piece, k) => {
    const byTurn = piece.shape.kind === 'arc' ? Math.abs(piece.shape.sweep) / (Math.PI / 2) : 1
    return Math.max(Math.ceil(byTurn - 1e-9), Math.ceil(lengths[k]! / step - 1e-9), 1)
  })
}

interface Quadrature {
  readonly points: Float64Array
  /** Weighted by the filament. */
  readonly steps: Float64Array
  /** Element of each point. */
  readonly element: Int32Array
}

function quadratureOf({ filaments }: ConductorShape, counts: readonly number[]): Quadrature {
  const elements = counts.reduce((sum, count) => sum + count, 0)
  const total = elements * order * filaments.length
  const points = new Float64Array(3 * total)
  const steps = new Float64Array(3 * total)
  const element = new Int32Array(total)
  let at = 0
  for (const { curve, weight } of filaments) {
    let first = 0
    curve.pieces.forEach((piece, k) => {
      const count = counts[k]!
      const part = curveQuadrature(
        { closed: false, pieces: [piece] },
        { longestStep: (1.0001 * pieceLength(piece)) / count, order },
      )
      points.set(part.points, 3 * at)
      steps.set(
        part.steps.map((step) => step * weight),
        3 * at,
      )
      for (let i = 0; i < count * order; i++) element[at + i] = first + Math.floor(i / order)
      at += count * order
      first += count
    })
  }
  return { points, steps, element }
}

/** The bundle's middle at t of piece k: the mean over the filaments. */
function middleOf({ filaments }: ConductorShape, k: number, t: number): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0]
  for (const { curve, weight } of filaments) {
    const point = piecePoint(curve.pieces[k]!, t)
    for (let axis = 0; axis < 3; axis++) sum[axis]! += weight * point[axis]!
  }
  return sum
}

type Point = readonly [number, number, number]

/** Angle between a chord and the run direction, 0…π/2. */
function leanOf(drum: boolean, from: Point, to: Point): number {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
  const along = drum ? to[2] - from[2] : Math.hypot(to[0], to[1]) - Math.hypot(from[0], from[1])
  return chord > 0 ? Math.acos(Math.min(1, Math.abs(along) / chord)) : 0
}

/** What geometry says of the elements. */
function placesOf(machine: Machine, shape: ConductorShape, counts: readonly number[]) {
  const { rotor, stator } = machine
  const drum = rotor.arrangement === 'drum'
  const wave = stator.winding.kind === 'serpentine'
  const half = rotor.magnet.length / 2
  const points: number[] = []
  const lean: number[] = []
  const part: WirePart[] = []
  const under: number[] = []
  counts.forEach((count, k) => {
    const piece: CurvePiece = shape.filaments[0]!.curve.pieces[k]!
    const { rise } = piece
    const straight = piece.shape.kind === 'line' && (rise === undefined || rise.from === rise.to)
    const edges = Array.from({ length: count + 1 }, (_, i) => middleOf(shape, k, i / count))
    const pieceLean = leanOf(drum, edges[0]!, edges[count]!)
    const offs = edges.map(([x, y, z]) => (drum ? z : Math.hypot(x, y) - rotor.pitchRadius))
    const beyond = Math.min(...offs) >= half || Math.max(...offs) <= -half
    for (let i = 0; i < count; i++) {
      const own = leanOf(drum, edges[i]!, edges[i + 1]!)
      const [x, y, z] = middleOf(shape, k, (i + 0.5) / count)
      const off = drum ? z : Math.hypot(x, y) - rotor.pitchRadius
      points.push(...edges[i]!)
      lean.push(own)
      part.push(wirePart(wave, { straight, pieceLean, lean: own, beyond }))
      under.push(Math.abs(off) <= half ? 1 : 0)
    }
    if (k === counts.length - 1) points.push(...edges[count]!)
  })
  return {
    points: Float64Array.from(points),
    lean: Float64Array.from(lean),
    part,
    underMagnets: Uint8Array.from(under),
  }
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x)

/** Orders weaker than this share of the strongest are left as they are. */
const weakShare = 1e-6

/** What steel makes of each order of the field through a winding, as the linkage takes it; 1 without steel. */
function ironGains(
  { iron }: RotorField,
  cos: Float64Array,
  sin: Float64Array,
  { width, base, distance }: { readonly width: number; readonly base: number; readonly distance: number },
): Float64Array {
  if (iron === undefined) return new Float64Array(width).fill(1)
  const size = new Float64Array(width)
  for (let at = 0; at < cos.length; at++) size[at % width]! += Math.hypot(cos[at]!, sin[at]!)
  const least = weakShare * size.reduce((most, value) => Math.max(most, value), 0)
  return size.map((value, h) => (h === 0 || value <= least ? 1 : iron.gain(h * base, distance, 'run').normal))
}

/**
 * The EMF of every element of a shape at angle 0, one wire of it. Seen from the rotor the wire moves backwards, with
 * v = −Ω ẑ × r, and raises (v × B)·dl = −Ω (r B_z dr − r B_r dz): only what goes along the radius or along the shaft
 * cuts the field. On a closed path the sum is −dψ/dt. Steel that no flat image stands for changes every order alike along
 * the whole path.
 */
export function wireElements(
  machine: Machine,
  field: RotorField,
  shape: ConductorShape,
  base: number = machine.rotor.polePairs,
): WireElements {
  const counts = countsOf(shape)
  const { points, steps, element } = quadratureOf(shape, counts)
  const elements = counts.reduce((sum, count) => sum + count, 0)
  const rings = new Float64Array((2 * points.length) / 3)
  for (let k = 0; 3 * k < points.length; k++) {
    rings[2 * k] = Math.hypot(points[3 * k]!, points[3 * k + 1]!)
    rings[2 * k + 1] = points[3 * k + 2]!
  }
  const orders = (keptHarmonics(machine, shape) * machine.rotor.polePairs) / base
  const { values } = cutField(machine, field, rings, {
    base,
    orders,
    spacing: nodeDistance * nearest(shape),
  })
  const width = orders + 1
  const cos = new Float64Array(elements * width)
  const sin = new Float64Array(elements * width)
  const length = new Float64Array(elements)
  for (let k = 0; k < element.length; k++) {
    const [x, y] = [points[3 * k]!, points[3 * k + 1]!]
    const [dx, dy, dz] = [steps[3 * k]!, steps[3 * k + 1]!, steps[3 * k + 2]!]
    length[element[k]!]! += Math.hypot(dx, dy, dz)
    const outward = -(x * dx + y * dy)
    const upward = rings[2 * k]! * dz
    const azimuth = base * Math.atan2(y, x)
    const [c1, s1] = [Math.cos(azimuth), Math.sin(azimuth)]
    let [c, s] = [1, 0]
    const place = 4 * width * k
    const target = width * element[k]!
    for (let h = 0; h < width; h++) {
      const a = outward * values[place + 2 * width + h]! + upward * values[place + h]!
      const b = outward * values[place + 3 * width + h]! + upward * values[place + width + h]!
      // the field that stood at azimuth φ − θ: cos(h(φ − θ)), sin(h(φ − θ)) written over θ
      cos[target + h]! += a * c + b * s
      sin[target + h]! += a * s - b * c
      const next = c * c1 - s * s1
      s = s * c1 + c * s1
      c = next
    }
  }
  const gains = ironGains(field, cos, sin, { width, base, distance: shape.distance })
  // a wave's bundle is the wave turned by its width, see the conductor's shape
  for (let h = 0; h < width; h++) {
    const spread = gains[h]! * sinc((h * base * shape.spreadAngle) / 2)
    for (let k = 0; k < elements; k++) {
      cos[k * width + h]! *= spread
      sin[k * width + h]! *= spread
    }
  }
  const path = new Float64Array(elements + 1)
  for (let k = 0; k < elements; k++) path[k + 1] = path[k]! + length[k]!
  return {
    ...placesOf(machine, shape, counts),
    path,
    cos,
    sin,
    orders,
    turns: shape.turns,
    repeats: shape.repeats,
  }
}
