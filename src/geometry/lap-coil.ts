/** One overlapped (lap) coil: two legs a span apart, its ends bent over those of the neighbours in a diamond. */
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../refusal/require.ts'
import type { BundleSection } from './bundle.ts'
import { bundleFilaments } from './bundle.ts'
import { type Curve, type CurvePiece, curveLength, type Rise, type Sheet } from './curve.ts'
import type { WindingSurface } from './winding-surface.ts'
import { requireWindingSurface } from './winding-surface.ts'

export interface LapCoil {
  readonly surface: WindingSurface
  /** Azimuth of the coil's middle. */
  readonly angle: number
  /** Angle about the shaft between the middles of its legs, up to half a turn. */
  readonly span: number
  /** Length of a leg along z (drum) or the radius (disc). */
  readonly activeLength: number
  /** How far the tips of the ends stand out beyond the legs, for the middle turn. */
  readonly endHeight: number
  /** First part of that height, in which a leg carries on straight, and climbs where its half of the end lies higher. */
  readonly ramp: number
  /** Off the surface along its outward normal: the leg at the greater azimuth, and the half of each end next to it. */
  readonly step: { readonly leg: number; readonly end: number }
  /** Angle on either side of the tip over which an end changes level. */
  readonly tipAngle: number
}

function requireLapCoil(coil: LapCoil): void {
  const { surface, angle, span, activeLength, endHeight, ramp, step, tipAngle } = coil
  requireWindingSurface(surface)
  requireFinite('angle', angle, 'rad')
  requireBetween('span', span, [1e-6, Math.PI * (1 + 1e-12)], 'rad')
  requirePositive('activeLength', activeLength, 'm')
  requirePositive('endHeight', endHeight, 'm')
  requireBetween('ramp', ramp, [0, endHeight], 'm')
  if (ramp === endHeight)
    refuse({ name: 'ramp', condition: `below ${endHeight} m`, value: ramp, unit: 'm', code: 'above-maximum' })
  requireFinite('step.leg', step.leg, 'm')
  requireFinite('step.end', step.end, 'm')
  requireBetween('tipAngle', tipAngle, [0, span / 4], 'rad')
}

const referenceOf = ({ surface }: LapCoil): number =>
  surface.kind === 'drum' ? surface.radius : surface.meanRadius

/** Where a turn `across` outside the middle one leaves its leg: azimuth from the coil's middle, z or radius. */
function legEnd(coil: LapCoil, across: number, outward: 1 | -1): { azimuth: number; base: number } {
  const { surface, span, activeLength } = coil
  if (surface.kind === 'drum')
    return { azimuth: span / 2 + across / surface.radius, base: surface.z + (outward * activeLength) / 2 }
  // a leg keeps its width: its turns run beside the radius through its middle, not along radii of their own
  const r = surface.meanRadius + (outward * activeLength) / 2
  return { azimuth: span / 2 + Math.atan2(across, r), base: Math.hypot(r, across) }
}

/** Rise of the diamond's sides per angle. */
const slopeOf = ({ endHeight, ramp, span }: LapCoil): number => (2 * (endHeight - ramp)) / span

/**
 * The closed turn `across` outside the middle one and `normal` off the surface, counter-clockwise seen against the
 * outward normal (from outside the drum, from +z of the disc). The turns of an end all lean alike, so that ends of
 * coils turned about the shaft never meet on one level.
 */
