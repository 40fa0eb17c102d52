/** The sheet of the present design: how far it is, what it shows. */
import { computed } from '@preact/signals'
import { presentSentences } from '../text/engine-sentence.ts'
import { language } from '../text/say.ts'
import { document as design } from './design.ts'
import { jobView } from './job.ts'

const view = jobView('sheet')
export const sheetState = view.state
export const sheetStale = view.stale
/** It was set in another language than the page speaks now. */
export const sheetForeign = computed(
  () => sheetState.value.kind === 'done' && sheetState.value.asked.language !== language.value,
)
export const stopSheet = view.stop

/** The day here, year-month-day, as ISO 8601 writes it. */
function today(): string {
  const now = new Date()
  const two = (value: number) => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

export const startSheet = (): void =>
  view.start({
    text: JSON.stringify(design.value),
    date: today(),
    language: language.value,
    sentences: presentSentences(),
  })
