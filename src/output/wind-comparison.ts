/** A design set into measured winds: its year by the histogram, by the fitted distribution, by the mean alone. */
import { type Chain, chainOf } from '../analysis/compute.ts'
import { hubWind } from '../analysis/site-wind.ts'
import type { Steps } from '../analysis/step.ts'
import { energyInWinds } from '../analysis/year.ts'
import type { Design } from '../machine/design.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { measuredSite } from '../measurement/measured-site.ts'
import type { WindStatistics } from '../measurement/wind-statistics.ts'
import { windDistribution } from '../physics/aerodynamics/weibull.ts'
import { shearExponent, windSpeedByLogLaw } from '../physics/aerodynamics/wind-profile.ts'
import { nominal } from '../units/quantity.ts'

export interface WindComparison {
  /** The design with the measured winds in its site. */
  readonly design: Design
  readonly chain: Chain
  /** Useful energy of a year by the measured frequencies, by the fitted distribution, and if the mean blew all year [J]. */
  readonly byHistogram: number
  readonly byWeibull: number | undefined
  readonly byMean: number
  /** [m/s] */
  readonly hubWind: number
}

export interface WindHeights {
  /** Of the anemometer above ground [m]. */
  readonly measuredHeight?: number | undefined
  /** Roughness length of the ground, for the logarithmic law instead of the exponent [m]. */
  readonly roughness?: number | undefined
}

/** The exponent that takes the wind from one height to the other as the logarithmic law does. */
function exponentByRoughness(low: number, high: number, roughness: number): number | undefined {
  if (low === high) return undefined
  const highSpeed = windSpeedByLogLaw({ windSpeed: 1, from: low, to: high, roughness })
  return shearExponent({ lowSpeed: 1, highSpeed, low, high })
}

/** The document with the measured winds in the place of its own. */
export function designInMeasuredWind(
  design: Design,
  statistics: WindStatistics,
  { measuredHeight, roughness }: WindHeights = {},
): Design | readonly string[] {
  const { windHistogram: _, monthlyMean_m_per_s: __, turbulenceIntensity: ___, ...site } = design.site
  const height = measuredHeight ?? nominal(site.measuredHeight_m)
  const hub = nominal(site.hubHeight_m)
  const exponent = roughness === undefined ? undefined : exponentByRoughness(height, hub, roughness)
  const parsed = parseDesign({
    ...design,
    site: {
      ...site,
      ...measuredSite(statistics),
      measuredHeight_m: height,
      ...(exponent === undefined ? {} : { shearExponent: Math.min(0.6, Math.max(0, exponent)) }),
    },
  })
  return parsed.ok
    ? parsed.design
    : parsed.faults.map(
        ({ path, condition, received }) => `${path} must be ${condition}; received ${received}`,
      )
}

/** Computes the design once and takes its year through the three winds. Yields the fraction done. */
export function* windComparison(design: Design, statistics: WindStatistics): Steps<WindComparison> {
  const machine = resolveDesign(design)
  const chain = yield* chainOf(machine)
  const mean = hubWind(machine)
  return {
    design,
    chain,
    byHistogram: chain.year.energy,
    byWeibull:
      statistics.weibull === undefined
        ? undefined
        : energyInWinds(chain, {
            kind: 'Weibull',
            ...windDistribution({ mean, shape: statistics.weibull.shape }),
          }),
    byMean: chain.year.energyOfMeanWind,
    hubWind: mean,
  }
}
