/** Turbulence intensity by wind, from a column of deviations or from readings fast enough to show gusts. */
import { normalTurbulenceIntensity, turbulenceIntensity } from '../physics/aerodynamics/turbulence.ts'
import type { WindSeries } from './wind-series.ts'

export interface TurbulenceBin {
  /** Middle of the bin, 1 m/s wide [m/s]. */
  readonly wind: number
  /** Ten-minute stretches. */
  readonly count: number
  /** Mean of σ/v̄ over them, and the same with one standard deviation more: what a design reckons with. */
  readonly mean: number
  readonly characteristic: number
  /** Of the standard's model for small turbines in that wind. */
  readonly model: number
}

const stretch = 600
/** Slower readings than one a minute have lost the gusts. */
const slowest = 60
const fewestReadings = 8
/** Below this mean the ratio says nothing [m/s]. */
const leastWind = 1

/** Each stretch's mean and deviation, handed to `take`. */
function stretches(
  { time, wind, extra, step }: WindSeries,
  take: (mean: number, deviation: number) => void,
): void {
  const { deviation } = extra
  if (deviation) {
    for (let k = 0; k < wind.length; k++) if (deviation.known[k] === 1) take(wind[k]!, deviation.value[k]!)
    return
  }
  if (!(step > 0) || step > slowest) return
  let k = 0
  while (k < time.length) {
    const block = Math.floor(time[k]! / stretch)
    let n = 0
    let sum = 0
    let squares = 0
    for (; k < time.length && Math.floor(time[k]! / stretch) === block; k++) {
      n++
      sum += wind[k]!
      squares += wind[k]! ** 2
    }
    if (n < fewestReadings) continue
    const mean = sum / n
    take(mean, Math.sqrt(Math.max(0, squares / n - mean ** 2) * (n / (n - 1))))
  }
}

export function turbulenceBins(series: WindSeries): TurbulenceBin[] {
  const bins: { count: number; sum: number; squares: number }[] = []
  stretches(series, (mean, deviation) => {
    if (mean < leastWind) return
    const at = Math.floor(mean)
    while (bins.length <= at) bins.push({ count: 0, sum: 0, squares: 0 })
    const bin = bins[at]!
    const I = turbulenceIntensity({ deviation, mean })
    bin.count++
    bin.sum += I
    bin.squares += I * I
  })
  return bins.flatMap(({ count, sum, squares }, k) => {
    if (count === 0) return []
    const mean = sum / count
    const spread = Math.sqrt(Math.max(0, squares / count - mean ** 2))
    return [
      {
        wind: k + 0.5,
        count,
        mean,
        characteristic: mean + spread,
        model: normalTurbulenceIntensity(k + 0.5),
      },
    ]
  })
}
