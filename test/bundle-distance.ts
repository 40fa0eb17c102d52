/** Smallest distance between two bundles, found by sampling: for checks that paths clear each other. */
import { type Curve, curvePolyline, piecePoint } from '../src/geometry/curve.ts'

/** Points of all turns, `perPiece` on every piece, flat. */
export function sampledPoints(turns: readonly Curve[], perPiece: number): Float64Array {
  const points: number[] = []
  for (const { pieces } of turns)
    for (const piece of pieces)
      for (let k = 0; k < perPiece; k++) points.push(...piecePoint(piece, (k + 0.5) / perPiece))
  return Float64Array.from(points)
}

export function leastDistance(a: Float64Array, b: Float64Array): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < a.length; i += 3)
    for (let j = 0; j < b.length; j += 3) {
      const dx = a[i]! - b[j]!
      const dy = a[i + 1]! - b[j + 1]!
      const dz = a[i + 2]! - b[j + 2]!
      const square = dx * dx + dy * dy + dz * dz
      if (square < least) least = square
    }
  return Math.sqrt(least)
}

/** Greatest step between the end of a piece and the start of the next, the last one's next being the first. */
export function greatestJump({ pieces }: Curve): number {
  return pieces.reduce((most, piece, k) => {
    const end = piecePoint(piece, 1)
    const next = piecePoint(pieces[(k + 1) % pieces.length]!, 0)
    return Math.max(most, Math.hypot(end[0] - next[0], end[1] - next[1], end[2] - next[2]))
  }, 0)
}

/** Length of the polygon inside the curve: an independent route to its length, a little short. */
export function chordLength(curve: Curve, sagitta: number): number {
  const points = curvePolyline(curve, { sagitta })
  let sum = 0
  for (let i = 3; i < points.length; i += 3)
    sum += Math.hypot(
      points[i]! - points[i - 3]!,
      points[i + 1]! - points[i - 2]!,
      points[i + 2]! - points[i - 1]!,
    )
  return sum
}
