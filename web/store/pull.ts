/** The pull between the faces of the present design: it follows the edits while somebody looks at it. */
import { computed, signal } from '@preact/signals'
import type { ReportOf } from '../job/plan.ts'
import { document as design } from './design.ts'
import { jobView } from './job.ts'
import type { RawObject } from './raw-document.ts'

/** The newest that was found, also while the next one is on its way, and the design it is of. */
export const pullReport = signal<ReportOf<'pull'> | undefined>(undefined)
const reported = signal<RawObject | undefined>(undefined)
let asked: RawObject | undefined

const view = jobView('pull', (report) => {
  pullReport.value = report
  reported.value = asked
})
export const pullState = view.state
export const pullStale = computed(() => pullReport.value !== undefined && reported.value !== design.value)

/** Asked of each design once. */
export function followPull(): void {
  if (asked === design.value) return
  asked = design.value
  view.start({ text: JSON.stringify(asked) })
}

export function stopPull(): void {
  if (pullState.value.kind !== 'running') return
  asked = undefined
  view.stop()
}
