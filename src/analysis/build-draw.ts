/** Chance of a build: which parts err, in how many ways, and the numbers drawn for them. */
import type { Machine } from '../machine/machine.ts'
import { type ToleranceName, toleranceNames } from '../machine/tolerance.ts'
import { counterUniforms } from '../numerics/counter-random.ts'
import { sobolPoints } from '../numerics/low-discrepancy.ts'
import { normalQuantile } from '../numerics/normal-quantile.ts'
import type { ConductorLayout } from './conductor-layout.ts'

/** The z that nine of ten normal numbers keep within, either way. */
export const nineOfTen = normalQuantile(0.95)

/** The same of the length of an arrow whose two components are normal: √(2 ln 10) deviations. */
export const nineOfTenArrows = Math.sqrt(2 * Math.log(10))

/**
 * How the errors of a tolerance are spread: normal along one way; an arrow of any direction, two numbers each; or, of
 * what is counted, evenly over its chance.
 */
export type ErrorShape = 'normal' | 'arrow' | 'count'

export interface ErrorGroup {
  readonly name: ToleranceName
  readonly shape: ErrorShape
  /** Numbers to draw. */
  readonly count: number
}

/** Standard numbers of one build by tolerance: normal of deviation 1, or of what is counted even between 0 and 1. */
export type BuildDraw = Readonly<Record<ToleranceName, Float64Array>>

/** Runs of a wave that err one by one; none of a coil. */
export const runsOf = (layout: ConductorLayout, coil: number): number => {
  const { repeats } = layout.shapes[layout.coils[coil]!.shape]!
  return repeats > 1 ? 2 * repeats : 0
}

/** Tolerances that this machine can have: a drum has no face to wobble, one disc no second face. */
export function errorGroups({ rotor, stator }: Machine, layout: ConductorLayout): readonly ErrorGroup[] {
  const drum = rotor.arrangement === 'drum'
  const rings = rotor.rings.length
  const magnets = rotor.rings.reduce((sum, ring) => sum + ring.length, 0)
  const coils = layout.coils.length
  const runs = layout.coils.reduce((sum, _, k) => sum + runsOf(layout, k), 0)
  const wave = stator.winding.kind === 'serpentine'
  const counts: Readonly<Record<ToleranceName, readonly [ErrorShape, number]>> = {
    magnetAround_mm: ['normal', magnets],
    magnetAcross_mm: ['normal', magnets],
    magnetHeight_mm: ['normal', magnets],
    magnetStrength_percent: ['normal', magnets],
    rotorCentre_mm: ['arrow', 2 * rings],
    discWobble_mm: ['arrow', drum ? 0 : 2 * rings],
    faceDistance_mm: ['normal', rotor.faceDistance === undefined ? 0 : 1],
    statorDistance_mm: ['normal', 1],
    // a drum's winding that leans is nearer at one end and farther at the other: next to nothing is left
    statorTilt_mm: ['arrow', drum ? 0 : 2],
    statorCentre_mm: ['arrow', 2],
    coilAround_mm: ['normal', coils + runs],
    // a wave on a disc cannot slip along the radius as a whole
    coilAcross_mm: ['normal', wave && !drum ? 0 : coils],
    coilHeight_mm: ['normal', coils],
    bundleDepth_mm: ['normal', coils],
    turnLength_percent: ['normal', coils],
    miscounted_percent: ['count', coils],
    wireDiameter_percent: ['normal', 1],
  }
  return toleranceNames.map((name) => ({ name, shape: counts[name][0], count: counts[name][1] }))
}

/** Numbers that count one by one and take a dimension each; of more than these only the mean does. */
const fewNumbers = 4

const dimensionsOf = ({ shape, count }: ErrorGroup): number =>
  shape === 'count' ? 0 : count <= fewNumbers ? count : 1

/**
 * Draws of `count` builds. A machine has more errors than Sobol' points have dimensions, but most results feel the mean
 * of like errors first: of many alike the mean comes from a dimension of the scrambled points, and what each differs
 * from the mean from a generator by counter, which leaves every one of them normal and independent. The first n builds
 * of a seed are the same however many are asked for.
 */
export function buildDraws(
  groups: readonly ErrorGroup[],
  count: number,
  seed: number,
): (build: number) => BuildDraw {
  const dimensions = groups.reduce((sum, group) => sum + dimensionsOf(group), 0)
  const points = sobolPoints(count, dimensions, seed)
  return (build) => {
    let at = build * dimensions
    const next = () => normalQuantile(points[at++]!)
    const entries = groups.map((group, stream): [ToleranceName, Float64Array] => {
      const n = group.count
      if (group.shape !== 'count' && n <= fewNumbers)
        return [group.name, Float64Array.from({ length: n }, next)]
      const uniform = counterUniforms(n, { seed, draw: build, stream })
      if (group.shape === 'count') return [group.name, uniform]
      const own = uniform.map(normalQuantile)
      const mean = own.reduce((sum, z) => sum + z, 0) / n
      const common = next() / Math.sqrt(n)
      return [group.name, own.map((z) => z - mean + common)]
    })
    return Object.fromEntries(entries) as Record<ToleranceName, Float64Array>
  }
}
