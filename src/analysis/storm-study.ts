/** A whole storm for one design: every failure in its turn, and how far the shorted winding brakes. */

import { type BrakeStudy, brakeStudy } from './brake-wind.ts'
import { askedCases } from './failure-case.ts'
import { type FailureTable, failureTable } from './failure-table.ts'
import { type Steps, within } from './step.ts'
import { type StormChain, stormMachine } from './storm-machine.ts'
import { loggedWind, type StormWindKind, stormWind } from './storm-wind.ts'
import type { WindSeries } from './wind-series.ts'

export interface StormStudy {
  readonly table: FailureTable
  /** Undefined where the winding gives no volts. */
  readonly brake: BrakeStudy | undefined
}

export interface StormStudyOptions {
  readonly kind?: Exclude<StormWindKind, 'logged wind'>
  /** Highest wind; else the site's storm [m/s]. */
  readonly top?: number
  /** In place of a prescribed wind. */
  readonly series?: WindSeries
  /** Key of the one failure that is asked for; all of them without. */
  readonly only?: string
}

/** Yields the fraction done. */
export function* stormStudy(
  chain: StormChain,
  { kind = 'operating gust', top, series, only }: StormStudyOptions = {},
): Steps<StormStudy> {
  const asked = askedCases(chain.machine, only)
  const diodes = asked.some(({ event }) => event.startsWith('diode'))
  const wind =
    series === undefined
      ? stormWind(chain.machine, kind, top ?? chain.machine.site.stormWind)
      : loggedWind(series)
  const parts = yield* within(
    stormMachine(chain, Math.max(wind.top, chain.machine.site.stormWind), diodes),
    0,
    0.35,
  )
  const table = yield* within(failureTable(parts, wind, only), 0.35, 0.25)
  const turns = chain.voltage.greatestLinePeak > 0
  return {
    table,
    brake: turns && only === undefined ? yield* within(brakeStudy(parts), 0.6, 0.4) : undefined,
  }
}
