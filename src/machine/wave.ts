/** One wave of a serpentine winding as geometry, in any one unit of length: metres for the machine, mm for its faults. */
import type { Serpentine } from '../geometry/serpentine.ts'
import type { WindingSurface } from '../geometry/winding-surface.ts'

/** Way along the run in which crowns climb to the highest lift, in lifts: common practice, no source. */
const rampLifts = 2
/** Share of the crowns' height that the climb may take. */
const rampShare = 0.75

export interface WaveFields {
  readonly polePairs: number
  readonly runLength: number
  /** [rad] */
  readonly slant: number
  readonly crownHeight: number
  readonly crown: 'half-ellipse' | 'rounded corners'
  readonly cornerRadius: number | undefined
  /** Of all phases: their crowns share one outline, so that ramps stand beside ramps and crowns over crowns. */
  readonly lifts: readonly number[]
}

/** Least height of crowns that climb so far. */
export const leastCrownHeight = (lifts: readonly number[]): number =>
  (rampLifts * greatest(lifts)) / rampShare

const greatest = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, value), 0)

const rampOf = ({ lifts, crownHeight }: WaveFields): number =>
  Math.min(rampLifts * greatest(lifts), rampShare * crownHeight)

/** Largest radius of a crown's corners that leaves its sides and its back straight or just gone. */
export function greatestCornerRadius(fields: WaveFields, surface: WindingSurface): number {
  const inner = surface.kind === 'drum' ? surface.radius : surface.meanRadius - fields.runLength / 2
  const width = inner * (Math.PI / fields.polePairs - fields.slant)
  return Math.max(0, Math.min(fields.crownHeight - rampOf(fields), width / 2))
}

/** The wave on its surface; `away` is the direction away from the magnets against the surface's outward normal. */
export function waveOn(
  fields: WaveFields,
  place: {
    readonly surface: WindingSurface
    readonly away: 1 | -1
    readonly lift: number
    readonly angle: number
  },
): Serpentine {
  const { surface, away, lift, angle } = place
  const height = fields.crownHeight
  const ramp = rampOf(fields)
  return {
    surface,
    polePairs: fields.polePairs,
    activeLength: fields.runLength,
    runSlant: fields.slant,
    crown:
      fields.crown === 'half-ellipse'
        ? { kind: 'half-ellipse', height }
        : {
            kind: 'rounded-corners',
            height,
            cornerRadius: fields.cornerRadius ?? greatestCornerRadius(fields, surface),
          },
    ...(ramp === 0 ? {} : { lift: { height: away * lift, ramp } }),
    angle,
  }
}
