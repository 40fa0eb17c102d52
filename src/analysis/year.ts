/** A year at the site: energy, and where the year's watts go. */
import type { Machine } from '../machine/machine.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { gaussLegendreOn } from '../numerics/quadrature.ts'
import { yearSeconds } from '../physics/aerodynamics/annual-energy.ts'
import type { WindDistribution } from '../physics/aerodynamics/weibull.ts'
import { windDistribution } from '../physics/aerodynamics/weibull.ts'
import { type EnergyRange, type MonthEnergy, monthEnergies, yearRange } from './month-energy.ts'
import { limiterWind, type PowerCurve, type WindRow } from './power-curve.ts'
import { hubWind, type SiteWind, siteWind, windMeanPower, windPatternFactor, windShare } from './site-wind.ts'
import { shaftPower, type Watts, wattColumns } from './watts.ts'

export interface YearLedger {
  /** In the wind through the swept area, all year: past the blades, not taken while held, and taken [J]. */
  readonly available: number
  /** Goes on past the blades [J]. */
  readonly pastBlades: number
  /** What the blades would have taken above the limiter's wind, had it not held them [J]. */
  readonly held: number
  /** Taken out of the wind: the sum of the parts [J]. */
  readonly shaft: number
  /** The same columns as the watts, integrated over the year [J]. */
  readonly parts: Watts
}

export interface Year {
  /** Mean wind at the hub [m/s]. */
  readonly meanWind: number
  /** The winds that the year was computed with. */
  readonly wind: SiteWind
  /** By the shape that the site gives, whether or not a histogram takes its place. */
  readonly distribution: WindDistribution
  /** ⟨v³⟩/⟨v⟩³ */
  readonly patternFactor: number
  /** Into the battery or resistor: between what rising and what falling winds would give [J]. */
  readonly energy: number
  /** Half of the difference between the two [J]. */
  readonly hysteresis: number
  /** What cubing the mean wind would have promised [J]. */
  readonly energyOfMeanWind: number
  /** If the machine followed every gust of the site's turbulence at once; undefined where that is not known, or the readings hold the gusts already [J]. */
  readonly energyInGusts: number | undefined
  /** The same over the year's seconds [W]. */
  readonly meanPower: number
  readonly ledger: YearLedger
  /** Energy that each row of the power curve yields, its half step to either side [J]. */
  readonly byWind: Float64Array
  /** A single year's bounds: weather, and what is guessed of the site's wind. */
  readonly range: EnergyRange
  /** Undefined where the site's months are not known. */
  readonly months: readonly MonthEnergy[] | undefined
}

/** Both ways through the winds count half. */
const between = (rising: WindRow, falling: WindRow, pick: (row: WindRow) => number): number =>
  (pick(rising) + pick(falling)) / 2

type Rows = Pick<PowerCurve, 'rising' | 'falling'>

const windsOf = ({ rising }: Rows): number[] => [0, ...rising.map(({ wind }) => wind)]

/** Of a year of these winds, both ways through them [J]. */
function energyOf({ rising, falling }: Rows, winds: SiteWind, pick: (row: WindRow) => number): number {
  const power = [0, ...rising.map((row, k) => between(row, falling[k]!, pick))]
  return windMeanPower(winds, { windSpeed: windsOf({ rising, falling }), power, above: 'hold' }) * yearSeconds
}

/** Useful energy of a year, had the site these winds [J]. */
export const energyInWinds = (
  chain: { readonly rows: readonly WindRow[]; readonly fallingRows: readonly WindRow[] },
  winds: SiteWind,
): number => energyOf({ rising: chain.rows, falling: chain.fallingRows }, winds, ({ watts }) => watts.useful)

/** Readings averaged over less hold the gusts themselves [s]. */
const gustAveraging = 30

/** The curve as the mean of ten minutes sees it: each point the mean over a normal spread of σ = I v. */
function inGusts(wind: readonly number[], useful: readonly number[], intensity: number): number[] {
  const at = piecewiseLinear(wind, useful)
  const [least, most] = [wind[0]!, wind[wind.length - 1]!]
  const { nodes, weights } = gaussLegendreOn(24, -4, 4)
  const normal = Array.from(nodes, (x, k) => weights[k]! * Math.exp(-(x ** 2) / 2))
  const whole = normal.reduce((sum, each) => sum + each, 0)
  return wind.map(
    (v) =>
      normal.reduce(
        (sum, weight, k) =>
          sum + weight * at(Math.min(most, Math.max(least, v * (1 + intensity * nodes[k]!)))),
        0,
      ) / whole,
  )
}

/** Not taken above the limiter's wind, at the power coefficient that the blades had in it [W]. */
function heldPower(machine: Machine, { rising }: Rows): (row: WindRow) => number {
  const first = rising.find(({ state }) => state === 'held')
  if (first === undefined) return () => 0
  const limit = limiterWind(machine)
  const coefficient = shaftPower(first.watts) / (first.available * (limit / first.wind) ** 3)
  return (row) =>
    row.state === 'held' ? Math.max(0, coefficient * row.available - shaftPower(row.watts)) : 0
}

export function year(machine: Machine, curve: PowerCurve): Year {
  const { rising, falling } = curve
  const { site } = machine
  const meanWind = hubWind(machine)
  const winds = siteWind(machine)
  const integral = (pick: (row: WindRow) => number) => energyOf(curve, winds, pick)
  const mean = (pick: (row: WindRow) => number) => rising.map((row, k) => between(row, falling[k]!, pick))
  const parts = Object.fromEntries(
    wattColumns.map((column) => [column, integral(({ watts }) => watts[column])]),
  ) as unknown as Watts
  const useful = mean(({ watts }) => watts.useful)
  const byWind = Float64Array.from(rising, ({ wind }, k) => {
    const before = rising[k - 1]?.wind ?? 0
    const after = rising[k + 1]?.wind ?? wind
    const share = windShare(winds, (wind + after) / 2) - windShare(winds, (before + wind) / 2)
    return useful[k]! * share * yearSeconds
  })
  const way = (rows: readonly WindRow[]) =>
    energyOf({ rising: rows, falling: rows }, winds, ({ watts }) => watts.useful)
  const windSpeed = windsOf(curve)
  const intensity = site.turbulenceIntensity
  const slow = site.averaging === undefined || site.averaging > gustAveraging
  const available = integral(({ available }) => available)
  const held = integral(heldPower(machine, curve))
  const shaft = shaftPower(parts)
  const points = { wind: windSpeed.slice(1), useful }
  return {
    meanWind,
    wind: winds,
    distribution: windDistribution({ mean: meanWind, shape: site.weibullShape }),
    patternFactor: windPatternFactor(winds),
    energy: parts.useful,
    hysteresis: Math.abs(way(rising) - way(falling)) / 2,
    energyOfMeanWind: piecewiseLinear(windSpeed, [0, ...useful])(meanWind) * yearSeconds,
    energyInGusts:
      intensity === undefined || !slow
        ? undefined
        : windMeanPower(winds, {
            windSpeed,
            power: inGusts(windSpeed, [0, ...useful], intensity),
            above: 'hold',
          }) * yearSeconds,
    meanPower: parts.useful / yearSeconds,
    ledger: { available, pastBlades: available - held - shaft, held, shaft, parts },
    byWind,
    range: yearRange(machine, points, parts.useful),
    months: monthEnergies(machine, points, parts.useful),
  }
}
