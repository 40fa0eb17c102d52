/** A year's energy by wind: where it goes in each half metre per second of wind, loss by loss. */
import { yearSeconds } from '../physics/aerodynamics/annual-energy.ts'
import type { Chain } from './compute.ts'
import { windShare } from './site-wind.ts'
import { type Watts, wattColumns } from './watts.ts'

export interface EnergyByWind {
  /** Wind of each row of the power curve [m/s]. */
  readonly wind: Float64Array
  /** Of a year, the half step to either side [s]. */
  readonly time: Float64Array
  /** Taken from the wind in that time, by where it goes [J]; rising and falling winds count half each. */
  readonly parts: Readonly<Record<keyof Watts, Float64Array>>
}

export function energyByWind({
  rows,
  fallingRows,
  year,
}: Pick<Chain, 'rows' | 'fallingRows' | 'year'>): EnergyByWind {
  const time = Float64Array.from(rows, ({ wind }, k) => {
    const before = rows[k - 1]?.wind ?? 0
    const after = rows[k + 1]?.wind ?? wind
    return (
      (windShare(year.wind, (wind + after) / 2) - windShare(year.wind, (before + wind) / 2)) * yearSeconds
    )
  })
  return {
    wind: Float64Array.from(rows, ({ wind }) => wind),
    time,
    parts: Object.fromEntries(
      wattColumns.map((column) => [
        column,
        Float64Array.from(
          rows,
          ({ watts }, k) => ((watts[column] + fallingRows[k]!.watts[column]) / 2) * time[k]!,
        ),
      ]),
    ) as unknown as EnergyByWind['parts'],
  }
}
