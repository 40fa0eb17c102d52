/** The first machines from what somebody has at hand, the best of each kind told as it is found. */

import { within } from '../../src/analysis/step.ts'
import { type FirstMachine, firstMachines, parseStock, spreadStudy } from '../../src/index.ts'
import { type FirstCard, type FirstReason, firstCard, firstReason } from '../../src/output/first-card.ts'
import { faultError } from './asked.ts'
import { type JobSteps, job } from './job.ts'

export interface FirstReport {
  /** The best first. */
  readonly cards: readonly FirstCard[]
  readonly reason: FirstReason | undefined
  /** Kinds that cannot be built from this stock, and why. */
  readonly without: readonly { readonly kind: string; readonly reason: string }[]
  /** Whole machines that were computed. */
  readonly trials: number
}

/** Share of the work that the search takes; how far the guesses let the found machines be off takes the rest. */
const searchShare = 0.8
/** Enough draws to tell a third from a half; the room of the guesses draws more. */
const draws = 64

function* steps({ stock: input }: { readonly stock: unknown }): JobSteps<FirstReport, readonly FirstCard[]> {
  const parsed = parseStock(input)
  if (!parsed.ok) throw faultError(parsed.faults)
  const { stock } = parsed
  const best = new Map<string, FirstMachine>()
  let news = false
  const search = firstMachines(stock, {
    better: (machine) => {
      if (!machine.charges) return
      best.set(machine.kind, machine)
      news = true
    },
  })
  let step = search.next()
  while (step.done !== true) {
    const fraction = searchShare * step.value
    if (news) yield { fraction, soFar: [...best.values()].map((machine) => firstCard(machine, stock)) }
    else yield fraction
    news = false
    step = search.next()
  }
  const { machines, without, trials } = step.value
  const cards: FirstCard[] = []
  for (const machine of machines) {
    const from = searchShare + ((1 - searchShare) * cards.length) / machines.length
    const study = yield* within(
      spreadStudy(machine.chain, { samples: draws }),
      from,
      (1 - searchShare) / machines.length,
    )
    cards.push(firstCard(machine, stock, study))
  }
  return { cards, reason: firstReason(machines), without, trials }
}

export const first = job({ name: 'first', steps })
