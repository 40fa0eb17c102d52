/** What a result is followed by when nobody waits for anything else: how far its guesses let it be off, and what it is worth. */
import { type Chain, drawWidth, spreadPlan, spreadStudyFrom } from '../src/index.ts'
import type { FromWorker } from './messages.ts'
import { samplerPool } from './sampler-pool.ts'

export { worthOf } from '../src/analysis/worth.ts'

const samplers = samplerPool()

interface Hearers {
  readonly say: (message: FromWorker) => void
  readonly superseded: () => boolean
}

/** A few draws for a first look, then as many as the plan likes; an edit stops them. */
async function draw(id: number, text: string, chain: Chain, { say, superseded }: Hearers): Promise<void> {
  const rounds = [{ samples: 128, curve: true }, { curve: true }]
  for (const [round, options] of rounds.entries()) {
    if (superseded()) return
    const plan = spreadPlan(chain, options)
    const none = plan.drawn.length === 0
    const values = none
      ? new Float64Array(plan.samples * drawWidth(plan))
      : await samplers.draw(text, options, plan, (fraction) =>
          say({ kind: 'spread-progress', id, fraction: round === 0 ? 0 : fraction }),
        )
    if (values === undefined) return
    const last = none || round === rounds.length - 1
    say({ kind: 'spreads', id, study: spreadStudyFrom(chain, plan, values), last })
    if (none) return
  }
}

export const drawGuesses = (
  id: number,
  text: string,
  chain: Chain,
  hearers: Hearers,
): { readonly done: Promise<void>; readonly stop: () => void } => ({
  done: draw(id, text, chain, hearers),
  stop: samplers.stop,
})
