/** What the scenarios came to, as plain data and words that page, terminal and other programs share. */
import { electricCaution, towerCaution, turningCaution } from '../analysis/concern/caution.ts'
import type { ScenarioStudy } from '../analysis/scenario-study.ts'
import type { ScenarioRow, ScenarioTable } from '../analysis/scenario-table.ts'
import type { Outcome, Verdict } from '../analysis/scenario-verdict.ts'
import type { StormTrace } from '../analysis/storm-trace.ts'
import { safetyClasses } from '../machine/safety-class.ts'
import { formatNumber, formatSi, formatSpread } from '../units/format.ts'
import { brakeRows, brakeSentence } from './brake-report.ts'
import { bareNumber, copperText } from './scenario-number.ts'
import { scenarioSentences } from './scenario-sentence.ts'
import { classWords, type SummarySentence, scenarioSummary, severityWord } from './scenario-summary.ts'

export interface ScenarioReportRow {
  readonly key: string
  readonly words: string
  readonly outcome: Outcome
  readonly verdict: Verdict
  /** Under `numberColumns`. */
  readonly numbers: readonly string[]
  /** Under `verdictColumns`. */
  readonly verdicts: readonly string[]
  /** One sentence each: what limits it, what is near or passed, what switched, what the guesses would change. */
  readonly sentences: readonly string[]
  /** Undefined where it cannot happen. */
  readonly trace: StormTrace | undefined
}

export interface ScenarioReport {
  readonly name: string
  /** What blew, in one sentence. */
  readonly windWords: string
  /** The gravest first. */
  readonly summary: readonly SummarySentence[]
  readonly rows: readonly ScenarioReportRow[]
  /** Sentence and rows under `brakeColumns`; undefined where no winding brakes. */
  readonly brake: { readonly sentence: string; readonly rows: readonly (readonly string[])[] } | undefined
  /** What was assumed, and what is left out. */
  readonly notes: readonly string[]
  readonly cautions: readonly string[]
}

const rotorColumns = ['rpm', 'tip m/s', 'copper °C', 'magnets °C', 'pull N', '× hold', 'unbalance N'] as const
const circuitColumns = ['direct V', 'line V', 'direct A', 'phase A'] as const
export const numberColumns = [...rotorColumns, ...circuitColumns] as const
/** Columns before it are the rotor's, those from it on the circuit's. */
export const firstCircuitColumn = rotorColumns.length

export const verdictColumns = [
  'outcome',
  ...safetyClasses.map((name) => classWords[name]),
  'limited by',
] as const

const nothing = '–'

/** Beyond this many times what holds it the number says no more. */
const farBeyond = 99

function holdShare(force: number, hold: number): string {
  if (!(hold > 0)) return 'glue'
  return force > farBeyond * hold ? `> ${farBeyond}` : formatNumber(force / hold, 2)
}

function numbersOf({ run, magnetForce, magnetHold, tipSpeed }: ScenarioRow): string[] {
  if (run === undefined) return numberColumns.map(() => nothing)
  const { most } = run.storm
  return [
    bareNumber(most.speed, 'rpm'),
    bareNumber(tipSpeed, 'm_per_s'),
    copperText(most.copperTemperature),
    copperText(most.magnetTemperature),
    bareNumber(magnetForce, 'N'),
    holdShare(magnetForce, magnetHold),
    run.unbalanced === undefined ? nothing : bareNumber(run.unbalanced.force, 'N'),
    bareNumber(most.directVoltage, 'V'),
    bareNumber(most.lineVoltage, 'V'),
    bareNumber(most.directCurrent, 'A'),
    bareNumber(most.phaseCurrent, 'A'),
  ]
}

const verdictsOf = ({ outcome, verdict, limitedBy, run }: ScenarioRow): string[] => [
  outcome,
  ...safetyClasses.map((name) => (run === undefined ? nothing : severityWord(verdict[name]))),
  run === undefined ? nothing : limitedBy,
]

/** What a piece of a blade carries; how far it flies hangs on its shape, which nobody knows before. */
function throwNote({ rows }: ScenarioTable): string {
  const tip = rows.reduce((most, { tipSpeed }) => Math.max(most, tipSpeed), 0)
  return `At the fastest of these a piece of a blade’s tip leaves with ${formatSi(tip, 'm_per_s', 3)}, and 100 g of it carry ${formatSi(0.05 * tip * tip, 'J', 2)}. How far it flies hangs on its shape: the distance to keep is set by the local authority and a competent engineer.`
}

function limiterNote({ limiter }: ScenarioTable): string {
  const own =
    limiter.name === 'none'
      ? ''
      : ` The ${limiter.name} is taken to follow within ${formatSi(limiter.lag, 's', 2)}.`
  return `Lags of limiters and switches and the weight of blades are guesses; each row whose outcome hangs on them says so.${own} A dump’s switch is taken to need 0.1 s. The wake’s own delay and the tower’s sway are left out. One phase that opens is the first; a dead converter draws nothing; a winter night is 15 K below the site’s air.`
}

export function scenarioReport({ table, brake }: ScenarioStudy): ScenarioReport {
  const { wind, inertia, dump, dumpGuessed, copperLimit } = table
  const mass = inertia.parts.map(({ name, inertia: J }) => `${name} ${formatSi(J, 'kg_m2', 2)}`).join(', ')
  return {
    name: table.name,
    windWords: `From ${formatSi(wind.at(0), 'm_per_s', 3)}, ${wind.words}: up to ${formatSi(wind.top, 'm_per_s', 3)}. What fails, fails after ${formatNumber(wind.rise, 2)} s; the copper is followed for ten minutes. Beginning, work and gusts with nothing failing have their own winds.`,
    summary: scenarioSummary(table, brake),
    rows: table.rows.map((row) => ({
      key: row.scenario.key,
      words: row.scenario.words,
      outcome: row.outcome,
      verdict: row.verdict,
      numbers: numbersOf(row),
      verdicts: verdictsOf(row),
      sentences: scenarioSentences(row),
      trace: row.run?.storm.trace,
    })),
    brake: brake === undefined ? undefined : { sentence: brakeSentence(brake), rows: brakeRows(brake) },
    notes: [
      inertia.parts.length === 0
        ? `Moment of inertia ${formatSi(inertia.inertia, 'kg_m2', 3)}, from the document.`
        : `Moment of inertia ${formatSpread(inertia.inertia, inertia.spread * inertia.inertia, 'kg_m2')}, estimated (${mass}); weigh a blade and swing it to know better.`,
      ...(dump !== undefined && dumpGuessed
        ? [
            `The dump load is guessed: ${formatSi(dump.resistance, 'ohm', 2)}, on at ${formatSi(dump.on, 'V', 3)}; enter its own figures.`,
          ]
        : []),
      `Weakest beside the copper: ${copperLimit.name}, ${formatSi(copperLimit.temperature, 'degC', 3)}.`,
      limiterNote(table),
      throwNote(table),
    ],
    cautions: [
      turningCaution,
      'Never stand in the plane of the rotor while it turns. These scenarios are reckoned, not tried: a competent engineer must judge a machine that people live beside, after the design rules in force for small turbines.',
      towerCaution,
      electricCaution,
    ],
  }
}
