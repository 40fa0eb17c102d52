/** Room between two waves of one machine: side by side where their runs share a level, over each other at the crowns. */
import { requireNotNegative } from '../refusal/require.ts'
import type { BundleSection } from './bundle.ts'
import type { Serpentine } from './serpentine.ts'

/** A wave with its bundle; several layers of it count as one thick bundle about their middle. */
export interface PlacedWave {
  readonly serpentine: Serpentine
  readonly bundle: BundleSection
}

export interface WaveRoom {
  /** Between the sides of neighbouring runs, at their narrowest; negative: they lie on each other. */
  readonly beside: number
  /** Between runs, ramps included, through the winding. */
  readonly over: number
  /** Between the crowns through the winding: they always cross somewhere. */
  readonly crowns: number
  /** What is left in all: one of beside and over must be there, and crowns. */
  readonly room: number
}

type Interval = readonly [low: number, high: number]

const between = (a: Interval, b: Interval): number => Math.max(a[0], b[0]) - Math.min(a[1], b[1])
const hull = (a: Interval, b: Interval): Interval => [Math.min(a[0], b[0]), Math.max(a[1], b[1])]

/** Levels of runs and crowns: radius on a drum, height on a disc. */
function levels({ serpentine: { surface, lift }, bundle }: PlacedWave) {
  const level = surface.kind === 'drum' ? surface.radius : surface.z
  const runs: Interval = [level - bundle.thickness / 2, level + bundle.thickness / 2]
  const height = lift?.height ?? 0
  const crowns: Interval = [runs[0] + height, runs[1] + height]
  return { runs: hull(runs, crowns), crowns }
}

/**
 * Smallest angle about the shaft between a run of one wave and the runs of another with as many poles, at the end
 * where two that lean against each other come closest; below zero where they cross.
 */
function runAngle(a: Serpentine, b: Serpentine): number {
  const pitch = Math.PI / a.polePairs
  const turns = (b.angle - a.angle) / pitch
  const near = Math.floor(turns)
  return [near - 1, near, near + 1, near + 2].reduce((least, k) => {
    const apart = Math.abs(turns - k) * pitch
    // runs an odd number of pitches apart lean against each other
    const lean = k % 2 === 0 ? Math.abs(a.runSlant - b.runSlant) / 2 : (a.runSlant + b.runSlant) / 2
    return Math.min(least, apart - lean)
  }, Number.MAX_VALUE)
}

/** Room between two waves of the same pole count on surfaces of the same kind. */
export function waveRoom(a: PlacedWave, b: PlacedWave): WaveRoom {
  for (const { bundle } of [a, b]) {
    requireNotNegative('bundle.width', bundle.width, 'm')
    requireNotNegative('bundle.thickness', bundle.thickness, 'm')
  }
  const places = [a, b].map(({ serpentine: { surface, activeLength }, bundle }) =>
    surface.kind === 'drum'
      ? { end: surface.radius - bundle.thickness / 2, angle: bundle.width / surface.radius }
      : { end: surface.meanRadius - activeLength / 2, angle: bundle.width / surface.meanRadius },
  )
  const end = Math.min(...places.map((place) => place.end))
  const beside =
    end * (runAngle(a.serpentine, b.serpentine) - places.reduce((sum, { angle }) => sum + angle / 2, 0))
  const [first, second] = [levels(a), levels(b)]
  const over = between(first.runs, second.runs)
  const crowns = between(first.crowns, second.crowns)
  return { beside, over, crowns, room: Math.min(Math.max(beside, over), crowns) }
}
