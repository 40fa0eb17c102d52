/** The logger's clock: the step it keeps, newest-first files, and hours that daylight saving repeats or leaves out. */

export interface ClockJump {
  readonly kind: 'repeated hour' | 'missing hour'
  /** Time on the written clock at which it happened [s since 1970]. */
  readonly at: number
}

/** The most frequent distance of two readings in the order of the file [s], and the share of all that keep it. */
export function commonStep(
  time: Float64Array,
): { readonly step: number; readonly share: number } | undefined {
  const counts = new Map<number, number>()
  let all = 0
  for (let i = 1; i < time.length; i++) {
    const apart = Math.round(Math.abs(time[i]! - time[i - 1]!) * 1000) / 1000
    if (apart === 0) continue
    all++
    if (counts.size < 10_000 || counts.has(apart)) counts.set(apart, (counts.get(apart) ?? 0) + 1)
  }
  let best: { step: number; count: number } | undefined
  for (const [step, count] of counts)
    if (!best || count > best.count || (count === best.count && step < best.step)) best = { step, count }
  return best && { step: best.step, share: best.count / all }
}

const hour = 3600
const day = 86_400

/** Months in which clocks are changed somewhere. */
const changeMonths = new Set([3, 4, 9, 10, 11])

const monthAt = (time: number): number => new Date(time * 1000).getUTCMonth() + 1
const isSunday = (time: number): boolean => new Date(time * 1000).getUTCDay() === 0
const isNight = (time: number): boolean => ((time % day) + day) % day < 4 * hour
const near = (a: number, b: number): boolean => Math.abs(a - b) < 1

/**
 * Carries a local clock on evenly: where an hour comes twice, or is left out at night in a month of changes, all that
 * follows is moved by that hour. A single missing hour counts only on a Sunday or after a repeated one; `isCopy` tells
 * a row that was written twice from one of a second hour.
 */
export function evenClock(
  local: Float64Array,
  step: number,
  isCopy: (i: number) => boolean = () => false,
): { readonly time: Float64Array; readonly jumps: readonly ClockJump[] } {
  const time = Float64Array.from(local)
  const jumps: ClockJump[] = []
  const n = Math.round(hour / step)
  if (!(step > 0) || n < 1 || !near(n * step, hour)) return { time, jumps }
  let offset = 0
  const at = (i: number) => local[i] ?? Number.POSITIVE_INFINITY
  let i = 1
  while (i < local.length) {
    const apart = local[i]! - local[i - 1]!
    const seasonal = changeMonths.has(monthAt(local[i]!)) && isNight(local[i]!)
    if (seasonal && near(apart, step - hour) && !isCopy(i) && follows(at, i, n, step)) {
      jumps.push({ kind: 'repeated hour', at: local[i]! })
      offset += hour
    } else if (seasonal && n > 1 && apart === 0 && paired(at, i - 1, n, step)) {
      // sorted by the written clock: the two hours stand one inside the other
      jumps.push({ kind: 'repeated hour', at: local[i]! })
      for (let k = 0; k < n; k++) {
        time[i - 1 + 2 * k] = local[i - 1 + 2 * k]! + offset
        time[i + 2 * k] = local[i + 2 * k]! + offset + hour
      }
      offset += hour
      i += 2 * n - 1
      continue
    } else if (
      near(apart, step + hour) &&
      changeMonths.has(monthAt(local[i]!)) &&
      isNight(local[i - 1]! + step) &&
      near((local[i - 1]! + step) % hour, 0) &&
      (offset > 0 || (offset === 0 && isSunday(local[i]!)))
    ) {
      jumps.push({ kind: 'missing hour', at: local[i]! })
      offset -= hour
    }
    time[i] = local[i]! + offset
    i++
  }
  return { time, jumps }
}

/** The repeated hour goes on step by step to its end, so that it is no stray row. */
function follows(at: (i: number) => number, from: number, n: number, step: number): boolean {
  for (let k = 1; k < n; k++) if (!near(at(from + k), at(from) + k * step)) return false
  // the row after the hour is the one that followed it the first time, or the record ends
  const after = at(from + n)
  return after === Number.POSITIVE_INFINITY || near(after, at(from) + n * step)
}

function paired(at: (i: number) => number, from: number, n: number, step: number): boolean {
  for (let k = 0; k < n; k++) {
    const wanted = at(from) + k * step
    if (!near(at(from + 2 * k), wanted) || !near(at(from + 2 * k + 1), wanted)) return false
  }
  return true
}

/** Order of the readings by time, in the order of the file where times are alike; undefined where it is that already. */
export function orderByTime(time: Float64Array): Uint32Array | undefined {
  let sorted = true
  for (let i = 1; i < time.length && sorted; i++) if (time[i]! < time[i - 1]!) sorted = false
  if (sorted) return undefined
  return Uint32Array.from(time.keys()).sort((a, b) => time[a]! - time[b]! || a - b)
}
