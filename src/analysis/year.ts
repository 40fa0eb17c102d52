/** A year at the site: energy, and where the year's watts go. */
import type { Machine } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { annualEnergy, yearSeconds } from '../physics/aerodynamics/annual-energy.ts'
import {
  energyPatternFactor,
  type WindDistribution,
  windDistribution,
  windSpeedShare,
} from '../physics/aerodynamics/weibull.ts'
import { windSpeedByPowerLaw } from '../physics/aerodynamics/wind-profile.ts'
import type { PowerCurve, WindRow } from './power-curve.ts'
import { shaftPower, type Watts, wattColumns } from './watts.ts'

export interface YearLedger {
  /** In the wind through the swept area, all year [J]. */
  readonly available: number
  /** Taken out of the wind: the sum of the parts [J]. */
  readonly shaft: number
  /** The same columns as the watts, integrated over the year [J]. */
  readonly parts: Watts
}

export interface Year {
  /** Mean wind at the hub [m/s]. */
  readonly meanWind: number
  readonly distribution: WindDistribution
  /** ⟨v³⟩/⟨v⟩³ */
  readonly patternFactor: number
  /** Into the battery or resistor: between what rising and what falling winds would give [J]. */
  readonly energy: number
  /** Half of the difference between the two [J]. */
  readonly hysteresis: number
  /** What cubing the mean wind would have promised [J]. */
  readonly energyOfMeanWind: number
  /** The same over the year's seconds [W]. */
  readonly meanPower: number
  readonly ledger: YearLedger
  /** Energy that each row of the power curve yields, its half step to either side [J]. */
  readonly byWind: Float64Array
}

export function hubWind({ site }: Machine): number {
  if (site.hubHeight === site.measuredHeight) return site.meanWind
  return windSpeedByPowerLaw({
    windSpeed: site.meanWind,
    from: site.measuredHeight,
    to: site.hubHeight,
    exponent: site.shearExponent,
  })
}

/** Both ways through the winds count half. */
const between = (rising: WindRow, falling: WindRow, pick: (row: WindRow) => number): number =>
  (pick(rising) + pick(falling)) / 2

export function year(machine: Machine, { rising, falling }: PowerCurve): Year {
  const meanWind = hubWind(machine)
  const distribution = windDistribution({ mean: meanWind, shape: machine.site.weibullShape })
  const windSpeed = [0, ...rising.map(({ wind }) => wind)]
  const integral = (power: readonly number[]) =>
    annualEnergy({ windSpeed, power: [0, ...power], above: 'hold' }, distribution)
  const mean = (pick: (row: WindRow) => number) => rising.map((row, k) => between(row, falling[k]!, pick))
  const parts = Object.fromEntries(
    wattColumns.map((column) => [column, integral(mean(({ watts }) => watts[column]))]),
  ) as unknown as Watts
  const useful = mean(({ watts }) => watts.useful)
  const byWind = Float64Array.from(rising, ({ wind }, k) => {
    const before = rising[k - 1]?.wind ?? 0
    const after = rising[k + 1]?.wind ?? wind
    const share =
      windSpeedShare(distribution, (wind + after) / 2) - windSpeedShare(distribution, (before + wind) / 2)
    return useful[k]! * share * yearSeconds
  })
  const way = (rows: readonly WindRow[]) => integral(rows.map(({ watts }) => watts.useful))
  return {
    meanWind,
    distribution,
    patternFactor: energyPatternFactor(machine.site.weibullShape),
    energy: parts.useful,
    hysteresis: Math.abs(way(rising) - way(falling)) / 2,
    energyOfMeanWind: piecewiseLinear(windSpeed, [0, ...useful])(meanWind) * yearSeconds,
    meanPower: parts.useful / yearSeconds,
    ledger: {
      available: integral(rising.map(({ available }) => available)),
      shaft: shaftPower(parts),
      parts,
    },
    byWind,
  }
}
