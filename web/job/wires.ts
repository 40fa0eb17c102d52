/** The wire sizes next to a design’s own, each computed as a machine of its own. */
import { within } from '../../src/analysis/step.ts'
import { wireChoices } from '../../src/index.ts'
import { job } from './job.ts'
import { knownChain } from './known-chain.ts'

export interface WiresAsked {
  readonly text: string
  /** The design’s own turns in every size; else as many as a patient hand lays into the bundle. */
  readonly keepTurns: boolean
}

/** Of all the work, the chain of the design itself. */
const chainShare = 0.2

export const wires = job({
  name: 'wires',
  *steps({ text, keepTurns }: WiresAsked) {
    const chain = yield* within(knownChain(text), 0, chainShare)
    return yield* within(wireChoices(chain, { keepTurns }), chainShare, 1 - chainShare)
  },
})
