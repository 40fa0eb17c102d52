/** A prism in units of its own extent, about the centroid of its outline. */
import { type Frame3, scale, type Vector3 } from '../../numerics/vector.ts'
import { refuse, requireFinite, requirePositive } from '../../refusal/require.ts'
import { isPosed, requirePosed } from './magnet-argument.ts'

/** A straight prism over a polygon, uniformly polarised in any direction. */
export interface PrismMagnet {
  /** Where the outline's origin lies, halfway up the prism. */
  readonly centre: Vector3
  /** Rows: local x, y and z unit vectors in the machine frame. */
  readonly frame: Frame3
  /** Corners in local x and y, flat x y x y …, counter-clockwise, without crossings [m]. */
  readonly outline: Float64Array
  /** Full height along local z [m]. */
  readonly height: number
  /** Direction of J, a unit vector in local axes. */
  readonly direction: Vector3
  /** J along the direction, sign allowed [T]. */
  readonly polarization: number
}

/** Area and centroid of a polygon. */
export interface OutlineMoments {
  readonly area: number
  readonly centroid: readonly [number, number]
}

/** @internal Area and centroid of a polygon by sums over its edges, about its first corner. */
export function outlineMoments(outline: Float64Array): OutlineMoments {
  const [x0, y0] = [outline[0]!, outline[1]!]
  let twice = 0
  let mx = 0
  let my = 0
  const n = outline.length / 2
  for (let i = 1; i + 1 < n; i++) {
    const ax = outline[2 * i]! - x0
    const ay = outline[2 * i + 1]! - y0
    const bx = outline[2 * i + 2]! - x0
    const by = outline[2 * i + 3]! - y0
    const cross = ax * by - ay * bx
    twice += cross
    mx += cross * (ax + bx)
    my += cross * (ay + by)
  }
  return { area: twice / 2, centroid: [x0 + mx / (3 * twice), y0 + my / (3 * twice)] }
}

/** Twice the signed area of a triangle. */
const turn = (o: Float64Array, i: number, j: number, k: number) =>
  (o[2 * j]! - o[2 * i]!) * (o[2 * k + 1]! - o[2 * i + 1]!) -
  (o[2 * j + 1]! - o[2 * i + 1]!) * (o[2 * k]! - o[2 * i]!)

/** The first edge that another one crosses, or −1. */
function crossedEdge(o: Float64Array): number {
  const n = o.length / 2
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue
      const i1 = i + 1
      const j1 = (j + 1) % n
      if (turn(o, i, i1, j) * turn(o, i, i1, j1) < 0 && turn(o, j, j1, i) * turn(o, j, j1, i1) < 0) return i
    }
  return -1
}

/** @internal Refuses a prism without volume or pose, or whose outline runs clockwise, crosses itself or stands still. */
export function requirePrism(magnet: PrismMagnet, index: number): void {
  const { outline, height, direction } = magnet
  const name = `magnets[${index}]`
  const n = outline.length / 2
  if (!(Number.isInteger(n) && n >= 3))
    refuse({
      name: `${name}.outline`,
      condition: 'x and y of three corners or more',
      value: outline.length,
      code: 'wrong-length',
    })
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n
    const edge = Math.hypot(outline[2 * j]! - outline[2 * i]!, outline[2 * j + 1]! - outline[2 * i + 1]!)
    if (edge > 0 && Number.isFinite(edge)) continue
    requireFinite(`${name}.outline[${2 * i}]`, outline[2 * i]!, 'm')
    requireFinite(`${name}.outline[${2 * i + 1}]`, outline[2 * i + 1]!, 'm')
    requirePositive(`${name}.outline edge ${i}`, edge, 'm')
  }
  const { area } = outlineMoments(outline)
  if (!(area > 0))
    refuse({
      name: `${name}.outline`,
      condition: 'counter-clockwise round an area above zero',
      value: area,
      unit: 'm²',
      code: 'conflict',
    })
  const crossed = crossedEdge(outline)
  if (crossed >= 0)
    refuse({
      name: `${name}.outline`,
      condition: 'free of crossings; the edge first crossed starts at the corner given',
      value: crossed,
      code: 'conflict',
    })
  if (!(height > 0 && Number.isFinite(height))) requirePositive(`${name}.height`, height, 'm')
  if (!(Math.abs(Math.hypot(...direction) - 1) <= 1e-9))
    refuse({ name: `${name}.direction`, condition: 'a unit vector', value: direction, code: 'conflict' })
  if (!isPosed(magnet)) requirePosed(name, magnet)
}

