/** One concentrated coil: hole shape, parallel outlines of its turns, and where it is mounted. */
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../refusal/require.ts'
import type { BundleSection, Filament } from './bundle.ts'
import { bundleFilaments } from './bundle.ts'
import type { Curve, CurvePiece, FlatPoint, Sheet } from './curve.ts'
import { curveLength } from './curve.ts'
import type { WindingSurface } from './winding-surface.ts'
import { requireWindingSurface } from './winding-surface.ts'

/** Shape of the hole. Width is along the circumference, length along z (drum) or the radius (disc). */
export type HoleShape =
  | { readonly kind: 'round'; readonly diameter: number }
  | {
      readonly kind: 'rectangular'
      readonly width: number
      readonly length: number
      readonly cornerRadius: number
    }
  | {
      readonly kind: 'wedge'
      /** Width between the sides, extended, at the end nearer the axis (disc) or at −z (drum). */
      readonly innerWidth: number
      readonly outerWidth: number
      readonly length: number
      readonly cornerRadius: number
    }

export interface CoilOutline {
  readonly hole: HoleShape
  readonly surface: WindingSurface
  /** Azimuth of the coil's axis. */
  readonly angle: number
}

/** A convex polygon, counter-clockwise in (across, along), grown by `radius`: the hole's exact outline. */
interface RoundedHole {
  readonly core: readonly FlatPoint[]
  readonly radius: number
  readonly length: number
}

function roundedHole(hole: HoleShape): RoundedHole {
  if (hole.kind === 'round') {
    requireNotNegative('hole.diameter', hole.diameter, 'm')
    return { core: [[0, 0]], radius: hole.diameter / 2, length: hole.diameter }
  }
  const inner = hole.kind === 'wedge' ? hole.innerWidth : hole.width
  const outer = hole.kind === 'wedge' ? hole.outerWidth : hole.width
  const { length, cornerRadius: c } = hole
  requireNotNegative(hole.kind === 'wedge' ? 'hole.innerWidth' : 'hole.width', inner, 'm')
  requireNotNegative(hole.kind === 'wedge' ? 'hole.outerWidth' : 'hole.width', outer, 'm')
  requirePositive('hole.length', length, 'm')
  requireBetween('hole.cornerRadius', c, [0, (length / 2) * (1 + 1e-12)], 'm')
  // each side is drawn in by c along its normal; `lean` is how much it opens per length
  const lean = (outer - inner) / (2 * length)
  const sideways = c * Math.hypot(1, lean)
  const y = Math.max(0, length / 2 - c)
  const low = (inner + outer) / 4 - lean * y - sideways
  const high = (inner + outer) / 4 + lean * y - sideways
  const least = -1e-12 * (inner + outer + length)
  if (low < least || high < least)
    refuse({
      name: 'hole.cornerRadius',
      condition: 'small enough to fit between the sides of the hole',
      value: c,
      unit: 'm',
      code: 'conflict',
    })
  const a = Math.max(0, low)
  const b = Math.max(0, high)
  const corners: FlatPoint[] = [
    [-a, -y],
    [a, -y],
    [b, y],
    [-b, y],
  ]
  const size = inner + outer + length
  const core = corners.filter((p, i) => {
    const q = corners[(i + 3) % 4]
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-12 * size
  })
  return { core: core.length === 0 ? [[0, 0]] : core, radius: c, length }
}

/** Edges of the core moved out by `radius`, joined by arcs about its corners; (x, y) as given by `core`. */
function grownPieces(core: readonly FlatPoint[], radius: number, sheet: Sheet): CurvePiece[] {
  const arc = (centre: FlatPoint, start: number, sweep: number): CurvePiece => ({
    sheet,
    shape: { kind: 'arc', centre, radii: [radius, radius], start, sweep },
  })
  if (core.length === 1) return radius === 0 ? [] : [arc(core[0], 0, 2 * Math.PI)]
  const n = core.length
  // direction of the outward normal of edge i → i + 1 of a counter-clockwise polygon
  const normal = core.map((p, i) => {
    const q = core[(i + 1) % n]
    return Math.atan2(-(q[0] - p[0]), q[1] - p[1])
  })
  const out = (p: FlatPoint, angle: number): FlatPoint => [
    p[0] + radius * Math.cos(angle),
    p[1] + radius * Math.sin(angle),
  ]
  const pieces: CurvePiece[] = []
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n
    pieces.push({
      sheet,
      shape: { kind: 'line', from: out(core[i], normal[i]), to: out(core[next], normal[i]) },
    })
    const turn = (normal[next] - normal[i] + 4 * Math.PI) % (2 * Math.PI)
    if (radius > 0) pieces.push(arc(core[next], normal[i], turn))
  }
  return pieces
}

function requireCoil({ surface, angle }: CoilOutline): void {
  requireWindingSurface(surface)
  requireFinite('angle', angle, 'rad')
}

