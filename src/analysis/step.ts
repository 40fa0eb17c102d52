/** Long computations as steps: each yields its fraction done and returns its result. */

export type Steps<Result> = Generator<number, Result>

/** Runs steps to their end. */
export function finished<Result>(steps: Generator<unknown, Result>): Result {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

/** Steps of a part of the whole: their fractions carried to `from` … `from + width`. */
export function* within<Result>(steps: Steps<Result>, from: number, width: number): Steps<Result> {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
    yield from + width * step.value
  }
}
