/** A year at the site: energy, and where the year's watts go. */
import type { Machine } from '../machine/machine.ts'
import { annualEnergy, yearSeconds } from '../physics/aerodynamics/annual-energy.ts'
import {
  energyPatternFactor,
  type WindDistribution,
  windDistribution,
  windSpeedShare,
} from '../physics/aerodynamics/weibull.ts'
import { windSpeedByPowerLaw } from '../physics/aerodynamics/wind-profile.ts'
import type { WindRow } from './power-curve.ts'
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
  /** Into the battery or resistor [J]. */
  readonly energy: number
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

export function year(machine: Machine, rows: readonly WindRow[]): Year {
  const meanWind = hubWind(machine)
  const distribution = windDistribution({ mean: meanWind, shape: machine.site.weibullShape })
  const windSpeed = [0, ...rows.map(({ wind }) => wind)]
  const integral = (pick: (row: WindRow) => number) =>
    annualEnergy({ windSpeed, power: [0, ...rows.map(pick)], above: 'hold' }, distribution)
  const parts = Object.fromEntries(
    wattColumns.map((column) => [column, integral(({ watts }) => watts[column])]),
  ) as unknown as Watts
  const cubed = rows.find(({ wind }) => wind >= meanWind) ?? rows[rows.length - 1]!
  const byWind = Float64Array.from(rows, ({ wind, watts }, k) => {
    const before = rows[k - 1]?.wind ?? 0
    const after = rows[k + 1]?.wind ?? wind
    const share =
      windSpeedShare(distribution, (wind + after) / 2) - windSpeedShare(distribution, (before + wind) / 2)
    return watts.useful * share * yearSeconds
  })
  const energy = parts.useful
  return {
    meanWind,
    distribution,
    patternFactor: energyPatternFactor(machine.site.weibullShape),
    energy,
    energyOfMeanWind: cubed.watts.useful * yearSeconds,
    meanPower: energy / yearSeconds,
    ledger: {
      available: integral(({ available }) => available),
      shaft: shaftPower(parts),
      parts,
    },
    byWind,
  }
}
