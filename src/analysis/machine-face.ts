/** The machine seen along its shaft: outlines of the magnets with their poles, steel, and the coils over them. */

import type { Magnet } from '../physics/magnetics/magnet.ts'
import { turnedMagnet } from '../physics/magnetics/magnet-pose.ts'
import type { Chain } from './compute.ts'
import { coilPolyline } from './conductor-layout.ts'
import { drawnMagnets } from './drawn-magnet.ts'
import { type LegCut, legCuts } from './leg-cut.ts'

export interface FaceMagnet {
  /** Number of its place in the ring, from 1. */
  readonly place: number
  /** x y of each corner [m]. */
  readonly outline: readonly number[]
  readonly middle: readonly [number, number]
  /** Pole towards the winding; undefined where it points along the circumference. */
  readonly pole: 'N' | 'S' | undefined
}

export interface MachineFace {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  readonly windingSide: 'outside' | 'inside'
  readonly magnets: readonly FaceMagnet[]
  /** Radii of rings and plates of steel [m]. */
  readonly steel: readonly { readonly inner: number; readonly outer: number }[]
  /** Of a disc: middle lines as x y x y … [m]. */
  readonly coils: readonly {
    readonly number: number
    readonly phase: number
    readonly sense: 1 | -1
    readonly points: Float64Array
    readonly width: number
  }[]
  /** Of a drum: the sides, cut in the middle of the shaft's length. */
  readonly sides: readonly LegCut[]
}

const roundCorners = 24

/** Corners of a body as x y x y …, seen along the shaft. */
function seenOutline(magnet: Magnet): number[] {
  const flat: number[] =
    'size' in magnet
      ? [-1, -1, 1, -1, 1, 1, -1, 1].map((sign, k) => (sign * magnet.size[k % 2]!) / 2)
      : 'outline' in magnet
        ? [...magnet.outline]
        : Array.from({ length: 2 * roundCorners }, (_, k) => {
            const angle = (2 * Math.PI * Math.floor(k / 2)) / roundCorners
            return magnet.radius * (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle))
          })
  const height = 'size' in magnet ? magnet.size[2] : magnet.height
  const corners: [number, number][] = []
  for (let k = 0; k < flat.length; k += 2)
    for (const z of [-height / 2, height / 2]) {
      const [x, y, up] = magnet.frame
      const at = (axis: 0 | 1) =>
        magnet.centre[axis] + flat[k]! * x[axis] + flat[k + 1]! * y[axis] + z * up[axis]
      corners.push([at(0), at(1)])
    }
  return hull(corners).flat()
}

/** Corners of the least convex outline, counter-clockwise: walks the lower, then the upper edge. */
function hull(corners: readonly (readonly [number, number])[]): [number, number][] {
  const sorted = [...corners].sort((a, b) => a[0] - b[0] || a[1] - b[1]) as [number, number][]
  const left = (a: [number, number], b: [number, number], c: [number, number]) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  const edge = (list: readonly [number, number][]) => {
    const kept: [number, number][] = []
    for (const corner of list) {
      while (kept.length > 1 && left(kept[kept.length - 2]!, kept[kept.length - 1]!, corner) <= 1e-14)
        kept.pop()
      kept.push(corner)
    }
    return kept.slice(0, -1)
  }
  return [...edge(sorted), ...edge([...sorted].reverse())]
}

/** Direction of the north pole in space; blocks and cylinders are magnetised along their own z. */
function northOf(magnet: Magnet): readonly number[] {
  const own = 'outline' in magnet ? magnet.direction : [0, 0, 1]
  const { frame } = magnet
  return [0, 1, 2].map((axis) => frame.reduce((sum, row, k) => sum + own[k]! * row[axis]!, 0))
}

/** Below this cosine to the way towards the winding a magnet has no letter there. */
const leastCosine = 0.5

function faceMagnets({ machine, field }: Pick<Chain, 'machine' | 'field'>): FaceMagnet[] {
  const { arrangement, windingSide } = machine.rotor
  const { magnets, places } = field.poles[0]!
  const drawn = drawnMagnets(magnets)
  const lettered = Math.floor(drawn.length / 2)
  return places.flatMap(({ angle, factor }, place) =>
    factor === 0
      ? []
      : drawn.map((one, k): FaceMagnet => {
          const magnet = turnedMagnet(one, angle)
          const outline = seenOutline(magnet)
          const xs = outline.filter((_, i) => i % 2 === 0)
          const ys = outline.filter((_, i) => i % 2 === 1)
          const middle = [xs, ys].map((list) => list.reduce((sum, x) => sum + x, 0) / list.length)
          const north = northOf(magnet)
          const size = Math.hypot(middle[0]!, middle[1]!) || 1
          const towards =
            arrangement === 'drum'
              ? ((north[0]! * middle[0]! + north[1]! * middle[1]!) / size) *
                (windingSide === 'outside' ? 1 : -1)
              : north[2]!
          const cosine = towards * Math.sign(factor * magnet.polarization)
          const split = 'outline' in magnet && drawn.length > 1 && machine.rotor.piecesPerPole === 1
          return {
            place: place + 1,
            outline,
            middle: [middle[0]!, middle[1]!],
            pole:
              Math.abs(cosine) < leastCosine || (split && k !== lettered)
                ? undefined
                : cosine > 0
                  ? 'N'
                  : 'S',
          }
        }),
  )
}

function steelRings({ machine: { rotor } }: Pick<Chain, 'machine'>): MachineFace['steel'] {
  const { backIron, sleeve, magnet, pitchRadius, windingSide, arrangement } = rotor
  const ring = (a: number, b: number) => ({ inner: Math.max(0, Math.min(a, b)), outer: Math.max(a, b) })
  if (arrangement !== 'drum')
    return backIron === undefined
      ? []
      : [
          ring(
            backIron.innerRadius ?? pitchRadius - 0.6 * magnet.length,
            backIron.outerRadius ?? pitchRadius + 0.6 * magnet.length,
          ),
        ]
  const towards = windingSide === 'outside' ? 1 : -1
  const face = (distance: number) => pitchRadius + towards * (magnet.thickness / 2 + distance)
  return [
    ...(backIron === undefined
      ? []
      : [ring(face(-magnet.thickness), face(-magnet.thickness - backIron.thickness))]),
    ...(sleeve === undefined ? [] : [ring(face(sleeve.distance), face(sleeve.distance + sleeve.thickness))]),
  ]
}

/** A disc is seen from the winding, the upper disc of two taken away; a drum along its shaft, azimuth counter-clockwise. */
export function machineFace({
  machine,
  field,
  layout,
}: Pick<Chain, 'machine' | 'field' | 'layout'>): MachineFace {
  const { arrangement, windingSide, pitchRadius } = machine.rotor
  const drum = arrangement === 'drum'
  return {
    arrangement,
    windingSide,
    magnets: faceMagnets({ machine, field }),
    steel: steelRings({ machine }),
    coils: drum
      ? []
      : layout.coils.map((coil) => ({
          number: coil.number,
          phase: coil.phase,
          sense: coil.sense,
          points: coilPolyline(layout, coil, pitchRadius / 250).filter((_, k) => k % 3 !== 2),
          width: layout.shapes[coil.shape]!.bundle.width,
        })),
    sides: drum ? legCuts(machine, layout) : [],
  }
}
