/** All scenarios of one design in one wind, and how far the shorted winding brakes. */

import { type BrakeStudy, brakeStudy } from './brake-wind.ts'
import { askedScenarios } from './scenario.ts'
import { type ScenarioTable, scenarioTable } from './scenario-table.ts'
import { type Steps, within } from './step.ts'
import type { StormChain } from './storm-chain.ts'
import { stormMachine } from './storm-machine.ts'
import { loggedWind, type StormWindKind, stormWind } from './storm-wind.ts'
import { windingStates } from './storm-winding.ts'
import type { WindSeries } from './wind-series.ts'

export interface ScenarioStudy {
  readonly table: ScenarioTable
  /** Undefined where the winding gives no volts. */
  readonly brake: BrakeStudy | undefined
}

export interface ScenarioStudyOptions {
  readonly kind?: Exclude<StormWindKind, 'logged wind'>
  /** Highest wind; else the site's storm [m/s]. */
  readonly top?: number
  /** In place of a prescribed wind. */
  readonly series?: WindSeries
  /** Key of the one scenario that is asked for; all of them without. */
  readonly only?: string
}

/** Yields the fraction done. */
export function* scenarioStudy(
  chain: StormChain,
  { kind = 'operating gust', top, series, only }: ScenarioStudyOptions = {},
): Steps<ScenarioStudy> {
  const { machine, voltage } = chain
  const asked = askedScenarios(machine, only)
  const states = windingStates.filter((state) => asked.some(({ event }) => event === state))
  const wind =
    series === undefined ? stormWind(machine, kind, top ?? machine.site.stormWind) : loggedWind(series)
  const highest = Math.max(wind.top, machine.site.stormWind)
  const parts = yield* within(stormMachine(chain, highest, states), 0, 0.3)
  const table = yield* within(scenarioTable(parts, wind, only), 0.3, 0.5)
  const turns = voltage.greatestLinePeak > 0
  return {
    table,
    brake: turns && only === undefined ? yield* within(brakeStudy(parts), 0.8, 0.2) : undefined,
  }
}
