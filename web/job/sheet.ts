/** The design on one page: the whole chain, how far guesses let it be off, and the sheet of both. */
import { within } from '../../src/analysis/step.ts'
import { spreadsOf } from '../../src/index.ts'
import { measuredBy } from '../../src/output/measuring.ts'
import { sheetBody, sheetSamples } from '../../src/output/sheet/design-sheet.ts'
import { sheetStyle } from '../../src/output/sheet/sheet-style.ts'
import { toldBy } from '../../src/output/telling.ts'
import { type MeasureChoice, metricMeasure } from '../../src/units/measure-choice.ts'
import { inGerman } from '../text/german-number.ts'
import type { Language } from '../text/say.ts'
import { type Sentences, sentenceBook } from '../text/sentence-book.ts'
import { isUnit } from '../text/unit-word.ts'
import { job } from './job.ts'
import { knownChain } from './known-chain.ts'

export interface SheetAsked {
  readonly text: string
  /** Day that it bears, year-month-day. */
  readonly date: string
  readonly language: Language
  readonly measure: MeasureChoice
  /** What the engine’s sentences are in that language; none in English. */
  readonly sentences: Sentences | undefined
}

export interface SheetReport {
  /** What is shown, and the style that belongs to it. */
  readonly markup: string
  readonly style: string
}

/** The sheet’s tables of winds and its figures keep m/s and °C; lengths are the reader’s. */
const lengthsBy = (measure: MeasureChoice): MeasureChoice => ({
  ...measure,
  wind: metricMeasure.wind,
  temperature: metricMeasure.temperature,
})

export const sheet = job({
  name: 'sheet',
  *steps({ text, date, measure, sentences }: SheetAsked) {
    const chain = yield* within(knownChain(text), 0, 0.2)
    const spreads = yield* within(spreadsOf(chain, { samples: sheetSamples }), 0.2, 0.8)
    const set = () => measuredBy(lengthsBy(measure), () => sheetBody({ chain, spreads, date }))
    // told before it is set, so that it stays one page whatever room the words take
    const markup = sentences ? toldBy(sentenceBook(sentences, inGerman, isUnit).told, set) : set()
    const report: SheetReport = { markup, style: sheetStyle }
    return report
  },
})
