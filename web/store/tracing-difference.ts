/** The tracing that the design is held against: which one, and what the engine found to differ. */
import { computed, effect, signal } from '@preact/signals'
import type { DifferenceReport } from '../job/difference.ts'
import { document as design, snapshot, stale } from './design.ts'
import { jobView } from './job.ts'
import { type Tracing, tracings } from './tracing.ts'

const chosenId = signal<string | undefined>(undefined)

export const chooseTracing = (id: string): void => {
  chosenId.value = id
}

/** The chosen one, else the one kept last. */
export const chosenTracing = computed(
  (): Tracing | undefined => tracings.value.find(({ id }) => id === chosenId.value) ?? tracings.value.at(-1),
)

const view = jobView('difference')
export const difference = view.state

/** The question that was asked last, so that what is known is not asked again. */
let asked = ''

/** Asked anew whenever the tracing or the computed design is another, until the function returned is called. */
export function watchDifference(): () => void {
  const end = effect(() => {
    const tracing = chosenTracing.value
    // an edit is computed for the page first
    if (tracing === undefined || stale.value || snapshot.value === undefined) return
    const from = JSON.stringify(tracing.document)
    const to = JSON.stringify(design.value)
    if (asked === from + to) return
    asked = from + to
    view.start({ from, to })
  })
  return () => {
    end()
    // nobody waits for it any more; what is done stays for the next look
    if (difference.peek().kind !== 'running') return
    asked = ''
    view.stop()
  }
}

/** What is known so far; undefined where nothing is. */
export const differenceReport = computed((): DifferenceReport | undefined => {
  const state = difference.value
  return state.kind === 'done' ? state.report : state.kind === 'running' ? state.soFar : undefined
})
