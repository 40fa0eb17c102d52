/** Remedy: a wider or narrower gap, the winding staying in the middle of what it lies between. */
import type { Design } from '../../machine/design.ts'
import { gapChanges, gapStep_mm } from './gap-change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

const narrower = 12
const wider = 24

function attempts(design: Design): Attempt[] {
  return Array.from({ length: narrower + wider + 1 }, (_, k) => k - narrower)
    .filter((steps) => steps !== 0)
    .map((steps) => ({ changes: gapChanges(design, (steps * gapStep_mm) / 2) }))
    .filter(({ changes }) => changes.every(({ to }) => (to as number) > 0))
}

export const gapRemedy: RemedyRule = {
  kind: 'gap',
  unfit: () => undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
