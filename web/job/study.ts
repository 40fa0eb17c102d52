/** The study of defects: a design with one defect at a time. */
import { faultStudy } from '../../src/index.ts'
import { askedDesign } from './asked.ts'
import { job } from './job.ts'

export const study = job({
  name: 'study',
  *steps({ text }: { readonly text: string }) {
    return yield* faultStudy(askedDesign(text))
  },
})