/**
 * The closed filament `outward` from the edge of the hole and `normal` off the surface, counter-clockwise seen
 * against the outward normal (from outside the drum, from +z of the disc).
 */
export function coilCurve(
  coil: CoilOutline,
  { outward, normal }: { readonly outward: number; readonly normal: number },
): Curve {
  requireCoil(coil)
  requireNotNegative('outward', outward, 'm')
  requireFinite('normal', normal, 'm')
  const { surface, angle } = coil
  const { core, radius } = roundedHole(coil.hole)
  if (surface.kind === 'drum') {
    requirePositive('radius of the filament', surface.radius + normal, 'm')
    const sheet: Sheet = {
      kind: 'drum',
      radius: surface.radius + normal,
      referenceRadius: surface.radius,
      angle,
      height: surface.z,
    }
    return { closed: true, pieces: grownPieces(core, radius + outward, sheet) }
  }
  const c = Math.cos(angle)
  const s = Math.sin(angle)
  const sheet: Sheet = {
    kind: 'plane',
    origin: [surface.meanRadius * c, surface.meanRadius * s, surface.z + normal],
    xAxis: [c, s, 0],
    yAxis: [-s, c, 0],
  }
  // radial × tangential = +z: swapping the two and reversing keeps the polygon counter-clockwise
  const swapped = core.map(([across, along]): FlatPoint => [along, across]).reverse()
  return { closed: true, pieces: grownPieces(swapped, radius + outward, sheet) }
}

/** Filaments over the legs: `offset` is (outward from the hole's edge, normal to the surface). */
export function coilFilaments(
  coil: CoilOutline,
  section: BundleSection,
  orders?: readonly [number, number],
): Filament[] {
  requireNotNegative('section.width', section.width, 'm')
  requireNotNegative('section.thickness', section.thickness, 'm')
  return bundleFilaments(
    (outward, normal) => coilCurve(coil, { outward, normal }),
    { across: [0, section.width], normal: [-section.thickness / 2, section.thickness / 2] },
    orders,
  )
}

export interface CoilExtent {
  /** Over the legs, at the end of the hole nearer the axis (disc) or at −z (drum). */
  readonly innerWidth: number
  readonly outerWidth: number
  /** The widest place. */
  readonly width: number
  /** Over both ends, along z or the radius. */
  readonly length: number
}

/** Overall size with legs `legWidth` wide, in the surface (drum: unrolled). */
export function coilExtent(coil: CoilOutline, legWidth: number): CoilExtent {
  requireCoil(coil)
  requireNotNegative('legWidth', legWidth, 'm')
  const { hole } = coil
  const { core, radius, length } = roundedHole(hole)
  const width = 2 * (Math.max(...core.map((p) => p[0])) + radius + legWidth)
  if (hole.kind === 'round') return { innerWidth: width, outerWidth: width, width, length: width }
  const inner = hole.kind === 'wedge' ? hole.innerWidth : hole.width
  const outer = hole.kind === 'wedge' ? hole.outerWidth : hole.width
  // across a leaning leg the width along the circumference is legWidth over the cosine of the lean
  const legs = 2 * legWidth * Math.hypot(1, (outer - inner) / (2 * length))
  return {
    innerWidth: Math.min(width, inner + legs),
    outerWidth: Math.min(width, outer + legs),
    width,
    length: length + 2 * legWidth,
  }
}

/**
 * Smallest distance between neighbours when `count` equal coils share the circumference; negative: they
 * overlap. Exact on the disc (convex outlines mirrored in the ray between them) and on the unrolled drum. A
 * single coil has no neighbour: the greatest number there is.
 */
export function neighbourClearance(coil: CoilOutline, legWidth: number, count: number): number {
  requireCoil(coil)
  requireNotNegative('legWidth', legWidth, 'm')
  requirePositive('count', count)
  if (!Number.isInteger(count))
    refuse({ name: 'count', condition: 'a whole number', value: count, code: 'not-a-choice' })
  const { core, radius } = roundedHole(coil.hole)
  const { surface } = coil
  if (count < 2) return Number.MAX_VALUE
  const half = Math.PI / count
  const toBorder = core.map(([across, along]) =>
    surface.kind === 'drum'
      ? surface.radius * half - across
      : (surface.meanRadius + along) * Math.sin(half) - across * Math.cos(half),
  )
  return 2 * (Math.min(...toBorder) - radius - legWidth)
}

/** Mean length of one turn over the legs; by Steiner's formula (perimeter + 2π·distance) on the flat disc. */
export function coilMeanTurnLength(coil: CoilOutline, section: BundleSection): number {
  requireNotNegative('section.width', section.width, 'm')
  requireNotNegative('section.thickness', section.thickness, 'm')
  if (coil.surface.kind === 'disc')
    return curveLength(coilCurve(coil, { outward: section.width / 2, normal: 0 }))
  return coilFilaments(coil, section, [4, 4]).reduce((sum, f) => sum + f.weight * curveLength(f.curve), 0)
}
