/** The desk of a worker: takes questions to jobs, one of each kind at a time, and answers them one after another. */
import { run } from '../run.ts'
import { faultsOfError } from './asked.ts'
import type { Job, JobSteps } from './job.ts'
import { type FromJob, type JobName, jobs, type ToJob } from './plan.ts'

type Question = Extract<ToJob, { kind: 'job' }>

export interface JobDesk {
  readonly hear: (message: ToJob) => void
  readonly waiting: () => boolean
  /** Answers the one that waits longest; one that is interrupted waits on, to be begun anew. */
  readonly next: () => Promise<void>
}

async function jobOf(name: JobName): Promise<Job<JobName, unknown, unknown, unknown>> {
  try {
    return (await jobs[name]()) as Job<JobName, unknown, unknown, unknown>
  } catch {
    throw new Error('This part of the engine did not arrive. Ask again when there is a network.')
  }
}

/** `interrupted` tells that something more urgent has come. */
export function jobDesk(say: (message: FromJob) => void, interrupted: () => boolean): JobDesk {
  const questions = new Map<JobName, Question>()
  const answer = async (question: Question): Promise<void> => {
    const { name, id, asked } = question
    const superseded = () => interrupted() || questions.get(name) !== question
    // one message of each kind is the union of the messages of all jobs
    const tell = (message: { kind: FromJob['kind'] } & Record<string, unknown>) =>
      say({ ...message, name, id } as FromJob)
    try {
      const steps: JobSteps<unknown, unknown> = await (await jobOf(name)).steps(asked)
      const report = await run(
        steps,
        (step) => tell({ kind: 'job-progress', ...(typeof step === 'number' ? { fraction: step } : step) }),
        superseded,
      )
      if (report === undefined) return
      tell({ kind: 'job-done', report })
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      tell({ kind: 'job-refused', reason, faults: faultsOfError(error) })
    }
    if (questions.get(name) === question) questions.delete(name)
  }
  return {
    hear: (message) => {
      // a newer question takes its place at the end of the line
      questions.delete(message.name)
      if (message.kind === 'job') questions.set(message.name, message)
    },
    waiting: () => questions.size > 0,
    next: async () => {
      const [first] = questions.values()
      if (first) await answer(first)
    },
  }
}
