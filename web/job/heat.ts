/** The heat of a design: what its materials bear, and how long it lasts when something goes wrong. */
import { within } from '../../src/analysis/step.ts'
import { heatStudy } from '../../src/index.ts'
import { heatReport } from '../../src/output/heat-report.ts'
import { job } from './job.ts'
import { knownChain } from './known-chain.ts'

/** Of all the work, the chain of the design itself. */
const chainShare = 0.4

export const heat = job({
  name: 'heat',
  *steps({ text }: { readonly text: string }) {
    const chain = yield* within(knownChain(text), 0, chainShare)
    const study = yield* within(heatStudy(chain), chainShare, 1 - chainShare)
    return heatReport(study, chain.machine.site.ambient)
  },
})
