/** Flux linkage in the plainest way: the closed form of every source at every point of the wire at every angle. */
import type { RotorField } from '../src/analysis/air-gap-field.ts'
import type { ConductorShape } from '../src/analysis/conductor-layout.ts'
import type { Linkage } from '../src/analysis/flux-linkage.ts'
import { curvePolyline } from '../src/geometry/curve.ts'
import type { Machine } from '../src/machine/machine.ts'
import { fourierSeries, harmonicAmplitude } from '../src/numerics/fourier.ts'
import type { BlockMagnet } from '../src/physics/magnetics/block-magnet.ts'

const angles = 12
/** Points along one repeat of a filament, at least; straight chords, middle rule. */
const cuts = 90

/**
 * Vector potential of a block polarised along its local z, in its own frame: A = J/(4π) ∮ of ẑ × n over the sides,
 * each side's potential the logarithms and arctangents of its four corners.
 */
function localPotential(
  x: number,
  y: number,
  z: number,
  [a, b, c]: readonly number[],
  J: number,
): [number, number] {
  const sheet = (u0: number, u1: number, w0: number, w1: number, v: number): number => {
    // ∫∫ du dw / √(u² + w² + v²) over a rectangle
    const F = (u: number, w: number) => {
      const r = Math.sqrt(u * u + w * w + v * v)
      return (
        u * Math.log(w + r + 1e-300) +
        w * Math.log(u + r + 1e-300) -
        (v === 0 ? 0 : v * Math.atan((u * w) / (v * r)))
      )
    }
    return F(u1, w1) - F(u0, w1) - F(u1, w0) + F(u0, w0)
  }
  const k = J / (4 * Math.PI)
  const [x0, x1] = [-a! / 2 - x, a! / 2 - x]
  const [y0, y1] = [-b! / 2 - y, b! / 2 - y]
  const [z0, z1] = [-c! / 2 - z, c! / 2 - z]
  // surface current J × n: +y on the face x = a/2, −x on the face y = b/2
  return [
    k * (-sheet(x0, x1, z0, z1, y1) + sheet(x0, x1, z0, z1, y0)),
    k * (sheet(y0, y1, z0, z1, x1) - sheet(y0, y1, z0, z1, x0)),
  ]
}

/** The plain sum knows blocks only. */
const blocksOf = ({ sources }: RotorField): readonly BlockMagnet[] =>
  sources.filter((source): source is BlockMagnet => 'size' in source)

function potential(
  sources: readonly BlockMagnet[],
  x: number,
  y: number,
  z: number,
): [number, number, number] {
  let ax = 0
  let ay = 0
  let az = 0
  for (const { centre, frame, size, polarization } of sources) {
    const d = [x - centre[0], y - centre[1], z - centre[2]]
    const local = frame.map((axis) => axis[0] * d[0]! + axis[1] * d[1]! + axis[2] * d[2]!)
    const [au, av] = localPotential(local[0]!, local[1]!, local[2]!, size, polarization)
    ax += au * frame[0][0] + av * frame[1][0]
    ay += au * frame[0][1] + av * frame[1][1]
    az += au * frame[0][2] + av * frame[1][2]
  }
  return [ax, ay, az]
}

/** Every filament of the whole wire as chords, its weight with it. */
function chords(shape: ConductorShape) {
  const step = shape.filaments.map(({ curve, weight }) => {
    const line = curvePolyline(curve, { sagitta: (0.0004 * shape.turnLength) / shape.repeats })
    const pieces = line.length / 3 - 1
    return { line, pieces, weight }
  })
  const copies = Array.from({ length: shape.repeats }, (_, k) => (2 * Math.PI * k) / shape.repeats)
  const list: { middle: readonly number[]; along: readonly number[]; weight: number }[] = []
  for (const turn of copies) {
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    for (const { line, pieces, weight } of step)
      for (let k = 0; k < pieces; k++) {
        const from = [line[3 * k]!, line[3 * k + 1]!, line[3 * k + 2]!]
        const way = [line[3 * k + 3]! - from[0]!, line[3 * k + 4]! - from[1]!, line[3 * k + 5]! - from[2]!]
        const parts = Math.ceil(
          (Math.hypot(way[0]!, way[1]!, way[2]!) * cuts * shape.repeats) / shape.turnLength,
        )
        for (let j = 0; j < parts; j++) {
          const at = way.map((w, i) => from[i]! + (w * (j + 0.5)) / parts)
          list.push({
            middle: [c * at[0]! - s * at[1]!, s * at[0]! + c * at[1]!, at[2]!],
            along: [
              (c * way[0]! - s * way[1]!) / parts,
              (s * way[0]! + c * way[1]!) / parts,
              way[2]! / parts,
            ],
            weight,
          })
        }
      }
  }
  return list
}

export interface PlainLinkage {
  readonly time_ms: number
  readonly sources: number
  readonly points: number
  readonly angles: number
  /** Relative difference of the fundamentals. */
  readonly differenceFrom: (linkage: Linkage) => number
}

/** One period of a pole pair (or the whole turn where poles do not alternate), timed once: it is slow. */
export function plainLinkage(machine: Machine, field: RotorField, shape: ConductorShape): PlainLinkage {
  const list = chords(shape)
  const { alternating, polePairs } = machine.rotor
  const span = (2 * Math.PI) / (alternating ? polePairs : 1)
  const count = alternating ? angles : angles * polePairs
  const flux = new Float64Array(count)
  const start = performance.now()
  for (let k = 0; k < count; k++) {
    // the wire is turned against the magnets
    const [c, s] = [Math.cos((-span * k) / count), Math.sin((-span * k) / count)]
    let sum = 0
    for (const { middle, along, weight } of list) {
      const x = c * middle[0]! - s * middle[1]!
      const y = s * middle[0]! + c * middle[1]!
      const A = potential(blocksOf(field), x, y, middle[2]!)
      sum +=
        weight *
        (A[0] * (c * along[0]! - s * along[1]!) + A[1] * (s * along[0]! + c * along[1]!) + A[2] * along[2]!)
    }
    flux[k] = sum
  }
  const time_ms = performance.now() - start
  const order = alternating ? 1 : polePairs
  // a wave's bundle is spread evenly over an angle: its fundamental falls by sin x / x
  const x = (polePairs * shape.spreadAngle) / 2
  const spread = x === 0 ? 1 : Math.sin(x) / x
  const fundamental = spread * harmonicAmplitude(fourierSeries(flux, order), order)
  return {
    time_ms,
    sources: field.sources.length,
    points: list.length,
    angles: count,
    differenceFrom: ({ flux: ours, base }) =>
      Math.abs(harmonicAmplitude(ours, polePairs / base) / fundamental - 1),
  }
}

/** Magnets × points of the path: what the time should follow. */
export const linkageSize = ({ magnets }: RotorField, shape: ConductorShape): number =>
  magnets.length * chords(shape).length
