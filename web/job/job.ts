/** A job: a long question that a worker answers in steps, one file each. */

/** What a job tells between two steps: the fraction done, beside it what is known so far where that is worth showing. */
export type JobStep<SoFar = never> = number | { readonly fraction: number; readonly soFar: SoFar }

export type JobSteps<Report, SoFar = never> = Generator<JobStep<SoFar>, Report>

export interface Job<Name extends string, Asked, Report, SoFar = never> {
  readonly name: Name
  /** Throws an error whose message can be shown where it cannot be answered. */
  readonly steps: (asked: Asked) => JobSteps<Report, SoFar> | Promise<JobSteps<Report, SoFar>>
}

/** Lets the compiler find out name, question and report. */
export const job = <const Name extends string, Asked, Report, SoFar = never>(
  one: Job<Name, Asked, Report, SoFar>,
): Job<Name, Asked, Report, SoFar> => one
