/** Readings that no wind can have made: an anemometer that froze or stuck, and single spikes. */

/** Fastest gust ever measured near the ground, 408 km/h, Barrow Island 1996 (wmo-extremes, from memory) [m/s]. */
export const fastestGust = 113.3

/** A spike stands this far above both its neighbours, and this many times higher: common practice, no source. */
const spikeHeight = 15
const spikeRatio = 3

/** Readings this far from their neighbours in time say nothing of a spike, in steps. */
const nearSteps = 1.5

/** Indices of single readings far above those before and after. */
export function spikes(time: Float64Array, wind: Float64Array, step: number): number[] {
  const found: number[] = []
  for (let i = 1; i + 1 < wind.length; i++) {
    if (time[i]! - time[i - 1]! > nearSteps * step || time[i + 1]! - time[i]! > nearSteps * step) continue
    const beside = Math.max(wind[i - 1]!, wind[i + 1]!)
    if (wind[i]! > beside + spikeHeight && wind[i]! > spikeRatio * beside) found.push(i)
  }
  return found
}

export interface Run {
  readonly from: number
  /** One past the last. */
  readonly to: number
}

/** Runs of more than one equal reading. */
function equalRuns(wind: Float64Array): Run[] {
  const runs: Run[] = []
  let from = 0
  for (let i = 1; i <= wind.length; i++) {
    if (i < wind.length && wind[i] === wind[from]) continue
    if (i - from > 1) runs.push({ from, to: i })
    from = i
  }
  return runs
}

/** Longer runs tell nothing of how often two readings agree by chance. */
const longestHonestRun = 8
const fewestFrozen = 6
const shortestFrozen = 2 * 3600
const chanceOfAny = 1e-3
/** Up to this speed an unchanging least reading is a calm, not a fault [m/s]: common practice, no source. */
const greatestCalm = 1

export interface Trouble {
  /** Unchanging readings above calm, longer than chance allows. */
  readonly frozen: readonly Run[]
  /** The least reading of the record where it stands for calm: 0, or the offset of the anemometer [m/s]. */
  readonly calm: number
  /** Share of readings that are calm. */
  readonly calmShare: number
  /** Longest calm [s]. */
  readonly longestCalm: number
}

/**
 * Frozen stretches. Two readings in a row agree with a chance p, as this record shows; a run of n is held for a fault
 * where even one in the whole record of N readings would be a chance below 1/1000: N p^(n−1) < 0.001, and where it
 * lasts two hours and six readings at least.
 */
export function sensorTrouble(wind: Float64Array, step: number): Trouble {
  let least = Number.POSITIVE_INFINITY
  let calmCount = 0
  for (const v of wind) least = Math.min(least, v)
  const calm = least <= greatestCalm ? least : 0
  for (const v of wind) if (v === calm) calmCount++
  const runs = equalRuns(wind)
  let pairs = 0
  let agreeing = 0
  for (const { from, to } of runs)
    if (wind[from] !== calm) agreeing += Math.min(to - from, longestHonestRun) - 1
  pairs = Math.max(1, wind.length - calmCount)
  // with no agreement at all, one in the record might have been
  const p = Math.min(0.99, Math.max(agreeing, 1) / pairs)
  const frozen = runs.filter(({ from, to }) => {
    const n = to - from
    if (wind[from] === calm || n < fewestFrozen || n * step < shortestFrozen) return false
    return Math.log(wind.length) + (n - 1) * Math.log(p) < Math.log(chanceOfAny)
  })
  let longest = 0
  for (const { from, to } of runs) if (wind[from] === calm) longest = Math.max(longest, (to - from) * step)
  return { frozen, calm, calmShare: wind.length > 0 ? calmCount / wind.length : 0, longestCalm: longest }
}
