/** A conductor's centre-line as exact pieces: lines and arcs drawn in a plane, on a drum or on a disc, or rising off it. */
import { gaussLegendre } from '../numerics/quadrature.ts'
import type { Vector3 } from '../numerics/vector.ts'
import { cross, turnAboutZ } from '../numerics/vector.ts'
import { refuse, requireFinite, requirePositive } from '../refusal/require.ts'

/** Cartesian sheet: point = origin + x·xAxis + y·yAxis; the axes are perpendicular unit vectors. */
export interface PlaneSheet {
  readonly kind: 'plane'
  readonly origin: Vector3
  readonly xAxis: Vector3
  readonly yAxis: Vector3
}
/** Sheet rolled onto a drum: azimuth = angle + x/referenceRadius, at `radius`, z = height + y. */
export interface DrumSheet {
  readonly kind: 'drum'
  readonly radius: number
  /** Radius at which x is a true length; differs from `radius` for the outer layers of a bundle. */
  readonly referenceRadius: number
  readonly angle: number
  readonly height: number
}
/** Polar sheet of a disc: azimuth = angle + x/referenceRadius, radius = y, z = height. */
export interface PolarSheet {
  readonly kind: 'polar'
  readonly referenceRadius: number
  readonly angle: number
  readonly height: number
}
export type Sheet = PlaneSheet | DrumSheet | PolarSheet

export type FlatPoint = readonly [x: number, y: number]
export interface FlatLine {
  readonly kind: 'line'
  readonly from: FlatPoint
  readonly to: FlatPoint
}
/** (x, y) = centre + (a cos φ, b sin φ), φ from `start` over `sweep`; a circle when a = b. */
export interface FlatArc {
  readonly kind: 'arc'
  readonly centre: FlatPoint
  readonly radii: readonly [a: number, b: number]
  readonly start: number
  readonly sweep: number
}
/**
 * Height of a piece off its sheet along the normal (xAxis × yAxis; away from the axis on a drum; +z on a disc): from
 * `from` at its start to `to` at its end by a cubic that is level at both, h = from + (to − from) t² (3 − 2t).
 */
export interface Rise {
  readonly from: number
  readonly to: number
}
export interface CurvePiece {
  readonly sheet: Sheet
  readonly shape: FlatLine | FlatArc
  /** Left out: the piece lies in its sheet. */
  readonly rise?: Rise
}
/** Pieces end to end, in the direction of positive current. */
export interface Curve {
  readonly closed: boolean
  readonly pieces: readonly CurvePiece[]
}

/** ∮F·dl ≈ Σ F(points_i)·steps_i; both flat, x0 y0 z0 x1 … */
export interface PathQuadrature {
  readonly points: Float64Array
  readonly steps: Float64Array
}

/** Where the piece is at t in 0…1, then its first and second derivative by t: nine numbers into `out`. */
function evaluate({ sheet, shape, rise }: CurvePiece, t: number, out: Float64Array): void {
  let x: number
  let y: number
  let x1: number
  let y1: number
  let x2 = 0
  let y2 = 0
  if (shape.kind === 'line') {
    x1 = shape.to[0] - shape.from[0]
    y1 = shape.to[1] - shape.from[1]
    x = shape.from[0] + t * x1
    y = shape.from[1] + t * y1
  } else {
    const { centre, radii, start, sweep } = shape
    const c = Math.cos(start + t * sweep)
    const s = Math.sin(start + t * sweep)
    x = centre[0] + radii[0] * c
    y = centre[1] + radii[1] * s
    x1 = -radii[0] * s * sweep
    y1 = radii[1] * c * sweep
    x2 = -radii[0] * c * sweep * sweep
    y2 = -radii[1] * s * sweep * sweep
  }
  let h = 0
  let h1 = 0
  let h2 = 0
  if (rise) {
    const climb = rise.to - rise.from
    h = rise.from + climb * t * t * (3 - 2 * t)
    h1 = 6 * climb * t * (1 - t)
    h2 = 6 * climb * (1 - 2 * t)
  }
  if (sheet.kind === 'plane') {
    const { origin, xAxis, yAxis } = sheet
    for (let k = 0; k < 3; k++) {
      out[k] = origin[k] + x * xAxis[k] + y * yAxis[k]
      out[3 + k] = x1 * xAxis[k] + y1 * yAxis[k]
      out[6 + k] = x2 * xAxis[k] + y2 * yAxis[k]
    }
    if (rise) {
      const normal = cross(xAxis, yAxis)
      for (let k = 0; k < 3; k++) {
        out[k] += h * normal[k]
        out[3 + k] += h1 * normal[k]
        out[6 + k] += h2 * normal[k]
      }
    }
    return
  }
  const azimuth = sheet.angle + x / sheet.referenceRadius
  const a1 = x1 / sheet.referenceRadius
  const a2 = x2 / sheet.referenceRadius
  const onDrum = sheet.kind === 'drum'
  const r = onDrum ? sheet.radius + h : y
  const r1 = onDrum ? h1 : y1
  const r2 = onDrum ? h2 : y2
  const c = Math.cos(azimuth)
  const s = Math.sin(azimuth)
  const radial = r2 - r * a1 * a1
  const around = 2 * r1 * a1 + r * a2
  out[0] = r * c
  out[1] = r * s
  out[2] = onDrum ? sheet.height + y : sheet.height + h
  out[3] = r1 * c - r * a1 * s
  out[4] = r1 * s + r * a1 * c
  out[5] = onDrum ? y1 : h1
  out[6] = radial * c - around * s
  out[7] = radial * s + around * c
  out[8] = onDrum ? y2 : h2
}

