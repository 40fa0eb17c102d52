/** Remedy: a switch that turns the winding from star to delta and back, whichever gives more in the wind at hand. */
import { parseDesign } from '../../machine/parse.ts'
import { resolveDesign } from '../../machine/resolve.ts'
import { Refusal } from '../../refusal/require.ts'
import { type Chain, chainOf } from '../compute.ts'
import type { WindRow } from '../power-curve.ts'
import type { Steps } from '../step.ts'
import { year } from '../year.ts'
import { withChanges } from './change.ts'
import { swapChanges } from './connection.ts'
import { type MatchFigures, matchFigures } from './figures.ts'
import type { RemedyContext } from './trial.ts'

export interface SwitchedFigures {
  readonly figures: MatchFigures
  /** Least wind in which the faster-running connection gives more [m/s]; undefined where one is better throughout. */
  readonly turnoverWind: number | undefined
}

/** Row by row the better of two machines that differ in their connection only. */
const better = (a: readonly WindRow[], b: readonly WindRow[]): WindRow[] =>
  a.map((row, k) => (b[k]!.watts.useful > row.watts.useful ? b[k]! : row))

/** What both connections of the machine give with a switch that always chooses right; a string says why not. */
export function* switchedFigures({
  design,
  chain,
  wind,
  figures,
}: RemedyContext): Steps<SwitchedFigures | string> {
  const changes = swapChanges(design)
  if (changes.length === 0) return 'only three phases in star or delta can be switched'
  const parsed = parseDesign(withChanges(design, changes))
  if (!parsed.ok) return 'the other connection is not possible'
  let other: Chain
  try {
    other = yield* chainOf(resolveDesign(parsed.design), { previous: chain })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return error.message
  }
  const rising = better(chain.rows, other.rows)
  const falling = better(chain.fallingRows, other.fallingRows)
  const second = matchFigures(other, wind)
  const [slow, fast] =
    chain.generator.cutIn <= other.generator.cutIn ? [chain.rows, other.rows] : [other.rows, chain.rows]
  const turnover = slow.findIndex((row, k) => fast[k]!.watts.useful > row.watts.useful)
  const chosen = figures.usefulPower >= second.usefulPower ? figures : second
  return {
    turnoverWind: turnover < 0 ? undefined : slow[turnover]!.wind,
    figures: {
      ...chosen,
      energy: year(chain.machine, { rising, falling, rowAt: chain.rowAt }).energy,
      stalledWinds: rising.filter(({ state }) => state === 'stalled').length,
      cutInWind: Math.min(figures.cutInWind, second.cutInWind),
      hottestCopper: Math.max(...rising.map(({ copperTemperature }) => copperTemperature)),
      greatestCablePower: Math.max(...rising.map(({ watts }) => watts.cable)),
      greatestConverterPower: Math.max(...rising.map(({ watts }) => watts.converter)),
      runawaySpeed: Math.max(figures.runawaySpeed, second.runawaySpeed),
      runawayVolts: Math.max(figures.runawayVolts, second.runawayVolts),
      blocking: [...new Set([...figures.blocking, ...second.blocking])],
      warnings: [...new Set([...figures.warnings, ...second.warnings])],
    },
  }
}
