/** Whether two limiters, the load not among them, each hold the rotor by itself once the load is lost. */
import type { Machine } from '../machine/machine.ts'
import type { Outcome, Verdict } from './scenario-verdict.ts'

export interface LimiterAlone {
  readonly name: string
  /** What the storm came to with this limiter alone and no load; undefined where it needs somebody to act. */
  readonly outcome: Outcome | undefined
  readonly holds: boolean
}

export interface IndependentLimiters {
  readonly alone: readonly LimiterAlone[]
  readonly verdict: Verdict
}

/** As far as a row of the table is told here. */
interface Told {
  readonly scenario: { readonly key: string }
  readonly outcome: Outcome
}

/** Outdoors two are asked for; one alone must be the mechanical one, which needs no wire: as the loss of the load is judged. */
export function independentLimiters({ protection }: Machine, rows: readonly Told[]): IndependentLimiters {
  const { mechanical, electrical, short } = protection
  const of = (key: string) => rows.find(({ scenario }) => scenario.key === key)?.outcome
  const lost = of('load-lost') === 'cannot happen' ? of('nothing') : of('load-lost')
  const limiter = (name: string, outcome: Outcome | undefined): LimiterAlone => ({
    name,
    outcome,
    holds: outcome === 'held' || outcome === 'survived',
  })
  const alone: LimiterAlone[] = []
  if (mechanical !== 'none')
    // with every phase open nothing electrical is left
    alone.push(limiter(`the ${mechanical}`, of('winding-open')))
  const byItself =
    electrical === 'dump load' || (electrical === 'shorting switch' && short.actsAt !== undefined)
  if (electrical !== 'none')
    alone.push(
      limiter(
        `the ${electrical}`,
        byItself ? (mechanical === 'none' ? lost : of('lost-limiter')) : undefined,
      ),
    )
  const holding = alone.filter(({ holds }) => holds)
  const outdoor =
    holding.length >= 2
      ? undefined
      : holding.some(({ name }) => name === `the ${mechanical}`)
        ? 'warning'
        : 'blocking'
  const inside = holding.length > 0 ? undefined : 'note'
  return { alone, verdict: { demonstration: inside, bench: inside, outdoor } }
}
