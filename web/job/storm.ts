/** The storm: a design put through one, with everything that may happen in it. */
import { within } from '../../src/analysis/step.ts'
import { chainOf, resolveDesign, type StormWindKind, scenarioStudy } from '../../src/index.ts'
import { scenarioReport } from '../../src/output/scenario-report.ts'
import { askedDesign } from './asked.ts'
import { job } from './job.ts'

export interface StormAsked {
  readonly text: string
  readonly wind: Exclude<StormWindKind, 'logged wind'>
  /** Its highest wind [m/s]; the site's storm where none is given. */
  readonly top: number | undefined
}

export const storm = job({
  name: 'storm',
  *steps({ text, wind, top }: StormAsked) {
    const chain = yield* within(chainOf(resolveDesign(askedDesign(text))), 0, 0)
    return scenarioReport(yield* scenarioStudy(chain, { kind: wind, ...(top === undefined ? {} : { top }) }))
  },
})
