/** One serpentine (wave) winding: 2p runs joined by crowns at alternating ends, on a drum or a disc, crowns raised or not. */
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../refusal/require.ts'
import type { BundleSection, Filament } from './bundle.ts'
import { bundleFilaments, serpentineBundleOrders } from './bundle.ts'
import type { Curve, CurvePiece, FlatPoint, Rise, Sheet } from './curve.ts'
import { curveLength } from './curve.ts'
import type { WindingSurface } from './winding-surface.ts'
import { requireWindingSurface } from './winding-surface.ts'

/** How a crown goes from one run to the next; `height` is how far it bulges past the ends of the runs. */
export type Crown =
  | { readonly kind: 'half-ellipse'; readonly height: number }
  | { readonly kind: 'rounded-corners'; readonly height: number; readonly cornerRadius: number }

/** Crowns that leave the surface, to pass over those of another wave. */
export interface CrownLift {
  /** Off the surface, along its outward normal [m]. */
  readonly height: number
  /** First part of the crown's height, along the run's direction, over which it climbs and comes down again [m]. */
  readonly ramp: number
}

export interface Serpentine {
  readonly surface: WindingSurface
  /** p; the wave has 2p runs, one per pole pitch π/p. */
  readonly polePairs: number
  /** Length of a run along z (drum) or along the radius (disc), without the crowns. */
  readonly activeLength: number
  /** Azimuth by which a run advances from its first to its last end: 0 straight, π/p zigzag. */
  readonly runSlant: number
  readonly crown: Crown
  /** Left out: the crowns lie in the surface. A zigzag has no crowns to lift. */
  readonly lift?: CrownLift
  /** Azimuth of the middle of the first run. */
  readonly angle: number
}
/** Where a filament lies in the bundle: the whole wave shifted along the circumference, then off the surface. */
export interface FilamentOffset {
  /** Shift along the circumference at the surface's radius (disc: mean radius) [m]. */
  readonly lateral: number
  /** Shift away from the axis (drum) or along +z (disc) [m]. */
  readonly normal: number
}
const onReferenceLine: FilamentOffset = { lateral: 0, normal: 0 }

/** The part that, copied `repeats` times by turns of 2π/repeats, makes the whole closed path. */
export interface RepeatedCurve {
  readonly segment: Curve
  readonly repeats: number
}

function requireSerpentine(serpentine: Serpentine): void {
  const { surface, polePairs, activeLength, runSlant, crown, lift, angle } = serpentine
  requireWindingSurface(surface)
  requirePositive('polePairs', polePairs)
  if (!Number.isInteger(polePairs))
    refuse({ name: 'polePairs', condition: 'a whole number', value: polePairs, code: 'not-a-choice' })
  requirePositive('activeLength', activeLength, 'm')
  requireBetween('runSlant', runSlant, [0, Math.PI / polePairs], 'rad')
  requireNotNegative('crown.height', crown.height, 'm')
  requireFinite('angle', angle, 'rad')
  if (lift) {
    requireFinite('lift.height', lift.height, 'm')
    requireBetween('lift.ramp', lift.ramp, [0, crown.height], 'm')
    if (lift.height !== 0 && isZigzag(serpentine))
      refuse({
        name: 'lift.height',
        condition: '0 for a zigzag',
        value: lift.height,
        unit: 'm',
        code: 'conflict',
      })
  }
  if (surface.kind === 'disc') {
    const inside = surface.meanRadius - activeLength / 2 - crown.height
    requirePositive('radius inside the inner crowns', inside, 'm')
  }
}

/** Runs that lean by a whole pole pitch meet without crowns. */
const isZigzag = ({ polePairs, runSlant }: Serpentine): boolean =>
  Math.PI / polePairs - runSlant <= (1e-12 * Math.PI) / polePairs

interface CrownSpan {
  readonly from: number
  readonly to: number
  readonly base: number
  readonly outward: 1 | -1
}

