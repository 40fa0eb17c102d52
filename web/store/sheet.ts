/** The sheet of the present design: how far it is, what it shows. */
import { computed } from '@preact/signals'
import { presentSentences } from '../text/engine-sentence.ts'
import { allWords } from '../text/language.ts'
import { language } from '../text/say.ts'
import { document as design } from './design.ts'
import { jobView } from './job.ts'
import { measure } from './measure.ts'

const view = jobView('sheet')
export const sheetState = view.state
export const sheetStale = view.stale
/** It was set in another language than the page speaks now, or in other units. */
export const sheetForeign = computed(
  () =>
    sheetState.value.kind === 'done' &&
    (sheetState.value.asked.language !== language.value || sheetState.value.asked.measure !== measure.value),
)
export const stopSheet = view.stop

/** The day here, year-month-day, as ISO 8601 writes it. */
function today(): string {
  const now = new Date()
  const two = (value: number) => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

export const startSheet = (): void => {
  const start = () =>
    view.start({
      text: JSON.stringify(design.value),
      date: today(),
      language: language.value,
      measure: measure.value,
      sentences: presentSentences(),
    })
  // without all of them it is set with those that are there
  void allWords().then(start, start)
}