/** The point of a piece at t in 0…1. */
export function piecePoint(piece: CurvePiece, t: number): Vector3 {
  const out = new Float64Array(9)
  evaluate(piece, t, out)
  return [out[0], out[1], out[2]]
}

function lengthOver(piece: CurvePiece, from: number, to: number, order: number): number {
  const { nodes, weights } = gaussLegendre(order)
  const half = (to - from) / 2
  let sum = 0
  for (let i = 0; i < order; i++) {
    evaluate(piece, from + half * (1 + nodes[i]), scratch)
    sum += weights[i] * Math.hypot(scratch[3], scratch[4], scratch[5])
  }
  return half * sum
}
const scratch = new Float64Array(9)
const level: Rise = { from: 0, to: 0 }

function refinedLength(piece: CurvePiece, from: number, to: number, allowed: number, depth: number): number {
  const coarse = lengthOver(piece, from, to, 12)
  const middle = (from + to) / 2
  const fine = lengthOver(piece, from, middle, 12) + lengthOver(piece, middle, to, 12)
  if (depth === 0 || Math.abs(fine - coarse) <= allowed) return fine
  return (
    refinedLength(piece, from, middle, allowed / 2, depth - 1) +
    refinedLength(piece, middle, to, allowed / 2, depth - 1)
  )
}

/** Length of one piece; lines and circles in closed form, flattened, polar and rising ones to 1e-12 of themselves. */
export function pieceLength(piece: CurvePiece): number {
  const { sheet, shape, rise = level } = piece
  const stretch = sheet.kind === 'drum' ? (sheet.radius + rise.from) / sheet.referenceRadius : 1
  if (sheet.kind !== 'polar' && rise.from === rise.to) {
    if (shape.kind === 'line')
      return Math.hypot((shape.to[0] - shape.from[0]) * stretch, shape.to[1] - shape.from[1])
    if (shape.radii[0] * stretch === shape.radii[1]) return Math.abs(shape.sweep) * shape.radii[1]
  }
  const rough = lengthOver(piece, 0, 1, 16)
  return refinedLength(piece, 0, 0.5, 5e-13 * rough, 40) + refinedLength(piece, 0.5, 1, 5e-13 * rough, 40)
}

export function curveLength(curve: Curve): number {
  let sum = 0
  for (const piece of curve.pieces) sum += pieceLength(piece)
  return sum
}

const mostPanels = 1e6

/**
 * Gauss–Legendre points along the curve: every piece is cut into panels no longer than `longestStep` (and no
 * arc panel wider than a quarter turn), each with `order` points.
 */
export function curveQuadrature(
  curve: Curve,
  { longestStep, order }: { readonly longestStep: number; readonly order: number },
): PathQuadrature {
  requirePositive('longestStep', longestStep, 'm')
  const { nodes, weights } = gaussLegendre(order)
  const panels = curve.pieces.map((piece) => {
    const byLength = Math.ceil(pieceLength(piece) / longestStep - 1e-9)
    const byTurn =
      piece.shape.kind === 'arc' ? Math.ceil(Math.abs(piece.shape.sweep) / (Math.PI / 2) - 1e-9) : 1
    return Math.max(1, byLength, byTurn)
  })
  const total = panels.reduce((sum, n) => sum + n, 0)
  if (!(total <= mostPanels))
    refuse({
      name: 'longestStep',
      condition: `large enough for at most ${mostPanels} panels`,
      value: longestStep,
      unit: 'm',
      code: 'below-minimum',
    })
  const points = new Float64Array(3 * order * total)
  const steps = new Float64Array(3 * order * total)
  let at = 0
  curve.pieces.forEach((piece, which) => {
    const count = panels[which]
    for (let panel = 0; panel < count; panel++)
      for (let i = 0; i < order; i++) {
        evaluate(piece, (panel + (1 + nodes[i]) / 2) / count, scratch)
        const weight = weights[i] / (2 * count)
        for (let k = 0; k < 3; k++) {
          points[at] = scratch[k]
          steps[at] = scratch[3 + k] * weight
          at++
        }
      }
  })
  return { points, steps }
}