export function lapCoilCurve(
  coil: LapCoil,
  { across, normal }: { readonly across: number; readonly normal: number },
): Curve {
  requireLapCoil(coil)
  requireFinite('across', across, 'm')
  requireFinite('normal', normal, 'm')
  const { surface, angle, span, activeLength, ramp, step, tipAngle } = coil
  const drum = surface.kind === 'drum'
  const reference = referenceOf(coil)
  if (drum)
    requirePositive('radius of the filament', surface.radius + normal + Math.min(0, step.leg, step.end), 'm')
  const sheet: Sheet = drum
    ? { kind: 'drum', radius: surface.radius + normal, referenceRadius: reference, angle, height: 0 }
    : { kind: 'polar', referenceRadius: reference, angle, height: surface.z + normal }
  // counter-clockwise: with z up the greater azimuth is the right-hand side, with the radius up the left-hand one
  const right = drum ? 1 : -1
  const legLevel = (side: number) => (side > 0 ? step.leg : 0)
  const endLevel = (side: number) => (side > 0 ? step.end : 0)
  const line = (from: readonly [number, number], to: readonly [number, number], rise: Rise): CurvePiece => ({
    sheet,
    shape: { kind: 'line', from: [from[0] * reference, from[1]], to: [to[0] * reference, to[1]] },
    rise,
  })
  const inner = legEnd(coil, across, -1)
  const outer = legEnd(coil, across, 1)
  const leg = (side: 1 | -1, upward: boolean): CurvePiece => {
    const rise = { from: legLevel(side), to: legLevel(side) }
    const [from, to] = upward ? [inner, outer] : [outer, inner]
    if (drum) return line([side * from.azimuth, from.base], [side * to.azimuth, to.base], rise)
    const at = angle + (side * span) / 2
    const ends = [surface.meanRadius - activeLength / 2, surface.meanRadius + activeLength / 2]
    const [first, last] = upward ? ends : [ends[1], ends[0]]
    return {
      sheet: {
        kind: 'plane',
        origin: [0, 0, surface.z + normal],
        xAxis: [Math.cos(at), Math.sin(at), 0],
        yAxis: [-Math.sin(at), Math.cos(at), 0],
      },
      shape: { kind: 'line', from: [first!, side * across], to: [last!, side * across] },
      rise,
    }
  }
  // from the leg at `side` over the tip to the other one
  const end = (side: number, outward: 1 | -1): CurvePiece[] => {
    const { azimuth, base } = outward > 0 ? outer : inner
    if (azimuth <= tipAngle)
      refuse({
        name: 'across',
        condition: 'so that the turn keeps its legs apart',
        value: across,
        unit: 'm',
        code: 'conflict',
      })
    const foot = base + outward * ramp
    const at = (φ: number) => foot + outward * slopeOf(coil) * (azimuth - Math.abs(φ))
    if (!drum && outward < 0) requirePositive('radius inside the inner ends', at(0), 'm')
    const [near, far] = [side, -side]
    const middle = (endLevel(near) + endLevel(far)) / 2
    const up = { from: endLevel(near), to: middle }
    const down = { from: middle, to: endLevel(far) }
    const flat = (s: number) => ({ from: endLevel(s), to: endLevel(s) })
    const straight =
      ramp === 0
        ? { first: [], last: [] }
        : {
            first: [
              line([near * azimuth, base], [near * azimuth, foot], {
                from: legLevel(near),
                to: endLevel(near),
              }),
            ],
            last: [
              line([far * azimuth, foot], [far * azimuth, base], { from: endLevel(far), to: legLevel(far) }),
            ],
          }
    const tip =
      step.end === 0
        ? []
        : tipAngle === 0
          ? [line([0, at(0)], [0, at(0)], { from: endLevel(near), to: endLevel(far) })]
          : [
              line([near * tipAngle, at(tipAngle)], [0, at(0)], up),
              line([0, at(0)], [far * tipAngle, at(tipAngle)], down),
            ]
    const reach = step.end === 0 ? 0 : tipAngle
    return [
      ...straight.first,
      line([near * azimuth, foot], [near * reach, at(reach)], flat(near)),
      ...tip,
      line([far * reach, at(reach)], [far * azimuth, foot], flat(far)),
      ...straight.last,
    ]
  }
  return {
    closed: true,
    pieces: [leg(right, true), ...end(right, 1), leg(-right as 1 | -1, false), ...end(-right, -1)],
  }
}

