/** What a clean wind record says of its site: means, frequencies, seasons, directions, gusts. */
import { airDensity } from '../physics/aerodynamics/air-density.ts'
import type { WindDistribution } from '../physics/aerodynamics/weibull.ts'
import { likeliestWindDistribution } from '../physics/aerodynamics/weibull-fit.ts'
import type { WindHistogram } from '../physics/aerodynamics/wind-histogram.ts'
import { Refusal } from '../refusal/require.ts'
import { type Rose, windRose } from './wind-rose.ts'
import type { SeriesColumn, WindSeries } from './wind-series.ts'
import { type TurbulenceBin, turbulenceBins } from './wind-turbulence.ts'

export interface MonthOfRecord {
  readonly year: number
  /** 1 for January. */
  readonly month: number
  readonly readings: number
  /** Readings over those that the whole month would hold. */
  readonly completeness: number
  /** [m/s] */
  readonly mean: number
}

export interface WindStatistics {
  readonly readings: number
  /** First and last reading [s since 1970]. */
  readonly from: number
  readonly to: number
  /** [m/s] */
  readonly mean: number
  readonly deviation: number
  readonly greatest: number
  readonly greatestGust: number | undefined
  /** ⟨v³⟩/⟨v⟩³ of the readings themselves. */
  readonly patternFactor: number
  /** Undefined where the readings are all alike, or calm. */
  readonly weibull: WindDistribution | undefined
  /** Bins of 0.5 m/s from calm. */
  readonly histogram: WindHistogram
  /** Time between readings; they are taken for means over it [s]. */
  readonly averaging: number
  readonly months: readonly MonthOfRecord[]
  /** By month of the year, January first; undefined where none of that month has half of its readings [m/s]. */
  readonly monthlyMean: readonly (number | undefined)[]
  /** By hour of the day on the logger's clock; undefined where it was never read [m/s]. */
  readonly hourlyMean: readonly (number | undefined)[]
  readonly turbulence: readonly TurbulenceBin[]
  /** Mean turbulence intensity in winds near 15 m/s, else in the fastest that is known well; undefined without gusts. */
  readonly turbulenceIntensity: number | undefined
  readonly rose: Rose | undefined
  /** Means [K], [Pa], [kg/m³]; undefined where the file has no such column. */
  readonly temperature: number | undefined
  readonly pressure: number | undefined
  readonly airDensity: number | undefined
}

/** Width of the bins [m/s]. */
const binWidth = 0.5

/** Share of a month's readings below which its mean is not told. */
const leastMonth = 0.5

const knownMean = (column: SeriesColumn | undefined): number | undefined => {
  if (!column) return undefined
  let sum = 0
  let count = 0
  for (let k = 0; k < column.value.length; k++)
    if (column.known[k] === 1) {
      sum += column.value[k]!
      count++
    }
  return count > 0 ? sum / count : undefined
}

function monthsOf({ time, wind, step }: WindSeries): MonthOfRecord[] {
  const months: MonthOfRecord[] = []
  let k = 0
  while (k < time.length) {
    const date = new Date(time[k]! * 1000)
    const [year, month] = [date.getUTCFullYear(), date.getUTCMonth()]
    const start = Date.UTC(year, month, 1) / 1000
    const next = Date.UTC(year, month + 1, 1) / 1000
    let sum = 0
    const first = k
    for (; k < time.length && time[k]! < next; k++) sum += wind[k]!
    const readings = k - first
    const held = step > 0 ? (next - start) / step : readings
    months.push({
      year,
      month: month + 1,
      readings,
      completeness: Math.min(1, readings / Math.max(1, held)),
      mean: sum / readings,
    })
  }
  return months
}

function monthlyMeans(months: readonly MonthOfRecord[]): (number | undefined)[] {
  return Array.from({ length: 12 }, (_, k) => {
    const same = months.filter(({ month, completeness }) => month === k + 1 && completeness >= leastMonth)
    const readings = same.reduce((sum, each) => sum + each.readings, 0)
    return readings > 0
      ? same.reduce((sum, each) => sum + each.mean * each.readings, 0) / readings
      : undefined
  })
}

function hourlyMeans({ time, wind }: WindSeries): (number | undefined)[] {
  const sum = new Float64Array(24)
  const count = new Float64Array(24)
  for (let k = 0; k < time.length; k++) {
    const hour = Math.floor((((time[k]! % 86_400) + 86_400) % 86_400) / 3600)
    sum[hour]! += wind[k]!
    count[hour]! += 1
  }
  return Array.from(sum, (each, hour) => (count[hour]! > 0 ? each / count[hour]! : undefined))
}

function fitOf(speed: Float64Array): WindDistribution | undefined {
  try {
    return likeliestWindDistribution({ speed })
  } catch (error) {
    if (error instanceof Refusal) return undefined
    throw error
  }
}

/** Fewest ten-minute stretches behind a turbulence intensity that is told. */
const fewestStretches = 10

function tellingTurbulence(bins: readonly TurbulenceBin[]): number | undefined {
  const sound = bins.filter(({ count, wind }) => count >= fewestStretches && wind >= 3)
  const near = sound.filter(({ wind }) => wind >= 12 && wind <= 18)
  const chosen = near.length > 0 ? near : sound.slice(-3)
  const count = chosen.reduce((sum, bin) => sum + bin.count, 0)
  return count > 0 ? chosen.reduce((sum, bin) => sum + bin.mean * bin.count, 0) / count : undefined
}

export function windStatistics(series: WindSeries): WindStatistics {
  const { time, wind, extra, step } = series
  const n = wind.length
  let sum = 0
  let greatest = 0
  for (const v of wind) {
    sum += v
    greatest = Math.max(greatest, v)
  }
  const mean = sum / n
  let squares = 0
  let cubes = 0
  const count = new Float64Array(Math.floor(greatest / binWidth) + 1)
  for (const v of wind) {
    squares += (v - mean) ** 2
    cubes += v ** 3
    count[Math.floor(v / binWidth)]! += 1
  }
  const months = monthsOf(series)
  const temperature = knownMean(extra.temperature)
  const pressure = knownMean(extra.pressure)
  const turbulence = turbulenceBins(series)
  const gust = extra.gust
  let greatestGust: number | undefined
  if (gust) for (const v of gust.value) greatestGust = Math.max(greatestGust ?? 0, v)
  return {
    readings: n,
    from: time[0]!,
    to: time[n - 1]!,
    mean,
    deviation: Math.sqrt(squares / Math.max(1, n - 1)),
    greatest,
    greatestGust,
    patternFactor: mean > 0 ? cubes / n / mean ** 3 : 1,
    weibull: fitOf(wind),
    histogram: { binWidth, count },
    averaging: step,
    months,
    monthlyMean: monthlyMeans(months),
    hourlyMean: hourlyMeans(series),
    turbulence,
    turbulenceIntensity: tellingTurbulence(turbulence),
    rose: windRose(series),
    temperature,
    pressure,
    airDensity:
      temperature !== undefined && pressure !== undefined ? airDensity({ pressure, temperature }) : undefined,
  }
}
