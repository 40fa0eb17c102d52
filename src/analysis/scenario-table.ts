/** Every scenario in its turn: how fast, how many volts, how hot, what holds, what breaks, what each class makes of it. */
import type { Machine } from '../machine/machine.ts'
import type { SafetyClass } from '../machine/safety-class.ts'
import { centrifugalForce } from '../physics/mechanics/retention.ts'
import { type IndependentLimiters, independentLimiters } from './independent-limiter.ts'
import { askedScenarios, type Scenario } from './scenario.ts'
import { copperLimit, type LimitCheck, limitsOf } from './scenario-limit.ts'
import { dumpOf, type ScenarioRun, scenarioRun } from './scenario-run.ts'
import { gravestVerdict, type Outcome, type Verdict, verdictOf } from './scenario-verdict.ts'
import { type Steps, within } from './step.ts'
import type { Storm } from './storm.ts'
import type { Dump } from './storm-bus.ts'
import { quickLimiter, slowLimiter } from './storm-limiter.ts'
import type { StormMachine } from './storm-machine.ts'
import type { StormWind } from './storm-wind.ts'

/** What one end of a guess would make of a row. */
export interface GuessEnd {
  readonly words: string
  readonly outcome: Outcome
}

export interface ScenarioRow {
  readonly scenario: Scenario
  /** Undefined where it cannot happen; then nothing else is said either. */
  readonly run: ScenarioRun | undefined
  /** On one magnet at the greatest speed, and what holds it without glue [N]. */
  readonly magnetForce: number
  readonly magnetHold: number
  readonly tipSpeed: number
  readonly limits: readonly LimitCheck[]
  /** What still limits the rotor at the end, in words. */
  readonly limitedBy: string
  readonly outcome: Outcome
  readonly verdict: Verdict
  /** Ends of guesses with which it would come out otherwise. */
  readonly ends: readonly GuessEnd[]
}

export interface ScenarioTable {
  readonly name: string
  /** The one that was asked for. */
  readonly wind: StormWind
  readonly inertia: StormMachine['inertia']
  readonly limiter: { readonly name: Machine['protection']['mechanical']; readonly lag: number }
  readonly safetyClass: SafetyClass
  /** The dump as it was reckoned with, and whether it was guessed. */
  readonly dump: Dump | undefined
  readonly dumpGuessed: boolean
  readonly copperLimit: { readonly name: string; readonly temperature: number }
  readonly rows: readonly ScenarioRow[]
  /** Undefined where one scenario alone was asked for. */
  readonly limiters: IndependentLimiters | undefined
  /** Of all rows and of the limiters together. */
  readonly verdict: Verdict
}

function limitedBy({ chain }: StormMachine, { last, given }: Storm): string {
  const { protection, load } = chain.machine
  const parts = [
    ...(last.short ? ['the shorted winding'] : []),
    ...(last.dump && last.current ? ['the dump load'] : []),
    ...(last.current && !last.short && !(last.dump && given.event !== 'nothing')
      ? [load.kind === 'battery' || load.kind === 'open' ? 'the current' : 'the load']
      : []),
    ...(last.limiter ? [`the ${protection.mechanical}`] : []),
  ]
  return parts.length === 0 ? 'the blades alone' : parts.join(' and ')
}

/** Winds in which blades alone are no runaway: the machine has only begun, or is at its work. */
const gentle = ({ wind }: Scenario) => wind === 'rising' || wind === 'rated'

function outcomeOf(
  { scenario, run }: { readonly scenario: Scenario; readonly run: ScenarioRun },
  loaded: boolean,
  by: string,
  limits: readonly LimitCheck[],
): Outcome {
  if (
    scenario.wind === 'rising' &&
    (run.storm.turns === undefined || (loaded && run.storm.charges === undefined))
  )
    return 'never begins'
  if (by === 'the blades alone' && !gentle(scenario)) return 'runs away'
  if (limits.some(({ state }) => state === 'passed')) return 'damaged'
  return limits.some(({ state }) => state === 'near') ? 'survived' : 'held'
}

