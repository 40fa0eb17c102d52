/** The contest: designs set against each other with something held equal. */
import { type ContestRule, fairContest } from '../../src/index.ts'
import { contestReport } from '../../src/output/contest-report.ts'
import { askedDesign } from './asked.ts'
import { job } from './job.ts'

export const contest = job({
  name: 'contest',
  *steps({ texts, rule }: { readonly texts: readonly string[]; readonly rule: ContestRule }) {
    const designs = texts.map((text, k) =>
      askedDesign(text, k === 0 ? 'This design: ' : 'The other design: '),
    )
    return contestReport(yield* fairContest(designs, { rule }))
  },
})