/** Crown from (from, base) to (to, base), bulging by `outward`·height; a lifted one on ramps that carry on the runs. */
function crownPieces(crown: Crown, sheet: Sheet, span: CrownSpan, lift: CrownLift | undefined): CurvePiece[] {
  if (!lift) return flatCrown(crown, sheet, span)
  const { from, to, base, outward } = span
  const { height, ramp } = lift
  const foot = base + outward * ramp
  const slope = (at: number, y0: number, y1: number, rise: Rise): CurvePiece[] =>
    ramp === 0 && height === 0 ? [] : [{ sheet, shape: { kind: 'line', from: [at, y0], to: [at, y1] }, rise }]
  const top = flatCrown({ ...crown, height: Math.max(0, crown.height - ramp) }, sheet, {
    ...span,
    base: foot,
  })
  return [
    ...slope(from, base, foot, { from: 0, to: height }),
    ...top.map((piece) => ({ ...piece, rise: { from: height, to: height } })),
    ...slope(to, foot, base, { from: height, to: 0 }),
  ]
}

function flatCrown(crown: Crown, sheet: Sheet, span: CrownSpan): CurvePiece[] {
  const { from, to, base, outward } = span
  const width = to - from
  const { height } = crown
  const line = (a: FlatPoint, b: FlatPoint): CurvePiece[] =>
    Math.hypot(a[0] - b[0], a[1] - b[1]) <= 1e-12 * (width + height)
      ? []
      : [{ sheet, shape: { kind: 'line', from: a, to: b } }]
  if (height === 0) return line([from, base], [to, base])
  if (crown.kind === 'half-ellipse')
    return [
      {
        sheet,
        shape: {
          kind: 'arc',
          centre: [(from + to) / 2, base],
          radii: [width / 2, height],
          start: Math.PI,
          sweep: -outward * Math.PI,
        },
      },
    ]
  const c = crown.cornerRadius
  requireBetween('crown.cornerRadius', c, [0, Math.min(height, width / 2) * (1 + 1e-12)], 'm')
  const shoulder = base + outward * (height - c)
  const top = base + outward * height
  const corner = (x: number, start: number): CurvePiece[] =>
    c === 0
      ? []
      : [
          {
            sheet,
            shape: {
              kind: 'arc',
              centre: [x, shoulder],
              radii: [c, c],
              start,
              sweep: (-outward * Math.PI) / 2,
            },
          },
        ]
  return [
    ...line([from, base], [from, shoulder]),
    ...corner(from + c, Math.PI),
    ...line([from + c, top], [to - c, top]),
    ...corner(to - c, (outward * Math.PI) / 2),
    ...line([to, shoulder], [to, base]),
  ]
}

/** Two runs and two crowns, from the start of run 2·pair to the start of the next pair. */
function pairPieces(serpentine: Serpentine, offset: FilamentOffset, pair: number): CurvePiece[] {
  const { surface, polePairs, activeLength, runSlant, crown, lift } = serpentine
  const pitch = Math.PI / polePairs
  const slant = runSlant / 2
  const reference = surface.kind === 'drum' ? surface.radius : surface.meanRadius
  const angle = serpentine.angle + offset.lateral / reference + 2 * pitch * pair
  const zigzag = isZigzag(serpentine)
  if (surface.kind === 'drum') {
    const radius = surface.radius + offset.normal
    requirePositive('radius of the filament', radius + Math.min(0, lift?.height ?? 0), 'm')
    const sheet: Sheet = { kind: 'drum', radius, referenceRadius: reference, angle, height: surface.z }
    const top = activeLength / 2
    const run = (from: number, to: number, y: number): CurvePiece => ({
      sheet,
      shape: { kind: 'line', from: [from * reference, y], to: [to * reference, -y] },
    })
    const cap = (from: number, to: number, outward: 1 | -1): CurvePiece[] =>
      zigzag
        ? []
        : crownPieces(
            crown,
            sheet,
            { from: from * reference, to: to * reference, base: outward * top, outward },
            lift,
          )
    return [
      run(-slant, slant, top),
      ...cap(slant, pitch - slant, -1),
      run(pitch - slant, pitch + slant, -top),
      ...cap(pitch + slant, 2 * pitch - slant, 1),
    ]
  }
  const height = surface.z + offset.normal
  const inner = surface.meanRadius - activeLength / 2
  const outer = surface.meanRadius + activeLength / 2
  const plane: Sheet = {
    kind: 'plane',
    origin: [0, 0, height],
    xAxis: [Math.cos(angle), Math.sin(angle), 0],
    yAxis: [-Math.sin(angle), Math.cos(angle), 0],
  }
  const at = (r: number, azimuth: number): FlatPoint => [r * Math.cos(azimuth), r * Math.sin(azimuth)]
  const run = (r0: number, from: number, r1: number, to: number): CurvePiece => ({
    sheet: plane,
    shape: { kind: 'line', from: at(r0, from), to: at(r1, to) },
  })
  const cap = (r: number, from: number, to: number, outward: 1 | -1): CurvePiece[] =>
    zigzag
      ? []
      : crownPieces(
          crown,
          { kind: 'polar', referenceRadius: r, angle, height },
          { from: from * r, to: to * r, base: r, outward },
          lift,
        )
  return [
    run(inner, -slant, outer, slant),
    ...cap(outer, slant, pitch - slant, 1),
    run(outer, pitch - slant, inner, pitch + slant),
    ...cap(inner, pitch + slant, 2 * pitch - slant, -1),
  ]
}