/**
 * Corners of a polygon on the curve whose chords miss it by no more than about `sagitta`; straight pieces stay
 * whole. Both ends are listed, so a closed curve ends with its first point again.
 */
export function curvePolyline(curve: Curve, { sagitta }: { readonly sagitta: number }): Float64Array {
  requirePositive('sagitta', sagitta, 'm')
  const corners: number[] = []
  let total = 0
  curve.pieces.forEach((piece, which) => {
    let bend = 0
    for (let i = 0; i <= 8; i++) {
      evaluate(piece, i / 8, scratch)
      bend = Math.max(bend, Math.hypot(scratch[6], scratch[7], scratch[8]))
    }
    const byTurn =
      piece.shape.kind === 'arc' ? Math.ceil(Math.abs(piece.shape.sweep) / (Math.PI / 2) - 1e-9) : 1
    // a chord over Δt misses by |P″| Δt²/8; rounding leaves |P″| of straight runs near zero, not at it
    const count = Math.max(byTurn, Math.ceil(Math.sqrt(bend / (8 * sagitta)) - 1e-9), 1)
    total += count
    if (!(total <= mostPanels))
      refuse({
        name: 'sagitta',
        condition: `large enough for at most ${mostPanels} chords`,
        value: sagitta,
        unit: 'm',
        code: 'below-minimum',
      })
    for (let i = which === 0 ? 0 : 1; i <= count; i++) {
      evaluate(piece, i / count, scratch)
      corners.push(scratch[0], scratch[1], scratch[2])
    }
  })
  const flat = Float64Array.from(corners)
  // the last corner is the first one to the last bit, so that sums over chords close
  if (curve.closed && flat.length > 3) for (let k = 0; k < 3; k++) flat[flat.length - 3 + k] = flat[k]
  return flat
}

/** The curve turned by `angle` about +z. */
export function turnedCurve(curve: Curve, angle: number): Curve {
  requireFinite('angle', angle, 'rad')
  const sheets = new Map<Sheet, Sheet>()
  const turned = (sheet: Sheet): Sheet => {
    const found = sheets.get(sheet)
    if (found) return found
    const made: Sheet =
      sheet.kind === 'plane'
        ? {
            kind: 'plane',
            origin: turnAboutZ(sheet.origin, angle),
            xAxis: turnAboutZ(sheet.xAxis, angle),
            yAxis: turnAboutZ(sheet.yAxis, angle),
          }
        : { ...sheet, angle: sheet.angle + angle }
    sheets.set(sheet, made)
    return made
  }
  return {
    closed: curve.closed,
    pieces: curve.pieces.map((piece) => ({ ...piece, sheet: turned(piece.sheet) })),
  }
}

/** A straight piece between two points in space, for leads and joints. */
export function straightPiece(from: Vector3, to: Vector3): CurvePiece {
  const d: Vector3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const length = Math.hypot(...d)
  requirePositive('length of the straight piece', length, 'm')
  const xAxis: Vector3 = [d[0] / length, d[1] / length, d[2] / length]
  // any perpendicular will do: y is zero along the piece
  const least = Math.abs(xAxis[2]) < 0.9 ? Math.hypot(xAxis[0], xAxis[1]) : Math.hypot(xAxis[1], xAxis[2])
  const yAxis: Vector3 =
    Math.abs(xAxis[2]) < 0.9
      ? [-xAxis[1] / least, xAxis[0] / least, 0]
      : [0, -xAxis[2] / least, xAxis[1] / least]
  return {
    sheet: { kind: 'plane', origin: from, xAxis, yAxis },
    shape: { kind: 'line', from: [0, 0], to: [length, 0] },
  }
}

/** Vector area ½∮ r × dl enclosed by a closed curve; its size is the area of a flat one. */
export function enclosedArea(curve: Curve): Vector3 {
  const length = curveLength(curve)
  requirePositive('length of the curve', length, 'm')
  const { points, steps } = curveQuadrature(curve, { longestStep: length, order: 16 })
  let x = 0
  let y = 0
  let z = 0
  for (let i = 0; i < points.length; i += 3) {
    x += points[i + 1] * steps[i + 2] - points[i + 2] * steps[i + 1]
    y += points[i + 2] * steps[i] - points[i] * steps[i + 2]
    z += points[i] * steps[i + 1] - points[i + 1] * steps[i]
  }
  return [x / 2, y / 2, z / 2]
}
