/** The pull between the faces of the present design: it follows the edits that touch it while somebody looks at it. */
import { computed, signal } from '@preact/signals'
import type { ReportOf } from '../job/plan.ts'
import { document as design } from './design.ts'
import { jobView } from './job.ts'
import { pullGround } from './pull-ground.ts'

/** The newest that was found, also while the next one is on its way, and the ground that it rests on. */
export const pullReport = signal<ReportOf<'pull'> | undefined>(undefined)
const reported = signal<string | undefined>(undefined)
const ground = computed(() => pullGround(design.value))
let asked: string | undefined

const view = jobView('pull', (report) => {
  pullReport.value = report
  reported.value = asked
})
export const pullState = view.state
export const pullStale = computed(() => pullReport.value !== undefined && reported.value !== ground.value)

/** Asked of each ground once; what was refused may have failed for something else. */
export function followPull(): void {
  if (asked === ground.value && pullState.value.kind !== 'refused') return
  asked = ground.value
  view.start({ text: JSON.stringify(design.value) })
}

export function stopPull(): void {
  if (pullState.value.kind !== 'running') return
  asked = undefined
  view.stop()
}
