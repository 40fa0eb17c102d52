/** The remedies for the match of blades and generator, each tried on the whole design. */
import { matchRemedies } from '../../src/index.ts'
import { askedDesign } from './asked.ts'
import { job } from './job.ts'

export const remedies = job({
  name: 'remedies',
  *steps({ text }: { readonly text: string }) {
    return yield* matchRemedies(askedDesign(text))
  },
})
