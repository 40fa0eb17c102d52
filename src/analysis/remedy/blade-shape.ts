/** Remedy: blades shaped for another tip-speed ratio. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { inSteps, valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'

const step = 0.25
const farthest = 2
const least = 1

function attempts({ blades }: Design): Attempt[] {
  if (blades.kind !== 'optimum') return []
  const now = nominal(blades.tipSpeedRatio)
  return Array.from({ length: 2 * (farthest / step) + 1 }, (_, k) => inSteps(now - farthest + step * k, 0.01))
    .filter((ratio) => ratio >= least && ratio !== now)
    .map((ratio) => ({
      changes: [valueChange(['blades', 'tipSpeedRatio'], blades.tipSpeedRatio, ratio)],
    }))
}

export const bladeShapeRemedy: RemedyRule = {
  kind: 'blade shape',
  unfit: ({ design }) =>
    design.blades.kind === 'optimum'
      ? undefined
      : 'the blades are given as they are, not by a tip-speed ratio',
  search: (context) => bestAttempt(context, attempts(context.design)),
}