/**
 * The closed wave. The loops between run 1 and 2, 3 and 4 … go round counter-clockwise seen against the outward
 * normal (from outside the drum, from +z of the disc): the first run goes towards −z, or outwards on a disc.
 * Runs are taut: a slanted one is a helix on the drum, a straight line on the disc.
 */
export function serpentineCurve(serpentine: Serpentine, offset: FilamentOffset = onReferenceLine): Curve {
  requireSerpentine(serpentine)
  const pieces: CurvePiece[] = []
  for (let pair = 0; pair < serpentine.polePairs; pair++) pieces.push(...pairPieces(serpentine, offset, pair))
  return { closed: true, pieces }
}

/** One pole pair of the wave, to use its p-fold symmetry. */
export function serpentineSegment(
  serpentine: Serpentine,
  offset: FilamentOffset = onReferenceLine,
): RepeatedCurve {
  requireSerpentine(serpentine)
  return {
    segment: { closed: false, pieces: pairPieces(serpentine, offset, 0) },
    repeats: serpentine.polePairs,
  }
}

/** Filaments over the bundle, centred on the reference line; `offset` is (lateral, normal). */
export function serpentineFilaments(
  serpentine: Serpentine,
  section: BundleSection,
  orders: readonly [number, number] = serpentineBundleOrders,
): Filament[] {
  requireNotNegative('section.width', section.width, 'm')
  requireNotNegative('section.thickness', section.thickness, 'm')
  return bundleFilaments(
    (lateral, normal) => serpentineCurve(serpentine, { lateral, normal }),
    {
      across: [-section.width / 2, section.width / 2],
      normal: [-section.thickness / 2, section.thickness / 2],
    },
    orders,
  )
}

/** Mean length of one turn round the machine; a shift along the circumference does not change it. */
export function serpentineMeanTurnLength(serpentine: Serpentine, section: BundleSection): number {
  requireSerpentine(serpentine)
  const filaments = bundleFilaments(
    (_, normal) => serpentineSegment(serpentine, { lateral: 0, normal }).segment,
    { across: [0, 0], normal: [-section.thickness / 2, section.thickness / 2] },
    [1, 4],
  )
  return serpentine.polePairs * filaments.reduce((sum, f) => sum + f.weight * curveLength(f.curve), 0)
}

/**
 * Smallest room between neighbouring runs of one wave with bundles `bundleWidth` wide, at the ends of the runs
 * (disc: the inner ends); negative: they overlap. A zigzag has none, its runs meet.
 */
export function serpentineRunGap(serpentine: Serpentine, bundleWidth: number): number {
  requireSerpentine(serpentine)
  requireNotNegative('bundleWidth', bundleWidth, 'm')
  const { surface, polePairs, activeLength, runSlant } = serpentine
  const reference = surface.kind === 'drum' ? surface.radius : surface.meanRadius
  const end = surface.kind === 'drum' ? surface.radius : surface.meanRadius - activeLength / 2
  // a bundle is the wave turned by width/reference, so it narrows towards the axis as the pitch does
  return end * (Math.PI / polePairs - runSlant - bundleWidth / reference)
}