/** Mean length of one turn over the bundle. */
export function lapCoilMeanTurnLength(coil: LapCoil, section: BundleSection): number {
  requireNotNegative('section.width', section.width, 'm')
  requireNotNegative('section.thickness', section.thickness, 'm')
  return bundleFilaments(
    (across, normal) => lapCoilCurve(coil, { across, normal }),
    {
      across: [-section.width / 2, section.width / 2],
      normal: [-section.thickness / 2, section.thickness / 2],
    },
    [3, 3],
  ).reduce((sum, { curve, weight }) => sum + weight * curveLength(curve), 0)
}

/** Greatest distance of the outermost turn's tip from the coil's middle, along z or the radius. */
export function lapCoilReach(
  coil: LapCoil,
  legWidth: number,
): { readonly inner: number; readonly outer: number } {
  requireLapCoil(coil)
  requireNotNegative('legWidth', legWidth, 'm')
  const middle = coil.surface.kind === 'drum' ? coil.surface.z : coil.surface.meanRadius
  const tip = (outward: 1 | -1) => {
    const { azimuth, base } = legEnd(coil, legWidth / 2, outward)
    return outward * (base - middle) + coil.ramp + slopeOf(coil) * azimuth
  }
  return { inner: tip(-1), outer: tip(1) }
}

/** Depth that a bundle takes in the ends: where they are crowded it must be deeper than in the legs, as copper stays copper. */
export function lapEndDepth(coil: LapCoil, section: BundleSection, count: number): number {
  requireLapCoil(coil)
  const r =
    coil.surface.kind === 'drum'
      ? coil.surface.radius
      : Math.max(
          coil.surface.meanRadius - lapCoilReach(coil, section.width).inner,
          1e-3 * coil.surface.meanRadius,
        )
  // neighbours' turns lie 2π/count apart, and less across their direction the flatter they lean
  const slope = slopeOf(coil)
  const across = ((2 * Math.PI) / count) * r * (slope / Math.hypot(slope, r))
  return section.thickness * Math.max(1, section.width / across)
}

export interface LapRoom {
  /** Between the sides of neighbouring legs on one level, at the narrowest place. */
  readonly legs: number
  /** Between the two halves of the ends through the winding; undefined where coils do not overlap. */
  readonly ends: number | undefined
  /** The smaller of the two. */
  readonly room: number
}

/**
 * Room of `count` equal coils, evenly placed, with what is around them; negative: they are in each other's way. A
 * single coil has only its own legs to clear.
 */
export function lapCoilRoom(coil: LapCoil, section: BundleSection, count: number): LapRoom {
  requireLapCoil(coil)
  requirePositive('count', count)
  if (!Number.isInteger(count))
    refuse({ name: 'count', condition: 'a whole number', value: count, code: 'not-a-choice' })
  requireNotNegative('section.width', section.width, 'm')
  const { surface, span, activeLength, step } = coil
  const pitch = (2 * Math.PI) / count
  const sides = (apart: number): number => {
    const a = Math.abs(apart - 2 * Math.PI * Math.round(apart / (2 * Math.PI)))
    if (surface.kind === 'drum') {
      const radius = surface.radius + Math.min(0, step.leg) - section.thickness / 2
      return radius * a - section.width
    }
    const r = surface.meanRadius - activeLength / 2
    return 2 * (r * Math.sin(a / 2) - (section.width / 2) * Math.cos(a / 2))
  }
  const oneLevel = Math.abs(step.leg) < section.thickness
  // the leg at the greater azimuth against those at the lesser one of all coils, its own among them
  const opposite = Array.from({ length: count }, (_, k) => k * pitch - span)
  const legs = Math.min(
    ...(count > 1 ? [sides(pitch)] : []),
    ...(oneLevel ? opposite.map((apart) => sides(apart)) : []),
    // on two levels too a coil needs a hole
    sides(span),
  )
  const width =
    section.width / (surface.kind === 'drum' ? surface.radius : surface.meanRadius - activeLength / 2)
  const overlapping = count > 1 && span + width > pitch
  const ends = overlapping ? Math.abs(step.end) - lapEndDepth(coil, section, count) : undefined
  return { legs, ends, room: Math.min(legs, ends ?? Number.MAX_VALUE) }
}