function judged(
  parts: StormMachine,
  scenario: Scenario,
  run: ScenarioRun,
  dump: Dump | undefined,
): ScenarioRow {
  const { chain } = parts
  const { machine, runaway, blades } = chain
  const { most } = run.storm
  const magnetForce = centrifugalForce({
    mass: runaway.magnetMass,
    radius: machine.rotor.pitchRadius,
    speed: most.speed,
  })
  const limits = limitsOf(chain, parts.inertia, {
    run: run.storm,
    dump,
    magnetForce,
    unbalance: run.unbalanced?.force ?? 0,
    unbalanceSpeed: run.unbalanced?.speed ?? 0,
  })
  const by = limitedBy(parts, run.storm)
  const outcome = outcomeOf({ scenario, run }, machine.load.kind !== 'open', by, limits)
  return {
    scenario,
    run,
    magnetForce,
    magnetHold: runaway.magnetHold,
    tipSpeed: most.speed * blades.radius,
    limits,
    limitedBy: by,
    outcome,
    verdict: verdictOf({
      outcome,
      limits,
      volts: { alternating: most.lineVoltage, direct: most.directVoltage },
      surroundings: machine.wiring.surroundings,
    }),
    ends: [],
  }
}

function impossible(parts: StormMachine, scenario: Scenario): ScenarioRow {
  const { surroundings } = parts.chain.machine.wiring
  const outcome = 'cannot happen'
  return {
    scenario,
    run: undefined,
    magnetForce: 0,
    magnetHold: parts.chain.runaway.magnetHold,
    tipSpeed: 0,
    limits: [],
    limitedBy: '',
    outcome,
    verdict: verdictOf({ outcome, limits: [], volts: { alternating: 0, direct: 0 }, surroundings }),
    ends: [],
  }
}

/** Both ends of what is guessed of the limiter and of the rotor's mass. */
function guessEnds(
  parts: StormMachine,
  { limiterWorks }: Scenario,
): { words: string; parts: StormMachine }[] {
  const { mechanical } = parts.chain.machine.protection
  const { inertia } = parts
  const heavier = (factor: number): StormMachine => ({
    ...parts,
    inertia: { ...inertia, inertia: factor * inertia.inertia },
  })
  return [
    ...(mechanical !== 'none' && limiterWorks
      ? [
          { words: 'a slower limiter', parts: { ...parts, limiter: slowLimiter(mechanical) } },
          { words: 'a quicker limiter', parts: { ...parts, limiter: quickLimiter(mechanical) } },
        ]
      : []),
    ...(inertia.spread > 0
      ? [
          { words: 'a lighter rotor', parts: heavier(Math.max(0.1, 1 - inertia.spread)) },
          { words: 'a heavier rotor', parts: heavier(1 + inertia.spread) },
        ]
      : []),
  ]
}

/** One row of the table. Yields the fraction done. */
function* scenarioRow(parts: StormMachine, wind: StormWind, scenario: Scenario): Steps<ScenarioRow> {
  if (scenario.cannot !== undefined) return impossible(parts, scenario)
  const { dump } = dumpOf(parts.chain)
  // steady states and slow beginnings do not hang on how fast something acts
  const ends = gentle(scenario) ? [] : guessEnds(parts, scenario)
  const width = 1 / (ends.length + 1)
  const row = judged(parts, scenario, yield* within(scenarioRun(parts, scenario, wind), 0, width), dump)
  const others: GuessEnd[] = []
  for (const [k, end] of ends.entries()) {
    const run = yield* within(scenarioRun(end.parts, scenario, wind), (k + 1) * width, width)
    const { outcome } = judged(end.parts, scenario, run, dump)
    if (outcome !== row.outcome) others.push({ words: end.words, outcome })
  }
  return { ...row, ends: others }
}

/** The whole table, or the row of one key. Yields the fraction done. */
export function* scenarioTable(parts: StormMachine, wind: StormWind, only?: string): Steps<ScenarioTable> {
  const { chain } = parts
  const { machine } = chain
  const asked = askedScenarios(machine, only)
  const rows: ScenarioRow[] = []
  for (const [k, scenario] of asked.entries())
    rows.push(yield* within(scenarioRow(parts, wind, scenario), k / asked.length, 1 / asked.length))
  const { dump, guessed } = dumpOf(chain)
  const limiters = only === undefined ? independentLimiters(machine, rows) : undefined
  return {
    name: machine.name,
    wind,
    inertia: parts.inertia,
    limiter: { name: machine.protection.mechanical, lag: parts.limiter.lag },
    safetyClass: machine.safetyClass,
    dump,
    dumpGuessed: guessed,
    copperLimit: copperLimit(machine),
    rows,
    limiters,
    verdict: gravestVerdict([
      ...rows.map(({ verdict }) => verdict),
      ...(limiters === undefined ? [] : [limiters.verdict]),
    ]),
  }
}
