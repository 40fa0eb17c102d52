/** An answer that several rules ask of one chain, worked out once. */
import type { UnjudgedChain } from './unjudged-chain.ts'

/** Every part but what the rules said of it. */
const sameParts = (one: object, other: object): boolean => {
  const parts = Object.entries(one).filter(([key]) => key !== 'concerns')
  return parts.every(([key, part]) => part === (other as Record<string, unknown>)[key])
}

/** Keeps the last answer beside the rows of its chain, which every change of wind or load replaces. */
export function keptAnswer<Chain extends Pick<UnjudgedChain, 'rows'>, Answer>(
  answerOf: (chain: Chain) => Answer,
): (chain: Chain) => Answer {
  const kept = new WeakMap<UnjudgedChain['rows'], { readonly of: Chain; readonly answer: Answer }>()
  return (chain) => {
    const known = kept.get(chain.rows)
    if (known !== undefined && sameParts(chain, known.of)) return known.answer
    const answer = answerOf(chain)
    kept.set(chain.rows, { of: chain, answer })
    return answer
  }
}
