/** A job as a view sees it: none, running, refused or done. Each has an engine of its own, so that edits go on being answered. */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { AskedOf, FromJob, JobName, ReportOf, SoFarOf, ToJob } from '../job/plan.ts'
import type { FromWorker, ShownFault } from '../messages.ts'
import { document as design } from './design.ts'
import type { RawObject } from './raw-document.ts'

interface Question<Name extends JobName> {
  readonly asked: AskedOf<Name>
  /** The design that stood there when it was asked. */
  readonly of: RawObject
}

export type JobState<Name extends JobName> =
  | { readonly kind: 'none' }
  | (Question<Name> & {
      readonly kind: 'running'
      readonly fraction: number
      /** What the job has told by now, where it tells anything before its end. */
      readonly soFar: SoFarOf<Name> | undefined
    })
  | (Partial<Question<Name>> & {
      readonly kind: 'refused'
      readonly reason: string
      readonly faults: readonly ShownFault[]
    })
  | (Question<Name> & { readonly kind: 'done'; readonly report: ReportOf<Name> })

export interface JobView<Name extends JobName> {
  readonly state: Signal<JobState<Name>>
  /** The design has been changed since it was asked about. */
  readonly stale: ReadonlySignal<boolean>
  /** A question in place of any earlier one. */
  readonly start: (asked: AskedOf<Name>) => void
  readonly stop: () => void
}

/** Its engine is started when it is first asked; `done` may look at a report before it is shown. */
export function jobView<Name extends JobName>(
  name: Name,
  done: (report: ReportOf<Name>) => void = () => {},
): JobView<Name> {
  const state = signal<JobState<Name>>({ kind: 'none' })
  let worker: Worker | undefined
  let newest = 0
  let question: Question<Name> | undefined

  const hear = (data: FromJob<Name>): void => {
    // an answer to an earlier question, or to one that was stopped, says nothing any more
    if (data.id !== newest || question === undefined) return
    if (data.kind === 'job-progress') {
      const { value: before } = state
      const soFar = data.soFar ?? (before.kind === 'running' ? before.soFar : undefined)
      state.value = { kind: 'running', ...question, fraction: data.fraction, soFar }
    } else if (data.kind === 'job-done') {
      done(data.report)
      state.value = { kind: 'done', ...question, report: data.report }
    } else state.value = { kind: 'refused', ...question, reason: data.reason, faults: data.faults }
  }

  const engine = (): Worker => {
    if (worker) return worker
    worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<FromWorker | FromJob<Name>>) => {
      if (data.kind !== 'sight' && 'name' in data && data.name === name) hear(data)
    }
    worker.onerror = (event) => {
      worker = undefined
      const reason = event.message || 'The engine stopped for no reason given.'
      state.value = { kind: 'refused', ...question, reason, faults: [] }
    }
    return worker
  }
  const tell = (message: ToJob<Name>) => engine().postMessage(message)

  return {
    state,
    stale: computed(() => state.value.kind === 'done' && state.value.of !== design.value),
    start: (asked) => {
      newest += 1
      question = { asked, of: design.value }
      state.value = { kind: 'running', ...question, fraction: 0, soFar: undefined }
      tell({ kind: 'job', name, id: newest, asked })
    },
    stop: () => {
      question = undefined
      if (worker) tell({ kind: 'job-stop', name })
      state.value = { kind: 'none' }
    },
  }
}
