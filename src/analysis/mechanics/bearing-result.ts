/** How long the two bearings last in the winds of the site, and how near a storm comes to denting them. */
import { deepGrooveBearings, ratingSpread } from '../../data/deep-groove-bearing.ts'
import type { Bearings } from '../../machine/shaft-side.ts'
import {
  alternatingLife,
  bearingLife,
  equivalentBearingLoad,
  staticBearingLoad,
} from '../../physics/mechanics/bearing-life.ts'
import { windShare } from '../site-wind.ts'
import {
  axialPull,
  type ShaftChain,
  shaftLoads,
  stormThrust,
  turningMass,
  usualBalanceGrade,
  workThrust,
  yawRate,
} from './shaft-load.ts'

export interface BearingRating {
  readonly dynamic: number
  readonly static: number
  readonly geometryFactor: number
  readonly spread: number
  readonly known: string
}

/** From the sheet; by the bore from memory where there is none; undefined where nothing is said. */
export function bearingRating({ bore, dynamicRating, staticRating }: Bearings): BearingRating | undefined {
  const row =
    bore === undefined
      ? undefined
      : deepGrooveBearings.find(({ bore_mm }) => Math.abs(bore_mm / 1000 - bore) < 1e-5)
  if (dynamicRating !== undefined && staticRating !== undefined)
    return {
      dynamic: dynamicRating,
      static: staticRating,
      geometryFactor: row?.geometryFactor_1 ?? 14,
      spread: 0,
      known: 'ratings as entered',
    }
  if (row === undefined) return undefined
  return {
    dynamic: dynamicRating ?? row.dynamicRating_N,
    static: staticRating ?? row.staticRating_N,
    geometryFactor: row.geometryFactor_1,
    spread: ratingSpread.spread_1,
    known: `ratings of a deep-groove bearing of the ${row.name} (${row.where})`,
  }
}

export interface BearingResult {
  readonly rating: BearingRating
  /** Calendar time that 90 of 100, and 95 of 100, bearings of the site's year outlast [s]. */
  readonly life: number
  readonly life95: number
  /** The bearing that goes first. */
  readonly first: 'front' | 'rear'
  /** Equivalent load in the wind that wears most [N], and that wind [m/s]. */
  readonly load: number
  readonly wind: number
  /** C0/P0 with the limiter stuck in the storm. */
  readonly staticSafety: number
  readonly staticLoad: number
}

/** Undefined where places or ratings are not said, or the rotor's axis is upright. */
export function bearingResult(chain: ShaftChain): BearingResult | undefined {
  const { machine, rows, year, runaway } = chain
  const { bearings, balanceGrade: grade = usualBalanceGrade } = machine.shaft
  if (bearings === undefined || 'height' in machine.blades || rows.length === 0) return undefined
  const rating = bearingRating(bearings)
  if (rating === undefined) return undefined
  const mass = turningMass(chain)
  const thrust = workThrust(chain)
  const pull = axialPull(chain)
  // the front bearing is taken to hold the axial load, or the rear one: whichever is the worse
  const equivalent = (radial: number, axial: number) =>
    equivalentBearingLoad({
      radial,
      axial,
      staticRating: rating.static,
      geometryFactor: rating.geometryFactor,
    }).load
  const turning = rows.filter(({ speed }) => speed > 0)
  const step = rows.length > 1 ? rows[1]!.wind - rows[0]!.wind : rows[0]!.wind
  const stages = turning.map((row) => {
    const { radial } = shaftLoads(bearings, mass, { speed: row.speed, grade, yaw: 0 })
    const axial = thrust(row) + pull
    const share = windShare(year.wind, row.wind + step / 2) - windShare(year.wind, row.wind - step / 2)
    return {
      row,
      share: Math.max(0, share),
      loads: radial.map((one) => Math.max(equivalent(one, axial), Number.MIN_VALUE)) as [number, number],
    }
  })
  const lifeOf = (k: 0 | 1, reliability: number) =>
    alternatingLife(
      stages.map(({ row, share, loads }) => ({
        share,
        time: bearingLife({ dynamicRating: rating.dynamic, load: loads[k], speed: row.speed, reliability })
          .time,
      })),
    )
  const k = lifeOf(0, 0.9) <= lifeOf(1, 0.9) ? 0 : 1
  const hardest = stages.reduce<(typeof stages)[number] | undefined>(
    (most, one) => (most === undefined || one.loads[k] > most.loads[k] ? one : most),
    undefined,
  )
  // yawing at its fastest, or all the unbalance of runaway: either with the storm's push
  const fastest = turning.reduce((most, row) => Math.max(most, row.speed), 0)
  const storm = [
    shaftLoads(bearings, mass, { speed: fastest, grade, yaw: yawRate(machine.blades.radius) }),
    shaftLoads(bearings, mass, { speed: runaway.speed, grade, yaw: 0 }),
  ]
  const staticLoad = staticBearingLoad({
    radial: Math.max(...storm.flatMap(({ radial }) => [...radial])),
    axial: stormThrust(chain) + pull,
  })
  return {
    rating,
    life: lifeOf(k, 0.9),
    life95: lifeOf(k, 0.95),
    first: k === 0 ? 'front' : 'rear',
    load: hardest?.loads[k] ?? 0,
    wind: hardest?.row.wind ?? 0,
    staticSafety: staticLoad > 0 ? rating.static / staticLoad : Number.MAX_VALUE,
    staticLoad,
  }
}
