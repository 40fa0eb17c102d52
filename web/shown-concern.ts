/** A concern as the page shows it: words, what can be tried, and what an answer to it would answer. */
import { answerFigure } from '../src/analysis/concern/answer.ts'
import { type Concern, plainConcern } from '../src/analysis/concern/concern.ts'
import { concernRules } from '../src/analysis/concerns.ts'
import type { Chain } from '../src/index.ts'
import { measureText } from '../src/output/concern-remedy-words.ts'
import { answerTexts } from '../src/output/sign-off.ts'

export interface ShownConcern
  extends Pick<Concern, 'code' | 'severity' | 'path' | 'what' | 'why' | 'figures' | 'answer'> {
  readonly remedies: readonly string[]
  /** Some remedy can be tried on the chain. */
  readonly triable: boolean
  /** The rule's quantity beside its limit. */
  readonly measure: string | undefined
  /** The reading that answers it, in a sentence; undefined where none does. */
  readonly answeredBy: string | undefined
  readonly answerTexts: readonly string[]
  /** What an answer given now is kept with. */
  readonly figure: ReturnType<typeof answerFigure> | undefined
}

export function shownConcern(chain: Chain, concern: Concern): ShownConcern {
  const { remedies, answer } = concern
  const rule = concernRules.find(({ code }) => code === concern.code)
  const measure = rule?.measure?.(chain)
  return {
    ...plainConcern(concern),
    ...(answer === undefined ? {} : { answer }),
    triable: remedies.some((remedy) => typeof remedy !== 'string'),
    measure: measure === undefined ? undefined : measureText(measure),
    answeredBy: rule?.answeredBy,
    answerTexts: answerTexts(concern),
    figure: measure === undefined || !Number.isFinite(measure.value) ? undefined : answerFigure(measure),
  }
}
