/** A run of steps to their end in a worker, with messages heard in between. */
import { nextTurn } from './next-turn.ts'

/** Messages are heard this often [ms]; hearing them after every small step would cost more than the step. */
const slice = 6

/** Undefined where a newer wish supersedes it. */
export async function run<Step, Result>(
  steps: Generator<Step, Result>,
  tell: (step: Step) => void,
  superseded: () => boolean,
): Promise<Result | undefined> {
  let heardAt = Number.NEGATIVE_INFINITY
  for (;;) {
    if (performance.now() - heardAt > slice) {
      await nextTurn()
      if (superseded()) return undefined
      heardAt = performance.now()
    }
    const step = steps.next()
    if (step.done === true) return step.value
    tell(step.value)
  }
}
