/** Many builds of the present design: how many are asked for, how far they are, their report. */
import { signal } from '@preact/signals'
import { document as design } from './design.ts'
import { jobView } from './job.ts'

/** As many as tell a first look, what is usual, and small shares. */
export const buildChoices = [256, 1024, 4096] as const

export const builds = signal<(typeof buildChoices)[number]>(256)

const view = jobView('tolerance')
export const toleranceState = view.state
export const toleranceStale = view.stale
export const stopTolerance = view.stop

export const startTolerance = (): void =>
  view.start({ text: JSON.stringify(design.value), builds: builds.value })
