/** What one point sees of a prism's faces: solid angles, and the integrals of 1/R along the edges. */
import type { PrismShape } from './prism-shape.ts'

/** @internal Room for the view of one point, reused from point to point. */
export interface PrismView {
  /** Distances to the corners of the upper and lower end. */
  readonly upperR: Float64Array
  readonly lowerR: Float64Array
  /** ∫dl/R of the edges of the upper and lower end, and of the edge that stands on corner i. */
  readonly upper: Float64Array
  readonly lower: Float64Array
  readonly standing: Float64Array
  /** Distance before wall i, negative behind it. */
  readonly before: Float64Array
  /** Place of corner i along the edge i that starts there, seen from the point. */
  readonly along: Float64Array
  /** Solid angle of wall i, not negative. */
  readonly wall: Float64Array
  /** Height over the upper and the lower end, and their solid angles. */
  overUpper: number
  overLower: number
  upperEnd: number
  lowerEnd: number
}

/** @internal Room for the views of a prism. */
export function prismView({ n }: PrismShape): PrismView {
  const list = () => new Float64Array(n)
  return {
    upperR: list(),
    lowerR: list(),
    upper: list(),
    lower: list(),
    standing: list(),
    before: list(),
    along: list(),
    wall: list(),
    overUpper: 0,
    overLower: 0,
    upperEnd: 0,
    lowerEnd: 0,
  }
}

/**
 * ln of (R0 + R1 + ℓ)/(R0 + R1 − ℓ) for an edge from s0 to s1 in the point's own coordinate along it, ρρ the
 * square of the distance to its line: each of R0 + s0 and R1 − s1 is a sum of positive terms.
 */
function edgeLog(R0: number, R1: number, s0: number, s1: number, ρρ: number): number {
  const sum = detour(R0, R1, s0, s1, ρρ)
  return Math.log((sum + 2 * (s1 - s0)) / sum)
}

/** R0 + R1 − ℓ, never quite zero. */
function detour(R0: number, R1: number, s0: number, s1: number, ρρ: number): number {
  const low = s0 < 0 ? ρρ / (R0 - s0) : R0 + s0
  const high = s1 > 0 ? ρρ / (R1 + s1) : R1 - s1
  return Math.max(low + high, least)
}
const least = 1e-300

/**
 * @internal What the point (x, y, z) sees; `floor` is the square of the distance to an edge under which its
 * logarithm no longer grows; the standing edges and the ends' solid angles only on demand. Unless the logarithms of upper
 * and lower edges are wanted apart, `upper` is their difference and `lower` zero.
 */
export function viewPrism(
  shape: PrismShape,
  view: PrismView,
  point: { readonly x: number; readonly y: number; readonly z: number },
  demand: {
    readonly floor: number
    readonly standing: boolean
    readonly ends: boolean
    readonly apart: boolean
  },
): void {
  const { n, x: vx, y: vy, tx, ty, length, halfHeight: h } = shape
  const { x, y, z } = point
  const { floor } = demand
  const Z1 = z - h
  const Z0 = z + h
  const z1 = Z1 * Z1
  const z0 = Z0 * Z0
  for (let i = 0; i < n; i++) {
    const dx = vx[i]! - x
    const dy = vy[i]! - y
    const ρρ = dx * dx + dy * dy
    const R1 = Math.sqrt(ρρ + z1)
    const R0 = Math.sqrt(ρρ + z0)
    view.upperR[i] = R1
    view.lowerR[i] = R0
    if (demand.standing) view.standing[i] = edgeLog(R0, R1, -Z0, -Z1, Math.max(ρρ, floor))
  }
  const p1 = Math.abs(Z1)
  const p0 = Math.abs(Z0)
  let upperEnd = 0
  let lowerEnd = 0
  for (let i = 0; i < n; i++) {
    const j = i + 1 < n ? i + 1 : 0
    const dx = vx[i]! - x
    const dy = vy[i]! - y
    const s0 = tx[i]! * dx + ty[i]! * dy
    const s1 = s0 + length[i]!
    const d = tx[i]! * dy - ty[i]! * dx
    const dd = d * d
    const R01 = view.upperR[i]!
    const R11 = view.upperR[j]!
    const R00 = view.lowerR[i]!
    const R10 = view.lowerR[j]!
    view.before[i] = d
    view.along[i] = s0
    const ρ1 = dd + z1
    const ρ0 = dd + z0
    if (demand.apart) {
      view.upper[i] = edgeLog(R01, R11, s0, s1, Math.max(ρ1, floor))
      view.lower[i] = edgeLog(R00, R10, s0, s1, Math.max(ρ0, floor))
    } else {
      const D1 = detour(R01, R11, s0, s1, Math.max(ρ1, floor))
      const D0 = detour(R00, R10, s0, s1, Math.max(ρ0, floor))
      const twice = 2 * length[i]!
      view.upper[i] = Math.log(((D1 + twice) / D1) * (D0 / (D0 + twice)))
      view.lower[i] = 0
    }
    // The four arctangents of a wall as one angle, 0 … 2π, of a product of complex numbers u + iv
    const p = Math.abs(d)
    let u = p * R10
    let v = s1 * Z0
    let w = p * R00
    let t = s0 * Z0
    const re0 = u * w + v * t
    const im0 = v * w - u * t
    u = p * R11
    v = s1 * Z1
    w = p * R01
    t = s0 * Z1
    const re1 = u * w + v * t
    const im1 = u * t - v * w
    let Ω = Math.atan2(re0 * im1 + im0 * re1, re0 * re1 - im0 * im1)
    if (Ω < 0) {
      if (Ω < -1) Ω += 2 * Math.PI
      else if (s0 < 0 && s1 > 0 && Z1 < 0 && Z0 > 0 && p < 2 * h && p < length[i]!) Ω += 2 * Math.PI
    }
    view.wall[i] = Ω
    if (demand.ends) {
      // Triangles of the point's foot and the edge, each an angle under π
      upperEnd += footAngle(-d, s0, s1, ρ1 + p1 * R01, ρ1 + p1 * R11)
      lowerEnd += footAngle(-d, s0, s1, ρ0 + p0 * R00, ρ0 + p0 * R10)
    }
  }
  view.overUpper = Z1
  view.overLower = Z0
  view.upperEnd = upperEnd
  view.lowerEnd = lowerEnd
}

/** atan(P s1/u1) − atan(P s0/u0) for u ≥ 0. */
const footAngle = (P: number, s0: number, s1: number, u0: number, u1: number): number =>
  Math.atan2(P * (s1 * u0 - s0 * u1), u0 * u1 + P * P * s0 * s1)

/** @internal ∬dS/R over wall i. */
export function wallPotential(shape: PrismShape, view: PrismView, i: number): number {
  const j = i + 1 < shape.n ? i + 1 : 0
  const s0 = view.along[i]!
  return (
    view.overLower * view.lower[i]! -
    view.overUpper * view.upper[i]! +
    (s0 + shape.length[i]!) * view.standing[j]! -
    s0 * view.standing[i]! -
    Math.abs(view.before[i]!) * view.wall[i]!
  )
}

/** @internal ∬dS/R over the upper end less that over the lower end. */
export function endPotentials(view: PrismView): number {
  let sum = Math.abs(view.overLower) * view.lowerEnd - Math.abs(view.overUpper) * view.upperEnd
  for (let i = 0; i < view.upper.length; i++) sum -= view.before[i]! * (view.upper[i]! - view.lower[i]!)
  return sum
}
