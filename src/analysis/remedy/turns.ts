/** Remedy: fewer turns of thicker wire or more of thinner, the window as full as before. */
import type { Design } from '../../machine/design.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyRule } from './trial.ts'
import { turnsChanges } from './turns-change.ts'

/** Turns tried, over those at hand. */
const least = 0.5
const greatest = 1.6
const mostAttempts = 40

function attempts(design: Design): Attempt[] {
  const { turns } = design.stator.winding
  const low = Math.max(1, Math.round(least * turns))
  const high = Math.round(greatest * turns)
  const ratio = (high / low) ** (1 / mostAttempts)
  const all =
    high - low <= mostAttempts
      ? Array.from({ length: high - low + 1 }, (_, k) => low + k)
      : [...new Set(Array.from({ length: mostAttempts + 1 }, (_, k) => Math.round(low * ratio ** k)))]
  return all.filter((each) => each !== turns).map((each) => ({ changes: turnsChanges(design, each) }))
}

export const turnsRemedy: RemedyRule = {
  kind: 'turns',
  unfit: ({ design }) =>
    design.stator.winding.turns < 3 ? 'so few turns cannot be changed in fine steps' : undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
