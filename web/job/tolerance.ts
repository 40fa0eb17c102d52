/** Many builds of a design, each as sloppy as its document says. */
import { within } from '../../src/analysis/step.ts'
import { buildTolerance } from '../../src/index.ts'
import { toleranceReport } from '../../src/output/tolerance-report.ts'
import { job } from './job.ts'
import { knownChain } from './known-chain.ts'

export const tolerance = job({
  name: 'tolerance',
  *steps({ text, builds }: { readonly text: string; readonly builds: number }) {
    const chain = yield* within(knownChain(text), 0, 0.05)
    return toleranceReport(yield* within(buildTolerance(chain, { builds }), 0.05, 0.95))
  },
})
