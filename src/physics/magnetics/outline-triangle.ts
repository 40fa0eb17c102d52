/** Triangles that fill a simple polygon. */

/**
 * @internal Corner indices in threes, counter-clockwise, of a counter-clockwise polygon without crossings: ears are cut off
 * one by one. Corners that lie on a straight edge cost a triangle of no area.
 */
export function outlineTriangles(outline: Float64Array): number[] {
  const n = outline.length / 2
  const left = Array.from({ length: n }, (_, i) => i)
  const triangles: number[] = []
  const cross = (a: number, b: number, c: number) =>
    (outline[2 * b]! - outline[2 * a]!) * (outline[2 * c + 1]! - outline[2 * a + 1]!) -
    (outline[2 * b + 1]! - outline[2 * a + 1]!) * (outline[2 * c]! - outline[2 * a]!)
  while (left.length > 3) {
    // Of the ears, the one that is least a sliver, so that triangles stay plump
    let best = -1
    let bestShape = Number.NEGATIVE_INFINITY
    for (let i = 0; i < left.length; i++) {
      const a = left[(i + left.length - 1) % left.length]!
      const b = left[i]!
      const c = left[(i + 1) % left.length]!
      const area = cross(a, b, c)
      if (area < 0) continue
      if (left.some((p) => p !== a && p !== b && p !== c && inside(a, b, c, p))) continue
      const edge = Math.max(distance(a, b), distance(b, c), distance(c, a))
      const shape = area / edge
      if (shape > bestShape) {
        best = i
        bestShape = shape
      }
    }
    // Rounding can hide the last ears of a sliver: any corner does there
    if (best < 0) best = 0
    const m = left.length
    triangles.push(left[(best + m - 1) % m]!, left[best]!, left[(best + 1) % m]!)
    left.splice(best, 1)
  }
  triangles.push(left[0]!, left[1]!, left[2]!)
  return triangles

  function inside(a: number, b: number, c: number, p: number): boolean {
    return cross(a, b, p) > 0 && cross(b, c, p) > 0 && cross(c, a, p) > 0
  }
  function distance(a: number, b: number): number {
    return (outline[2 * b]! - outline[2 * a]!) ** 2 + (outline[2 * b + 1]! - outline[2 * a + 1]!) ** 2
  }
}
