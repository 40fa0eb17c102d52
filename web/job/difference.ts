/** The difference between two states of a design: every figure, every concern, and how sure each difference is. */

import { within } from '../../src/analysis/step.ts'
import { tellingWind } from '../../src/analysis/telling-wind.ts'
import {
  type ConcernDifference,
  concernDifferences,
  designFigures,
  type FigureDifference,
  figureDifferences,
  type PairedSpread,
  pairedSpread,
} from '../../src/index.ts'
import { type JobSteps, job } from './job.ts'
import { knownChain } from './known-chain.ts'

export interface DifferenceAsked {
  /** The raw texts of the earlier and of the present state. */
  readonly from: string
  readonly to: string
}

export interface DifferenceReport {
  /** In which watts and warmth of both are told [m/s]. */
  readonly wind: number
  readonly figures: readonly FigureDifference[]
  readonly concerns: readonly ConcernDifference[]
  /** Undefined until the guesses have been drawn. */
  readonly spread: PairedSpread | undefined
}

export const difference = job({
  name: 'difference',
  *steps({ from, to }: DifferenceAsked): JobSteps<DifferenceReport, DifferenceReport> {
    const old = yield* within(knownChain(from), 0, 0.05)
    const now = yield* within(knownChain(to), 0.05, 0.05)
    // a storm that one of both was not computed for bounds the wind that is told
    const storm = Math.min(old.machine.site.stormWind, now.machine.site.stormWind)
    const wind = Math.min(tellingWind(now).row.wind, storm)
    const bare: DifferenceReport = {
      wind,
      figures: figureDifferences(designFigures(old, wind), designFigures(now, wind)),
      concerns: concernDifferences(old.concerns, now.concerns),
      spread: undefined,
    }
    yield { fraction: 0.1, soFar: bare }
    return { ...bare, spread: yield* within(pairedSpread(old, now), 0.1, 0.9) }
  },
})
