/** Points of a set that are each other's images in a plane through the z axis. */

/** Share of the set's farthest point from the axis within which two points are one. */
const sameWithin = 1e-9

/**
 * Index of each point's image in the plane through the z axis at an angle [rad]; undefined where one has none.
 * Points lie flat, x0 y0 z0 x1 …
 */
export function mirrorPartners(points: Float64Array, angle: number): Uint32Array | undefined {
  const n = points.length / 3
  const c = Math.cos(2 * angle)
  const s = Math.sin(2 * angle)
  let size = 0
  for (let i = 0; i < points.length; i++) size = Math.max(size, Math.abs(points[i]!))
  const near = sameWithin * size
  const partner = new Uint32Array(n).fill(n)
  for (let i = 0; i < n; i++) {
    if (partner[i]! < n) continue
    const [x, y, z] = [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]
    const X = c * x + s * y
    const Y = s * x - c * y
    for (let k = i; k < n; k++)
      if (
        Math.abs(points[3 * k]! - X) <= near &&
        Math.abs(points[3 * k + 1]! - Y) <= near &&
        Math.abs(points[3 * k + 2]! - z) <= near
      ) {
        partner[i] = k
        partner[k] = i
        break
      }
    if (partner[i] === n) return undefined
  }
  return partner
}