/** @internal A prism in units of its largest extent from its centroid, and room for what a point sees of it. */
export interface PrismShape {
  readonly unit: number
  /** Corners. */
  readonly n: number
  readonly x: Float64Array
  readonly y: Float64Array
  /** Unit vector along edge i, from corner i to i + 1; the outward normal is (ty, −tx). */
  readonly tx: Float64Array
  readonly ty: Float64Array
  readonly length: Float64Array
  readonly halfHeight: number
  readonly area: number
  /** Centroid in the machine frame [m]. */
  readonly centre: Vector3
  /** Rows of the frame divided by the unit. */
  readonly rows: Frame3
  /** Covariances of the outline about its centroid: xx, xy, yy. */
  readonly second: Vector3
  /** Third moments per area about the centroid: xxx, xxy, xyy, yyy. */
  readonly third: readonly [number, number, number, number]
}

/** @internal The shape of a prism. */
export function prismShape({ outline, height, centre, frame }: PrismMagnet): PrismShape {
  const n = outline.length / 2
  const { area, centroid } = outlineMoments(outline)
  let unit = height / 2
  for (let i = 0; i < outline.length; i++) unit = Math.max(unit, Math.abs(outline[i]! - centroid[i % 2]!))
  const x = Float64Array.from({ length: n }, (_, i) => (outline[2 * i]! - centroid[0]) / unit)
  const y = Float64Array.from({ length: n }, (_, i) => (outline[2 * i + 1]! - centroid[1]) / unit)
  const tx = new Float64Array(n)
  const ty = new Float64Array(n)
  const length = new Float64Array(n)
  let [xx, xy, yy, xxx, xxy, xyy, yyy] = [0, 0, 0, 0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n
    const [ax, ay, bx, by] = [x[i]!, y[i]!, x[j]!, y[j]!]
    length[i] = Math.hypot(bx - ax, by - ay)
    tx[i] = (bx - ax) / length[i]!
    ty[i] = (by - ay) / length[i]!
    // Triangle of centroid and edge: its moments by those of a triangle with a corner at the origin
    const c = ax * by - ay * bx
    xx += (c / 12) * (ax * ax + ax * bx + bx * bx)
    xy += (c / 24) * (2 * ax * ay + ax * by + bx * ay + 2 * bx * by)
    yy += (c / 12) * (ay * ay + ay * by + by * by)
    xxx += (c / 20) * (ax ** 3 + ax * ax * bx + ax * bx * bx + bx ** 3)
    xxy +=
      (c / 60) *
      (3 * ax * ax * ay +
        2 * ax * bx * ay +
        bx * bx * ay +
        ax * ax * by +
        2 * ax * bx * by +
        3 * bx * bx * by)
    xyy +=
      (c / 60) *
      (3 * ay * ay * ax +
        2 * ay * by * ax +
        by * by * ax +
        ay * ay * bx +
        2 * ay * by * bx +
        3 * by * by * bx)
    yyy += (c / 20) * (ay ** 3 + ay * ay * by + ay * by * by + by ** 3)
  }
  const A = area / unit / unit
  const [u, v, w] = frame
  const k = 1 / unit
  return {
    unit,
    n,
    x,
    y,
    tx,
    ty,
    length,
    halfHeight: height / 2 / unit,
    area: A,
    centre: [
      centre[0] + u[0] * centroid[0] + v[0] * centroid[1],
      centre[1] + u[1] * centroid[0] + v[1] * centroid[1],
      centre[2] + u[2] * centroid[0] + v[2] * centroid[1],
    ],
    rows: [scale(u, k), scale(v, k), scale(w, k)],
    second: [xx / A, xy / A, yy / A],
    third: [xxx / A, xxy / A, xyy / A, yyy / A],
  }
}
