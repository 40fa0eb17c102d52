/** How near the magnets of a machine come to losing strength for good, in frost, in heat and in a storm's short. */
import { type MagnetGrade, magnetGrades } from '../data/magnet-grade.ts'
import type { Machine } from '../machine/machine.ts'
import {
  type Demagnetization,
  demagnetization,
  demagnetizationTemperature,
  type MagnetMaterial,
} from '../physics/magnetics/demagnetization.ts'
import { referenceTemperature } from './air-gap-field.ts'
import { type ShortCurrents, shortCurrents } from './armature-field.ts'
import type { Chain } from './compute.ts'
import { coarseCount, interpolated, type OwnLoad, type WindingLoad } from './magnet-load.ts'

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

/** Moments of the sudden short, evenly over its first period, besides the steady one. */
const moments = 12

type Parts = Pick<Chain, 'machine' | 'field' | 'voltage' | 'magnetLoad'> & {
  readonly runaway: Pick<Chain['runaway'], 'speed'>
}

/** H of the short's currents at the coarse places at the rotor angle and moment when the worst point is worst [A/m]. */
function worstArmature(
  polePairs: number,
  { magnet, coarseShare }: OwnLoad,
  { angles, fields }: WindingLoad,
  currents: ShortCurrents,
): Float64Array {
  const J = Math.abs(magnet.polarization) / μ0
  const still = coarseShare.map((share) => share * J)
  const sense = Math.sign(magnet.polarization)
  const here = new Float64Array(coarseCount)
  const worst = new Float64Array(coarseCount)
  let least = still.reduce((low, H) => Math.min(low, H))
  angles.forEach((angle, a) => {
    for (let m = 1; m <= moments + 1; m++) {
      const since = m > moments ? Number.POSITIVE_INFINITY : (2 * Math.PI * m) / moments
      const i = currents.at(polePairs * angle, since)
      here.fill(0)
      for (let k = 0; k < fields.length; k++)
        for (let p = 0; p < coarseCount; p++) here[p]! += sense * i[k]! * fields[k]![a * coarseCount + p]!
      let lowest = Number.POSITIVE_INFINITY
      for (let p = 0; p < coarseCount; p++) lowest = Math.min(lowest, still[p]! + here[p]!)
      if (lowest < least) {
        least = lowest
        worst.set(here)
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
  const { machine, field, voltage, magnetLoad, runaway } = parts
  const grade = magnetGrades.find(({ name }) => name === machine.rotor.magnet.grade)
  const own = grade === undefined ? undefined : magnetLoad.own()
  if (grade === undefined || own === undefined) return undefined
  const { magnet, points, weights, share: ownShare } = own
  const currents = shortCurrents(machine, voltage, {
    speed: runaway.speed,
    temperature: machine.site.ambient,
  })
  const none = new Float64Array(weights.length)
  const winding = currents.peak > 0 ? magnetLoad.winding() : undefined
  const armature =
    winding === undefined
      ? none
      : interpolated(worstArmature(machine.rotor.polePairs, own, winding, currents), magnet, points)

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
