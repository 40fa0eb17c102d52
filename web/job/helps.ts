/** What helps against one concern, each remedy tried on the whole design. */
import { concernRemedies } from '../../src/index.ts'
import { askedDesign } from './asked.ts'
import { job } from './job.ts'

export const helps = job({
  name: 'helps',
  *steps({ text, code }: { readonly text: string; readonly code: string }) {
    return yield* concernRemedies(askedDesign(text), { codes: [code] })
  },
})
