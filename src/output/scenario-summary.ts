/** All scenarios of a machine summed up in sentences, the gravest first. */
import type { BrakeStudy } from '../analysis/brake-wind.ts'
import type { Severity } from '../analysis/concern/concern.ts'
import type { LimiterAlone } from '../analysis/independent-limiter.ts'
import type { ScenarioRow, ScenarioTable } from '../analysis/scenario-table.ts'
import type { Outcome } from '../analysis/scenario-verdict.ts'
import { type SafetyClass, safetyClasses } from '../machine/safety-class.ts'
import { formatSi } from '../units/format.ts'
import { brakeSentence } from './brake-report.ts'
import { endWords } from './scenario-sentence.ts'

export const classWords: Readonly<Record<SafetyClass, string>> = {
  demonstration: 'class room',
  bench: 'bench',
  outdoor: 'outdoors',
}

export const severityWord = (severity: Severity | undefined): string => severity ?? 'fine'

export interface SummarySentence {
  readonly text: string
  readonly grave: boolean
}

const list = (rows: readonly ScenarioRow[]): string => rows.map(({ scenario }) => scenario.words).join('; ')

const aloneWords = ({ name, outcome, holds }: LimiterAlone): string =>
  outcome === undefined
    ? `${name} waits for somebody to act`
    : holds
      ? `${name} holds it`
      : `${name} does not (${endWords[outcome]})`

function limiterSentence({ limiters }: ScenarioTable): string[] {
  if (limiters === undefined) return []
  const { alone, verdict } = limiters
  const told =
    alone.length === 0
      ? 'It has none.'
      : `With the load lost and each left alone in turn, ${alone.map(aloneWords).join(', ')}.`
  const holding = alone.filter(({ holds }) => holds).length
  const enough =
    verdict.outdoor === undefined
      ? ' That is enough.'
      : alone.length === 0
        ? ''
        : holding === 0
          ? ' None holds.'
          : ' Only one holds.'
  return [
    `Outdoors two limiters that do not depend on each other are asked for, and a battery is never one. ${told}${enough}`,
  ]
}

const classSentence = ({ rows, verdict, safetyClass }: ScenarioTable): string =>
  `By class of use: ${safetyClasses
    .map((name) => {
      const worst = verdict[name]
      const many = rows.filter((row) => row.verdict[name] === worst).length
      const count = worst === undefined || many === 0 ? '' : `, ${many} of ${rows.length}`
      return `${classWords[name]}${name === safetyClass ? ' (its own)' : ''} ${severityWord(worst)}${count}`
    })
    .join('; ')}.`

export function scenarioSummary(table: ScenarioTable, brake: BrakeStudy | undefined): SummarySentence[] {
  const { rows, wind } = table
  const of = (outcome: Outcome) => rows.filter((row) => row.outcome === outcome)
  const sound = rows.find(({ scenario }) => scenario.key === 'nothing')
  const passed = sound?.limits.filter(({ state }) => state === 'passed') ?? []
  const away = of('runs away')
  const fastest = away.reduce((most, { run }) => Math.max(most, run?.storm.most.speed ?? 0), 0)
  const thrown = rows.filter(({ limits }) =>
    limits.some(({ kind, state }) => kind === 'magnet' && state === 'passed'),
  )
  const turned = rows.filter(({ ends }) => ends.length > 0)
  const grave = (text: string) => ({ text, grave: true })
  const plain = (text: string) => ({ text, grave: false })
  const when = (outcome: Outcome, words: string, tone: (text: string) => { text: string; grave: boolean }) =>
    of(outcome).length > 0 ? [tone(`${words}: ${list(of(outcome))}.`)] : []
  return [
    plain(classSentence(table)),
    ...(away.length > 0
      ? [
          grave(
            `It runs away, up to ${formatSi(fastest, 'rpm', 3)}, when: ${list(away)}. Nothing but the blades’ own drag limits it then.`,
          ),
        ]
      : []),
    ...(thrown.length > 0 ? [grave(`A magnet may be thrown out when: ${list(thrown)}.`)] : []),
    ...limiterSentence(table).map(table.limiters?.verdict.outdoor === 'blocking' ? grave : plain),
    ...(passed.length > 0
      ? [
          grave(
            `Even with nothing failing, a wind of ${formatSi(wind.top, 'm_per_s', 3)} is too much for: ${passed.map(({ name }) => name).join('; ')}.`,
          ),
        ]
      : []),
    ...when('damaged', 'Something is damaged when', grave),
    ...when('never begins', 'It never begins when', grave),
    ...when('survived', 'It survives with less margin than it should keep when', plain),
    ...when('held', 'It is held, with every margin kept, when', plain),
    ...when('cannot happen', 'It cannot happen to it that', plain),
    ...(turned.length > 0
      ? [
          plain(
            `Guesses decide where: ${turned
              .map(
                ({ scenario, outcome, ends }) =>
                  `${scenario.words} (${outcome}; ${ends.map((end) => `with ${end.words} ${end.outcome}`).join(', ')})`,
              )
              .join('; ')}.`,
          ),
        ]
      : []),
    ...(brake === undefined ? [] : [plain(brakeSentence(brake))]),
  ]
}
