/** The year month by month: energy as it is expected, and between which bounds a single month may lie. */
import type { Machine } from '../machine/machine.ts'
import { root } from '../numerics/root.ts'
import { energyPatternFactor, shapeBounds, windDistribution } from '../physics/aerodynamics/weibull.ts'
import {
  hubMonths,
  hubWind,
  hubWindSpread,
  monthDays,
  type SiteWind,
  siteWind,
  windPatternFactor,
  windShare,
  yearDays,
} from './site-wind.ts'

/** Energy with the bounds between which nine of ten fall [J]. */
export interface EnergyRange {
  readonly energy: number
  readonly low: number
  readonly high: number
}

export interface MonthEnergy extends EnergyRange {
  /** 1 for January. */
  readonly month: number
  readonly days: number
  /** At the hub [m/s]. */
  readonly meanWind: number
}

/** Standard deviation of the yearly mean wind about that of many years, as a share (interannual-wind2012). */
const yearDeviation = 0.06
/** Of a month about its own mean of many years, if months go each their own way: √12 times as much. */
const monthDeviation = yearDeviation * Math.sqrt(12)
/** Half-width at 90 % of a normal distribution over its standard deviation. */
const ninety = 1.645

export interface UsefulCurve {
  /** Rising [m/s]. */
  readonly wind: readonly number[]
  /** [W] */
  readonly useful: readonly number[]
}

/** Mean of a curve over winds, each point standing for its half step to either side; the last for all above [W]. */
export function meanByPoints({ wind, useful }: UsefulCurve, winds: SiteWind): number {
  let below = windShare(winds, (wind[0] ?? 0) / 2)
  let sum = 0
  for (let k = 0; k < wind.length; k++) {
    const next = wind[k + 1]
    const share = next === undefined ? 1 : windShare(winds, (wind[k]! + next) / 2)
    sum += useful[k]! * (share - below)
    below = share
  }
  return sum
}

const lowest = 0.05

/** A year's range, weather of single years and guesses of the site together. */
export function yearRange(machine: Machine, curve: UsefulCurve, energy: number): EnergyRange {
  const mean = hubWind(machine)
  const spread = Math.hypot(hubWindSpread(machine), ninety * yearDeviation)
  const at = (factor: number) => meanByPoints(curve, siteWind(machine, mean * Math.max(lowest, factor)))
  const middle = at(1)
  const scale = middle > 0 ? energy / middle : 0
  const ends = [energy, at(1 - spread) * scale, at(1 + spread) * scale]
  return { energy, low: Math.min(...ends), high: Math.max(...ends) }
}

/** Shape of the winds within a month, so that the months together carry as much as the year: ⟨v³⟩ alike. */
function monthShape(machine: Machine, means: readonly number[]): number {
  const year = windPatternFactor(siteWind(machine)) * hubWind(machine) ** 3
  const cubes = means.reduce((sum, mean, k) => sum + mean ** 3 * (monthDays[k]! / yearDays), 0)
  const wanted = year / cubes
  const [least, most] = [0.6, shapeBounds[1]]
  if (wanted <= energyPatternFactor(most)) return most
  if (wanted >= energyPatternFactor(least)) return least
  return root((k) => energyPatternFactor(k) - wanted, [least, most], 1e-6)
}

/** Months whose sum is the year's energy; undefined where the site's months are not known. */
export function monthEnergies(
  machine: Machine,
  curve: UsefulCurve,
  energy: number,
): readonly MonthEnergy[] | undefined {
  const means = hubMonths(machine)
  if (means === undefined) return undefined
  const shape = monthShape(machine, means)
  const spread = Math.hypot(hubWindSpread(machine), ninety * monthDeviation)
  const at = (mean: number, factor: number) =>
    mean <= 0
      ? 0
      : meanByPoints(curve, {
          kind: 'Weibull',
          ...windDistribution({ mean: mean * Math.max(lowest, factor), shape }),
        })
  const raw = means.map((mean) => [at(mean, 1), at(mean, 1 - spread), at(mean, 1 + spread)] as const)
  const sum = raw.reduce((total, [middle], k) => total + middle * monthDays[k]!, 0)
  const scale = sum > 0 ? energy / sum : 0
  return means.map((meanWind, k) => {
    const days = monthDays[k]!
    const [middle, ...ends] = raw[k]!.map((power) => power * days * scale) as [number, number, number]
    return {
      month: k + 1,
      days,
      meanWind,
      energy: middle,
      low: Math.min(middle, ...ends),
      high: Math.max(middle, ...ends),
    }
  })
}
