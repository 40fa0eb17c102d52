/** The jobs that a worker does, and what is said about each between it and the page. */
import type { ShownFault } from '../messages.ts'
import type { Job } from './job.ts'

/** Each is fetched when it is first asked for. */
export const jobs = {
  contest: async () => (await import('./contest.ts')).contest,
  study: async () => (await import('./study.ts')).study,
  storm: async () => (await import('./storm.ts')).storm,
  remedies: async () => (await import('./remedies.ts')).remedies,
  helps: async () => (await import('./helps.ts')).helps,
  record: async () => (await import('./record.ts')).record,
  tracing: async () => (await import('./tracing.ts')).tracing,
  difference: async () => (await import('./difference.ts')).difference,
  first: async () => (await import('./first.ts')).first,
  sheet: async () => (await import('./sheet.ts')).sheet,
  wires: async () => (await import('./wires.ts')).wires,
  pull: async () => (await import('./pull.ts')).pull,
  tolerance: async () => (await import('./tolerance.ts')).tolerance,
  heat: async () => (await import('./heat.ts')).heat,
} as const

type Listed = Awaited<ReturnType<(typeof jobs)[keyof typeof jobs]>>
export type JobName = Listed['name']
type Named<Name extends JobName> = Extract<Listed, { readonly name: Name }>

// of several names: what any of them is asked or tells
export type AskedOf<Name extends JobName> = Name extends JobName
  ? Named<Name> extends Job<Name, infer Asked, infer _Report, infer _SoFar>
    ? Asked
    : never
  : never
export type ReportOf<Name extends JobName> = Name extends JobName
  ? Named<Name> extends Job<Name, infer _Asked, infer Report, infer _SoFar>
    ? Report
    : never
  : never
export type SoFarOf<Name extends JobName> = Name extends JobName
  ? Named<Name> extends Job<Name, infer _Asked, infer _Report, infer SoFar>
    ? SoFar
    : never
  : never

export type ToJob<Name extends JobName = JobName> =
  /** A newer question to a job, or a stop, supersedes the one before. */
  | { readonly kind: 'job'; readonly name: Name; readonly id: number; readonly asked: AskedOf<Name> }
  | { readonly kind: 'job-stop'; readonly name: Name }

export type FromJob<Name extends JobName = JobName> =
  | {
      readonly kind: 'job-progress'
      readonly name: Name
      readonly id: number
      readonly fraction: number
      /** What is known so far, where that is news. */
      readonly soFar?: SoFarOf<Name>
    }
  | { readonly kind: 'job-done'; readonly name: Name; readonly id: number; readonly report: ReportOf<Name> }
  | {
      readonly kind: 'job-refused'
      readonly name: Name
      readonly id: number
      readonly reason: string
      /** Those of the entries that were handed in, where these are why. */
      readonly faults: readonly ShownFault[]
    }
