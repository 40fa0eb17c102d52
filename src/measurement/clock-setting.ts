/** Moments at which a logger's clock was set: the even pace of the rows goes on, shifted by what the clock had drifted. */

export interface ClockSetting {
  /** First row after it [s since 1970]. */
  readonly at: number
  /** Above zero: the clock was put forward, so it had been behind by this [s]. */
  readonly by: number
}

/** Rows may miss their pace by this without a cause [s]. */
const jitter = 1

/** Rows on the new pace that make a setting of what else is one late row. */
const rowsAfter = 3

/** Less of the rows on the usual step says nothing of the clock: common practice, no source. */
const leastPaced = 0.9

/** A file that holds more of them has no pace to be set. */
const mostSettings = 200

/**
 * Settings of the clock in readings in order. Changes of whole hours are those of the season and left to others; so are
 * gaps, after which a logger may begin anew at any second.
 */
export function clockSettings(time: Float64Array, step: number, stepShare: number): ClockSetting[] {
  if (!(step > 2 * jitter) || stepShare < leastPaced) return []
  const found: ClockSetting[] = []
  const off = (i: number) => time[i]! - time[i - 1]! - step
  for (let i = 1; i + rowsAfter < time.length; i++) {
    const by = off(i)
    if (Math.abs(by) <= jitter || Math.abs(by) > step / 2) continue
    // what comes late comes back with the next row
    let keeps = i > 1 && Math.abs(off(i - 1)) <= jitter
    for (let k = 1; k <= rowsAfter; k++) keeps &&= Math.abs(off(i + k)) <= jitter
    if (keeps) found.push({ at: time[i]!, by })
    if (found.length > mostSettings) return []
  }
  return found
}
