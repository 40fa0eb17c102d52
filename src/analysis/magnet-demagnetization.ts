/** How near the magnets of a machine come to losing strength for good, in frost, in heat and in a storm's short. */
import { type MagnetGrade, magnetGrades } from '../data/magnet-grade.ts'
import type { Machine } from '../machine/machine.ts'
import {
  type Demagnetization,
  demagnetization,
  demagnetizationTemperature,
  type MagnetMaterial,
} from '../physics/magnetics/demagnetization.ts'
import { type Magnet, magnetAxis, magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { magnetVolumePoints } from '../physics/magnetics/magnet-volume.ts'
import { type RotorField, referenceTemperature } from './air-gap-field.ts'
import { armatureFields, type ShortCurrents, shortCurrents, tellingAngles } from './armature-field.ts'
import type { Chain } from './compute.ts'

const μ0 = 4e-7 * Math.PI

/** Temperatures that the magnets meet [K]. */
export interface MagnetTemperatures {
  readonly coldest: number
  /** At rest, as in the sun. */
  readonly hottest: number
  /** In work, when a short may come. */
  readonly hottestAtWork: number
}

export interface MagnetCase extends Omit<Demagnetization, 'worstPoint'> {
  /** [K] */
  readonly temperature: number
  /** `kneeRatio` with the lowest knee and the steepest coefficient that the grade leaves open. */
  readonly greatestRatio: number
}

export interface MagnetDemagnetization {
  readonly grade: string
  /** Of the field, and so of the volts, all of which comes back [1/K of the value at 20 °C]. */
  readonly reversibleCoefficient: number
  /** Without current. */
  readonly rest: { readonly cold: MagnetCase; readonly hot: MagnetCase }
  /** The winding shorted at its leads at the speed that it reaches in a storm without load. */
  readonly short: { readonly cold: MagnetCase; readonly hot: MagnetCase }
  /** Temperature at which the worst point comes to the knee [K], by heat (neodymium) or by cold (ferrite). */
  readonly limit: { readonly side: 'hot' | 'cold'; readonly rest: number; readonly short: number }
  readonly armature: {
    /** [rad/s] */
    readonly speed: number
    /** Greatest of the phases once the short is steady, peak [A]. */
    readonly steadyCurrent: number
    /** H that currents add at the worst point at the worst moment, at the field's temperature [A/m]. */
    readonly worstField: number
  }
}

/**
 * Outermost points, in half extents from the middle: across the magnetisation and along it. H along the magnetisation
 * is bounded on faces, edges and corners (only the component across an edge grows, as a logarithm). On the pole faces
 * its limit from inside is what counts; towards their rims it still rises by a few per cent of its value in a volume
 * too small to tell, so that the points stay a twentieth away from the sides.
 */
const outermost = { across: 0.95, along: 0.998 } as const

const gridPlaces = [-outermost.across, -0.5, 0, 0.5, outermost.across] as const

type Local = readonly [x: number, y: number, z: number]

/** Half extents of a magnet along its own axes, from its centre [m]. */
function halfExtents(magnet: Magnet): Local {
  if ('size' in magnet) return [magnet.size[0] / 2, magnet.size[1] / 2, magnet.size[2] / 2]
  if ('radius' in magnet) return [magnet.radius, magnet.radius, magnet.height / 2]
  let [x, y] = [0, 0]
  magnet.outline.forEach((value, i) => {
    if (i % 2 === 0) x = Math.max(x, Math.abs(value))
    else y = Math.max(y, Math.abs(value))
  })
  return [x, y, magnet.height / 2]
}

/** Where the magnet is watched without standing for a volume, in its own axes: close under its pole faces. */
function watchedPlaces(magnet: Magnet): Local[] {
  const [a, b, c] = halfExtents(magnet)
  if ('outline' in magnet) {
    // the poles may lie on the side walls: corners and middles of the outline, drawn a little towards the middle
    const corners = Array.from({ length: magnet.outline.length / 2 }, (_, k) => [
      magnet.outline[2 * k]!,
      magnet.outline[2 * k + 1]!,
    ])
    const middle = [0, 1].map((axis) => corners.reduce((sum, at) => sum + at[axis]!, 0) / corners.length)
    const rim = corners.flatMap((at, k) => {
      const next = corners[(k + 1) % corners.length]!
      return [at, [(at[0]! + next[0]!) / 2, (at[1]! + next[1]!) / 2]]
    })
    const drawnIn = rim.map((at) => middle.map((m, axis) => m + outermost.across * (at[axis]! - m)))
    return [-outermost.along, 0, outermost.along].flatMap((z) =>
      [middle, ...drawnIn].map(([x, y]): Local => [x!, y!, z * c]),
    )
  }
  const grid = gridPlaces.flatMap((x) => gridPlaces.map((y) => [x, y] as const))
  const face =
    'size' in magnet
      ? grid
      : // the square's rings carried to the circle's
        grid.map(([x, y]) => {
          const ring = Math.max(Math.abs(x), Math.abs(y)) / Math.max(Math.hypot(x, y), 1e-9)
          return [x * ring, y * ring] as const
        })
  return [-outermost.along, outermost.along].flatMap((z) =>
    face.map(([x, y]): Local => [x * a, y * b, z * c]),
  )
}

const inMachine = ({ centre, frame }: Magnet, [x, y, z]: Local): number[] =>
  centre.map((at, axis) => at + x * frame[0][axis]! + y * frame[1][axis]! + z * frame[2][axis]!)

/** Three places across and along, two through the magnet's extents: what carries the winding's smoother field. */
const steps = [-1, 0, 1] as const
const coarsePlaces: readonly Local[] = [-1, 1].flatMap((z) =>
  steps.flatMap((x) => steps.map((y): Local => [x, y, z])),
)
const coarseCount = coarsePlaces.length

const quadraticWeights = (t: number): readonly number[] => [(t * (t - 1)) / 2, 1 - t * t, (t * (t + 1)) / 2]

/** Values at the coarse places carried to points of the magnet, quadratic across and linear through. */
function interpolated(values: Float64Array, magnet: Magnet, points: Float64Array): Float64Array {
  const extents = halfExtents(magnet)
  return Float64Array.from({ length: points.length / 3 }, (_, p) => {
    const [x, y, z] = magnet.frame.map((row, edge) => {
      const along = row.reduce((sum, u, axis) => sum + u * (points[3 * p + axis]! - magnet.centre[axis]!), 0)
      return along / extents[edge]!
    })
    const wx = quadraticWeights(x!)
    const wy = quadraticWeights(y!)
    let sum = 0
    for (let at = 0; at < coarseCount; at++)
      sum +=
        ((at < coarseCount / 2 ? 1 - z! : 1 + z!) / 2) *
        wx[Math.floor(at / 3) % 3]! *
        wy[at % 3]! *
        values[at]!
    return sum
  })
}

/** Gauss points along each edge of a magnet. */
const volumeOrder = 4

/** Error of a distant magnet's share; poles that alternate make it cancel further. */
const sourceError = 1e-3

/** μ0 H/J along a magnet's axis at points in it, all magnets at their common J. */
function ownShares(field: RotorField, magnet: Magnet, points: Float64Array): Float64Array {
  const B = magnetFluxDensity(field.sources, points, { relativeError: sourceError })
  const [x, y, z] = magnetAxis(magnet)
  return Float64Array.from(
    { length: points.length / 3 },
    (_, i) => (B[3 * i]! * x + B[3 * i + 1]! * y + B[3 * i + 2]! * z) / magnet.polarization - 1,
  )
}

/**
 * The magnet that stands for all. Poles that alternate bear alike, those on the disc nearer to the winding the most;
 * where they do not, or a pole is made of pieces, the one whose middle bears most.
 */
function hardestWorking({ rotor }: Machine, field: RotorField, distance: number): Magnet | undefined {
  const magnets: readonly Magnet[] = field.magnets.filter(({ polarization }) => polarization !== 0)
  const discs = rotor.arrangement === 'two-discs' ? 2 : 1
  if (rotor.alternating && magnets.length === discs * rotor.poleCount)
    return magnets[discs === 2 && distance > rotor.faceDistance! / 2 ? rotor.poleCount : 0]
  const shares = magnets.map((magnet) => ownShares(field, magnet, Float64Array.from(magnet.centre))[0]!)
  return magnets[shares.indexOf(Math.min(...shares))]
}

/** Moments of the sudden short, evenly over its first period, besides the steady one. */
const moments = 12

type Parts = Pick<Chain, 'machine' | 'field' | 'layout' | 'voltage'> & {
  readonly runaway: Pick<Chain['runaway'], 'speed'>
}

/** H of the short's currents at the coarse places at the rotor angle and moment when the worst point is worst [A/m]. */
function worstArmature({ machine, layout, field }: Parts, magnet: Magnet, currents: ShortCurrents) {
  const [a, b, c] = halfExtents(magnet)
  const points = Float64Array.from(
    coarsePlaces.flatMap(([x, y, z]) => inMachine(magnet, [x * a, y * b, z * c])),
  )
  const angles = tellingAngles(machine, layout)
  const fields = armatureFields(machine, layout, { points, direction: magnetAxis(magnet), angles })
  const still = ownShares(field, magnet, points).map((share) => (share * Math.abs(magnet.polarization)) / μ0)
  const sense = Math.sign(magnet.polarization)
  let worst = new Float64Array(coarseCount)
  let least = Math.min(...still)
  angles.forEach((angle, a) => {
    for (let m = 1; m <= moments + 1; m++) {
      const since = m > moments ? Number.POSITIVE_INFINITY : (2 * Math.PI * m) / moments
      const i = currents.at(machine.rotor.polePairs * angle, since)
      const H = Float64Array.from(
        still,
        (_, p) => sense * i.reduce((sum, I, k) => sum + I * fields[k]![a * coarseCount + p]!, 0),
      )
      const here = still.reduce((low, own, p) => Math.min(low, own + H[p]!), Number.POSITIVE_INFINITY)
      if (here < least) {
        least = here
        worst = H
      }
    }
  })
  return worst
}

/** Least share of their value at 20 °C that linear coefficients may leave of remanence and coercivity. */
const leastShare = 0.01

/** The grade at a temperature [K]; `spreads` of 1 takes knee and coefficient as low and as steep as it leaves open. */
function materialAt(
  { rotor }: Machine,
  grade: MagnetGrade,
  temperature: number,
  spreads: 0 | 1,
): MagnetMaterial {
  const share = (coefficient: number) =>
    Math.max(leastShare, 1 + coefficient * (temperature - referenceTemperature))
  const {
    coercivityCoefficient_percent_per_K: β,
    coercivityCoefficientSpread_percent_per_K: steeper,
    intrinsicCoercivity_kA_per_m: HcJ,
  } = grade
  return {
    remanence: rotor.magnet.remanence * share(rotor.magnet.temperatureCoefficient),
    recoilPermeability: rotor.magnet.recoilPermeability,
    intrinsicCoercivity: 1000 * HcJ * share((β + spreads * Math.sign(β) * steeper) / 100),
    squareness: grade.squareness - spreads * grade.squarenessSpread,
  }
}

/**
 * Demagnetisation of one magnet that stands for all: by its own field, its neighbours and their images, at rest and
 * with the currents of a winding shorted in a storm (suddenly, copper at the air's temperature, rotor angle and moment
 * the worst). Fields and currents follow the remanence. Undefined where no grade is named.
 */
export function magnetDemagnetization(
  parts: Parts,
  { coldest, hottest, hottestAtWork }: MagnetTemperatures,
): MagnetDemagnetization | undefined {
  const { machine, field, layout, voltage, runaway } = parts
  const grade = magnetGrades.find(({ name }) => name === machine.rotor.magnet.grade)
  if (grade === undefined) return undefined
  const magnet = hardestWorking(machine, field, layout.shapes[0]!.distance)
  if (magnet === undefined) return undefined
  const volume = magnetVolumePoints(magnet, volumeOrder)
  const watched = watchedPlaces(magnet).flatMap((place) => inMachine(magnet, place))
  const points = Float64Array.of(...volume.points, ...watched)
  const weights = Float64Array.of(...volume.weights, ...new Float64Array(watched.length / 3))
  const ownShare = ownShares(field, magnet, points)
  const currents = shortCurrents(machine, voltage, {
    speed: runaway.speed,
    temperature: machine.site.ambient,
  })
  const none = new Float64Array(weights.length)
  const armature =
    currents.peak > 0 ? interpolated(worstArmature(parts, magnet, currents), magnet, points) : none

  const caseAt = (temperature: number, applied: Float64Array): MagnetCase => {
    const load = (spreads: 0 | 1) => {
      const material = materialAt(machine, grade, temperature, spreads)
      const appliedField = applied.map((H) => (H * material.remanence) / field.remanence)
      return demagnetization({ material, ownShare, appliedField, weights })
    }
    const { worstPoint: _, ...nominal } = load(0)
    return {
      ...nominal,
      temperature,
      greatestRatio: load(1).kneeRatio,
    }
  }

  const J = Math.abs(magnet.polarization)
  const at20 = materialAt(machine, grade, referenceTemperature, 0)
  const worstIn = (applied: Float64Array): number =>
    ownShare.reduce(
      (worst, share, i) =>
        (share * J) / μ0 + applied[i]! < (ownShare[worst]! * J) / μ0 + applied[worst]! ? i : worst,
      0,
    )
  const limitOf = (applied: Float64Array): number => {
    const worst = worstIn(applied)
    const H = (ownShare[worst]! * J) / μ0 + applied[worst]!
    return demagnetizationTemperature({
      field: (Math.max(0, -H) * at20.remanence) / field.remanence,
      kneeField: at20.squareness * at20.intrinsicCoercivity,
      temperature: referenceTemperature,
      remanenceCoefficient: machine.rotor.magnet.temperatureCoefficient,
      coercivityCoefficient: grade.coercivityCoefficient_percent_per_K / 100,
    })
  }
  return {
    grade: grade.name,
    reversibleCoefficient: machine.rotor.magnet.temperatureCoefficient,
    rest: { cold: caseAt(coldest, none), hot: caseAt(hottest, none) },
    short: { cold: caseAt(coldest, armature), hot: caseAt(hottestAtWork, armature) },
    limit: {
      side: grade.coercivityCoefficient_percent_per_K < 0 ? 'hot' : 'cold',
      rest: limitOf(none),
      short: limitOf(armature),
    },
    armature: {
      speed: runaway.speed,
      steadyCurrent: currents.peak,
      worstField: armature[worstIn(armature)]!,
    },
  }
}
