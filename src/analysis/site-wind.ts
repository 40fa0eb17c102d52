/** The winds of the site at the hub: a Weibull distribution, or the histogram that was measured there. */
import type { Machine } from '../machine/machine.ts'
import { meanPower, type PowerCurve } from '../physics/aerodynamics/annual-energy.ts'
import {
  energyPatternFactor,
  type WindDistribution,
  windDistribution,
  windSpeedShare,
} from '../physics/aerodynamics/weibull.ts'
import {
  histogramMeanPower,
  histogramMoment,
  histogramShare,
  type WindHistogram,
} from '../physics/aerodynamics/wind-histogram.ts'
import { windSpeedByPowerLaw } from '../physics/aerodynamics/wind-profile.ts'
import { knownOf, nominal, spreadOf } from '../units/quantity.ts'

/** Plain data, so that it may cross to a page. */
export type SiteWind =
  | ({ readonly kind: 'Weibull' } & WindDistribution)
  | ({ readonly kind: 'histogram' } & WindHistogram)

/** Wind at the hub over wind where it was measured. */
const hubRatio = ({ site }: Machine): number =>
  site.hubHeight === site.measuredHeight
    ? 1
    : windSpeedByPowerLaw({
        windSpeed: 1,
        from: site.measuredHeight,
        to: site.hubHeight,
        exponent: site.shearExponent,
      })

/** Mean wind of the year at the hub [m/s]. */
export const hubWind = (machine: Machine): number => machine.site.meanWind * hubRatio(machine)

/** Means of the months at the hub, scaled so that the year of 365 days has the mean that the site gives [m/s]. */
export function hubMonths(machine: Machine): readonly number[] | undefined {
  const { monthlyMean } = machine.site
  if (monthlyMean === undefined) return undefined
  const mean = monthlyMean.reduce((sum, each, k) => sum + each * (monthDays[k]! / yearDays), 0)
  return monthlyMean.map((each) => (each / mean) * hubWind(machine))
}

/** Days of the months of a year that has no leap day. */
export const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const
export const yearDays = 365

/** The site's winds with this mean at the hub; a histogram is stretched to it. */
export function siteWind(machine: Machine, mean: number = hubWind(machine)): SiteWind {
  const { windHistogram, weibullShape } = machine.site
  if (windHistogram === undefined)
    return { kind: 'Weibull', ...windDistribution({ mean, shape: weibullShape }) }
  const { binWidth, count } = windHistogram
  return { kind: 'histogram', binWidth: (binWidth * mean) / histogramMoment(windHistogram, 1), count }
}

/** Share of the time at or below a wind. */
export const windShare = (wind: SiteWind, speed: number): number =>
  wind.kind === 'Weibull' ? windSpeedShare(wind, speed) : histogramShare(wind, speed)

/** ⟨v³⟩/⟨v⟩³ */
export const windPatternFactor = (wind: SiteWind): number =>
  wind.kind === 'Weibull'
    ? energyPatternFactor(wind.shape)
    : histogramMoment(wind, 3) / histogramMoment(wind, 1) ** 3

/** Mean of a power curve over the site's winds [W]. */
export const windMeanPower = (wind: SiteWind, curve: PowerCurve): number =>
  wind.kind === 'Weibull' ? meanPower(curve, wind) : histogramMeanPower(curve, wind)

/** A guess without a spread is taken to be off by this share: common practice, no source. */
const unspokenShare = 0.2

/** Half-width at 90 % of the mean wind at the hub, as a share, from what is guessed of the site. */
export function hubWindSpread({ design, site }: Machine): number {
  const width = (quantity: Parameters<typeof spreadOf>[0]) =>
    spreadOf(quantity) || (knownOf(quantity) === 'guessed' ? unspokenShare * nominal(quantity) : 0)
  const mean = width(design.site.meanWind_m_per_s) / nominal(design.site.meanWind_m_per_s)
  const shear = width(design.site.shearExponent) * Math.abs(Math.log(site.hubHeight / site.measuredHeight))
  return Math.min(0.95, Math.hypot(mean, shear))
}
