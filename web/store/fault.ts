/** The study of the present design with one defect at a time: how far it is, its result, the case looked at. */
import { signal } from '@preact/signals'
import { document as design } from './design.ts'
import { jobView } from './job.ts'

/** Index of the case looked at. */
export const chosenCase = signal(0)

const view = jobView('study', ({ cases }) => {
  chosenCase.value = Math.min(chosenCase.value, Math.max(0, cases.length - 1))
})
export const study = view.state
export const studyStale = view.stale
export const stopStudy = view.stop

export const startStudy = (): void => view.start({ text: JSON.stringify(design.value) })
