/** The pull between the faces of a design, force against distance, for putting its discs together. */

import { crushCaution, handForce } from '../../src/analysis/concern/assembly-pull.ts'
import { pullStudy } from '../../src/analysis/mechanics/mechanics-study.ts'
import { within } from '../../src/analysis/step.ts'
import { job } from './job.ts'
import { knownChain } from './known-chain.ts'

export const pull = job({
  name: 'pull',
  *steps({ text }: { readonly text: string }) {
    const chain = yield* within(knownChain(text), 0, 0.3)
    const study = yield* within(pullStudy(chain), 0.3, 0.7)
    return { ...study, drawn: chain.machine.rotor.faceDistance, handForce, caution: crushCaution }
  },
})
