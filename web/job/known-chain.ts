/** Chains that a worker has computed, by the text of their design, so that another question about one finds it done. */
import { type Chain, chainOf, resolveDesign, type Steps } from '../../src/index.ts'
import { askedDesign } from './asked.ts'

/** More than lie over each other at once, and few enough to hold. */
const most = 6

const known = new Map<string, Chain>()

/** Throws as a job does where the text is no design. */
export function* knownChain(text: string): Steps<Chain> {
  const there = known.get(text)
  if (there) {
    // the one used last goes last
    known.delete(text)
    known.set(text, there)
    return there
  }
  const previous = [...known.values()].at(-1)
  const chain = yield* chainOf(resolveDesign(askedDesign(text)), { previous })
  known.set(text, chain)
  const [oldest] = known.keys()
  if (known.size > most && oldest !== undefined) known.delete(oldest)
  return chain
}
