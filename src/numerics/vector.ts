/** Three-component vectors and rotations about the machine axis. */

export type Vector3 = readonly [number, number, number]
/** Rotation or frame, row by row: rows are the local x, y and z unit vectors in the outer frame. */
export type Frame3 = readonly [Vector3, Vector3, Vector3]

export const identityFrame: Frame3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

export const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

export const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

export const add = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const subtract = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vector3, k: number): Vector3 => [a[0] * k, a[1] * k, a[2] * k]
export const norm = (a: Vector3): number => Math.hypot(a[0], a[1], a[2])

/** The vector turned by `angle` about +z, counter-clockwise seen from +z. */
export function turnAboutZ(a: Vector3, angle: number): Vector3 {
  const c = Math.cos(angle)
  const s = Math.sin(angle)
  return [c * a[0] - s * a[1], s * a[0] + c * a[1], a[2]]
}

/** Flat points x0 y0 z0 x1 … turned by `angle` about +z into a new array. */
export function turnPointsAboutZ(points: Float64Array, angle: number): Float64Array {
  const c = Math.cos(angle)
  const s = Math.sin(angle)
  const turned = new Float64Array(points.length)
  for (let i = 0; i < points.length; i += 3) {
    turned[i] = c * points[i]! - s * points[i + 1]!
    turned[i + 1] = s * points[i]! + c * points[i + 1]!
    turned[i + 2] = points[i + 2]!
  }
  return turned
}
