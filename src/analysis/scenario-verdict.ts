/** What came of a scenario, and what each safety class makes of it. */
import { type SafetyClass, safetyClasses } from '../machine/safety-class.ts'
import { type Severity, severities } from './concern/concern.ts'
import { type Surroundings, shockBand, shockSeverity, type Volts } from './concern/shock-band.ts'
import type { LimitCheck } from './scenario-limit.ts'

/**
 * held: something limits the rotor and every limit is kept with its margin. survived: a margin is eaten. damaged: a
 * limit is passed. What the scenario itself takes away does not count. runs away: at the end nothing but the blades' own drag limits the rotor.
 * never begins: the wind does not start it, or no current flows. cannot happen: the machine or its site rule it out.
 */
export type Outcome = 'held' | 'survived' | 'damaged' | 'runs away' | 'never begins' | 'cannot happen'

export type Verdict = Readonly<Record<SafetyClass, Severity | undefined>>

export interface Come {
  readonly outcome: Outcome
  readonly limits: readonly LimitCheck[]
  readonly volts: Volts
  readonly surroundings: Surroundings
}

export const graver = (a: Severity | undefined, b: Severity | undefined): Severity | undefined =>
  severities.find((severity) => severity === a || severity === b)

/** Left alone, whatever is worse than survived blocks; with people beside it, a magnet that may fly blocks a class room. */
function ofRotor({ outcome, limits }: Come, safetyClass: SafetyClass): Severity | undefined {
  if (outcome === 'held' || outcome === 'cannot happen') return undefined
  if (outcome === 'never begins') return 'warning'
  const outdoor = safetyClass === 'outdoor'
  if (outcome === 'survived') return outdoor ? 'warning' : 'note'
  if (outdoor) return 'blocking'
  const passed = limits.filter(({ state }) => state === 'passed')
  if (passed.some(({ kind }) => kind === 'magnet'))
    return safetyClass === 'demonstration' ? 'blocking' : 'warning'
  return passed.length > 0 ? 'warning' : 'note'
}

/** The rotor's limits, and the volts that people may touch, as each class sees them: common practice, no source. */
export function verdictOf(come: Come): Verdict {
  const { volts, surroundings, outcome } = come
  const band = shockBand(volts)
  const of = (safetyClass: SafetyClass) =>
    outcome === 'cannot happen'
      ? undefined
      : graver(ofRotor(come, safetyClass), shockSeverity(band, safetyClass, surroundings))
  return Object.fromEntries(safetyClasses.map((name) => [name, of(name)])) as unknown as Verdict
}

/** The gravest of many. */
export const gravestVerdict = (verdicts: readonly Verdict[]): Verdict =>
  Object.fromEntries(
    safetyClasses.map((name) => [
      name,
      verdicts.reduce<Severity | undefined>((worst, verdict) => graver(worst, verdict[name]), undefined),
    ]),
  ) as unknown as Verdict
