/** What bears on the magnet that stands for all, per unit of magnetisation and of current: it outlasts many an edit. */
import { mirrorPartners } from '../geometry/mirror-partner.ts'
import type { Machine } from '../machine/machine.ts'
import { type Magnet, magnetAxis, magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { magnetVolumePoints } from '../physics/magnetics/magnet-volume.ts'
import type { RotorField } from './air-gap-field.ts'
import { armatureFields, tellingAngles } from './armature-field.ts'
import type { ConductorLayout } from './conductor-layout.ts'

/** The magnets' own field at points of one of them, μ0 H/J along its axis, all at their common J. */
export interface OwnLoad {
  readonly magnet: Magnet
  /** x y z [m], those of its volume first. */
  readonly points: Float64Array
  /** Share of the volume that each stands for, 0 for those that only watch. */
  readonly weights: Float64Array
  readonly share: Float64Array
  /** Where the winding's field is known, and the share there. */
  readonly coarsePoints: Float64Array
  readonly coarseShare: Float64Array
}

/** The winding's field at the coarse points: H along the axis per ampere of each phase, angle by angle [1/m]. */
export interface WindingLoad {
  /** Of the rotor [rad]. */
  readonly angles: readonly number[]
  readonly fields: readonly Float64Array[]
}

/** Each computed when it is first asked for, and kept. */
export interface MagnetLoad {
  /** Undefined where no magnet is left. */
  readonly own: () => OwnLoad | undefined
  readonly winding: () => WindingLoad | undefined
}

/**
 * Outermost points, in half extents from the middle: across the magnetisation and along it. H along the magnetisation
 * is bounded on faces, edges and corners (only the component across an edge grows, as a logarithm). On the pole faces
 * its limit from inside is what counts; towards their rims it still rises by a few per cent of its value in a volume
 * too small to tell, so that the points stay a twentieth away from the sides.
 */
const outermost = { across: 0.95, along: 0.998 } as const

const gridPlaces = [-outermost.across, -0.5, 0, 0.5, outermost.across] as const

type Local = readonly [x: number, y: number, z: number]

/** Half extents of a magnet along its own axes, from its centre [m]. */
function halfExtents(magnet: Magnet): Local {
  if ('size' in magnet) return [magnet.size[0] / 2, magnet.size[1] / 2, magnet.size[2] / 2]
  if ('radius' in magnet) return [magnet.radius, magnet.radius, magnet.height / 2]
  let [x, y] = [0, 0]
  magnet.outline.forEach((value, i) => {
    if (i % 2 === 0) x = Math.max(x, Math.abs(value))
    else y = Math.max(y, Math.abs(value))
  })
  return [x, y, magnet.height / 2]
}

/** Where the magnet is watched without standing for a volume, in its own axes: close under its pole faces. */
function watchedPlaces(magnet: Magnet): Local[] {
  const [a, b, c] = halfExtents(magnet)
  if ('outline' in magnet) {
    // the poles may lie on the side walls: corners and middles of the outline, drawn a little towards the middle
    const corners = Array.from({ length: magnet.outline.length / 2 }, (_, k) => [
      magnet.outline[2 * k]!,
      magnet.outline[2 * k + 1]!,
    ])
    const middle = [0, 1].map((axis) => corners.reduce((sum, at) => sum + at[axis]!, 0) / corners.length)
    const rim = corners.flatMap((at, k) => {
      const next = corners[(k + 1) % corners.length]!
      return [at, [(at[0]! + next[0]!) / 2, (at[1]! + next[1]!) / 2]]
    })
    const drawnIn = rim.map((at) => middle.map((m, axis) => m + outermost.across * (at[axis]! - m)))
    return [-outermost.along, 0, outermost.along].flatMap((z) =>
      [middle, ...drawnIn].map(([x, y]): Local => [x!, y!, z * c]),
    )
  }
  const grid = gridPlaces.flatMap((x) => gridPlaces.map((y) => [x, y] as const))
  const face =
    'size' in magnet
      ? grid
      : // the square's rings carried to the circle's
        grid.map(([x, y]) => {
          const ring = Math.max(Math.abs(x), Math.abs(y)) / Math.max(Math.hypot(x, y), 1e-9)
          return [x * ring, y * ring] as const
        })
  return [-outermost.along, outermost.along].flatMap((z) =>
    face.map(([x, y]): Local => [x * a, y * b, z * c]),
  )
}

const inMachine = ({ centre, frame }: Magnet, [x, y, z]: Local): number[] =>
  centre.map((at, axis) => at + x * frame[0][axis]! + y * frame[1][axis]! + z * frame[2][axis]!)

/** Three places across and along, two through the magnet's extents: what carries the winding's smoother field. */
const steps = [-1, 0, 1] as const
const coarsePlaces: readonly Local[] = [-1, 1].flatMap((z) =>
  steps.flatMap((x) => steps.map((y): Local => [x, y, z])),
)
export const coarseCount = coarsePlaces.length

const quadraticWeights = (t: number): readonly number[] => [(t * (t - 1)) / 2, 1 - t * t, (t * (t + 1)) / 2]

/** Values at the coarse places carried to points of the magnet, quadratic across and linear through. */
export function interpolated(values: Float64Array, magnet: Magnet, points: Float64Array): Float64Array {
  const extents = halfExtents(magnet)
  return Float64Array.from({ length: points.length / 3 }, (_, p) => {
    const [x, y, z] = magnet.frame.map((row, edge) => {
      const along = row.reduce((sum, u, axis) => sum + u * (points[3 * p + axis]! - magnet.centre[axis]!), 0)
      return along / extents[edge]!
    })
    const wx = quadraticWeights(x!)
    const wy = quadraticWeights(y!)
    let sum = 0
    for (let at = 0; at < coarseCount; at++)
      sum +=
        ((at < coarseCount / 2 ? 1 - z! : 1 + z!) / 2) *
        wx[Math.floor(at / 3) % 3]! *
        wy[at % 3]! *
        values[at]!
    return sum
  })
}

/** Gauss points along each edge of a magnet. */
const volumeOrder = 4

/** Error of a distant magnet's share; poles that alternate make it cancel further. */
const sourceError = 1e-3

/** μ0 H/J along a magnet's axis at points in it. */
function ownShares(field: RotorField, magnet: Magnet, points: Float64Array): Float64Array {
  const B = magnetFluxDensity(field.sources, points, { relativeError: sourceError })
  const [x, y, z] = magnetAxis(magnet)
  return Float64Array.from(
    { length: points.length / 3 },
    (_, i) => (B[3 * i]! * x + B[3 * i + 1]! * y + B[3 * i + 2]! * z) / magnet.polarization - 1,
  )
}

/** Angle about the shaft of a magnet's middle. */
const placeOf = ({ centre }: Magnet): number => Math.atan2(centre[1], centre[0])

/** The same where one half of the points mirrors the other in a sound rotor: half of them are computed. */
function mirroredShares(machine: Machine, field: RotorField, magnet: Magnet, points: Float64Array) {
  const { rotor } = machine
  const partner =
    rotor.alternating && rotor.piecesPerPole === 1 ? mirrorPartners(points, placeOf(magnet)) : undefined
  if (partner === undefined) return ownShares(field, magnet, points)
  const first = Array.from(partner.keys()).filter((i) => i <= partner[i]!)
  const half = ownShares(
    field,
    magnet,
    Float64Array.from(
      { length: 3 * first.length },
      (_, k) => points[3 * first[Math.floor(k / 3)]! + (k % 3)]!,
    ),
  )
  const shares = new Float64Array(points.length / 3)
  first.forEach((i, k) => {
    shares[i] = half[k]!
    shares[partner[i]!] = half[k]!
  })
  return shares
}

/**
 * The magnet that stands for all. Poles that alternate bear alike, those on the disc nearer to the winding the most;
 * where they do not, or a pole is made of pieces, the one whose middle bears most.
 */
function hardestWorking({ rotor }: Machine, field: RotorField, distance: number): Magnet | undefined {
  const magnets: readonly Magnet[] = field.magnets.filter(({ polarization }) => polarization !== 0)
  const discs = rotor.arrangement === 'two-discs' ? 2 : 1
  if (rotor.alternating && magnets.length === discs * rotor.poleCount)
    return magnets[discs === 2 && distance > rotor.faceDistance! / 2 ? rotor.poleCount : 0]
  const shares = magnets.map((magnet) => ownShares(field, magnet, Float64Array.from(magnet.centre))[0]!)
  return magnets[shares.indexOf(Math.min(...shares))]
}

/** By magnet, which any change of the rotor replaces. */
const kept = new WeakMap<Magnet, OwnLoad>()

function ownLoad(machine: Machine, field: RotorField, layout: ConductorLayout): OwnLoad | undefined {
  const magnet = hardestWorking(machine, field, layout.shapes[0]!.distance)
  if (magnet === undefined) return undefined
  const load = kept.get(magnet) ?? loadOf(machine, field, magnet)
  kept.set(magnet, load)
  return load
}

function loadOf(machine: Machine, field: RotorField, magnet: Magnet): OwnLoad {
  const volume = magnetVolumePoints(magnet, volumeOrder)
  const watched = watchedPlaces(magnet).flatMap((place) => inMachine(magnet, place))
  const [a, b, c] = halfExtents(magnet)
  const coarse = coarsePlaces.flatMap(([x, y, z]) => inMachine(magnet, [x * a, y * b, z * c]))
  const all = Float64Array.of(...volume.points, ...watched, ...coarse)
  const shares = mirroredShares(machine, field, magnet, all)
  const count = (all.length - coarse.length) / 3
  return {
    magnet,
    points: all.slice(0, 3 * count),
    weights: Float64Array.of(...volume.weights, ...new Float64Array(watched.length / 3)),
    share: shares.slice(0, count),
    coarsePoints: all.slice(3 * count),
    coarseShare: shares.slice(count),
  }
}

function windingLoad(machine: Machine, layout: ConductorLayout, own: OwnLoad): WindingLoad {
  const angles = tellingAngles(machine, layout)
  const fields = armatureFields(machine, layout, {
    points: own.coarsePoints,
    direction: magnetAxis(own.magnet),
    angles,
  })
  return { angles, fields }
}

function once<Value>(make: () => Value): () => Value {
  let known: { readonly value: Value } | undefined
  return () => {
    known ??= { value: make() }
    return known.value
  }
}

export function magnetLoad(machine: Machine, field: RotorField, layout: ConductorLayout): MagnetLoad {
  const own = once(() => ownLoad(machine, field, layout))
  return {
    own,
    winding: once(() => {
      const load = own()
      return load === undefined ? undefined : windingLoad(machine, layout, load)
    }),
  }
}
