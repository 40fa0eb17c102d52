/** The two poles of a magnet as solids: its outline raised along its own axis, cut in half across its magnetisation. */
import { ExtrudeGeometry, Shape, Vector3 } from 'three'
import type { MagnetBody } from '../snapshot.ts'

type Corner = readonly [number, number]

/** The part of a polygon on the positive side of a line through `at` across `along`. */
function clipped(corners: readonly Corner[], along: Corner, at: number): Corner[] {
  const side = ([x, y]: Corner) => x * along[0] + y * along[1] - at
  return corners.flatMap((corner, k) => {
    const next = corners[(k + 1) % corners.length]!
    const [here, there] = [side(corner), side(next)]
    const kept: Corner[] = here >= 0 ? [corner] : []
    if (here >= 0 === there >= 0) return kept
    const t = here / (here - there)
    return [...kept, [corner[0] + t * (next[0] - corner[0]), corner[1] + t * (next[1] - corner[1])] as const]
  })
}

function raised(corners: readonly Corner[], from: number, height: number): ExtrudeGeometry {
  const shape = new Shape()
  corners.forEach(([x, y], k) => {
    if (k === 0) shape.moveTo(x, y)
    else shape.lineTo(x, y)
  })
  const geometry = new ExtrudeGeometry(shape, { depth: height, bevelEnabled: false })
  geometry.translate(0, 0, from)
  return geometry
}

export interface PoleGeometry {
  readonly pole: 'N' | 'S'
  readonly body: ExtrudeGeometry
  /** Middle and outward normal of its face, in the magnet's own axes. */
  readonly face: Vector3
  readonly normal: Vector3
}

/** North first. */
export function poleGeometries({ outline, height, north }: MagnetBody): PoleGeometry[] {
  const corners = Array.from(
    { length: outline.length / 2 },
    (_, k): Corner => [outline[2 * k]!, outline[2 * k + 1]!],
  )
  const reach = (along: Corner) => {
    const places = corners.map(([x, y]) => x * along[0] + y * along[1])
    return [Math.min(...places), Math.max(...places)] as const
  }
  const [left, right] = reach([1, 0])
  const [low, high] = reach([0, 1])
  const upright = Math.abs(north[2]!) > 0.99
  return ([1, -1] as const).map((half): PoleGeometry => {
    const pole = half > 0 ? 'N' : 'S'
    if (upright) {
      const up = half * Math.sign(north[2]!)
      return {
        pole,
        body: raised(corners, up > 0 ? 0 : -height / 2, height / 2),
        face: new Vector3((left + right) / 2, (low + high) / 2, up * height * 0.505),
        normal: new Vector3(0, 0, up),
      }
    }
    const along: Corner = [half * north[0]!, half * north[1]!]
    const [near, far] = reach(along)
    const [from, to] = reach([-along[1], along[0]])
    const across = (from + to) / 2
    return {
      pole,
      body: raised(clipped(corners, along, (near + far) / 2), -height / 2, height),
      face: new Vector3(
        along[0] * far * 1.002 - along[1] * across,
        along[1] * far * 1.002 + along[0] * across,
        0,
      ),
      normal: new Vector3(along[0], along[1], 0),
    }
  })
}
