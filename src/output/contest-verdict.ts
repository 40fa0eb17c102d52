/** The verdict of a contest in plain words: who is ahead on what, by how much, and whether that can be told. */
import { type ContestRule, contestRuleWords } from '../analysis/contest-rule.ts'
import {
  type Contest,
  type Pair,
  type ScoreName,
  scoreKinds,
  scoreNames,
  workshopMargin,
} from '../analysis/fair-contest.ts'
import { formatNumber } from '../units/format.ts'

export interface ScoreWords {
  /** As a row of a table. */
  readonly figure: string
  readonly unit: string
  /** Unit shown over SI. */
  readonly factor: number
  /** As the subject of a sentence. */
  readonly subject: string
}

export const scoreWords: Readonly<Record<ScoreName, ScoreWords>> = {
  motorConstant: {
    figure: 'k_m = K_t/√R',
    unit: 'mN·m/√W',
    factor: 1e3,
    subject: 'torque for a square root of a watt in the copper (k_m)',
  },
  perMass: {
    figure: 'k_m² per copper',
    unit: '(N·m)²/(W·kg)',
    factor: 1,
    subject: 'the same for each kilogram of copper (k_m²/kg)',
  },
  perVolume: {
    figure: 'k_m² per room',
    unit: '(mN·m)²/(W·cm³)',
    factor: 1,
    subject: 'the same for each cubic centimetre of winding (k_m²/cm³)',
  },
  copperMass: { figure: 'copper', unit: 'g', factor: 1e3, subject: 'copper needed' },
  copperLoss: {
    figure: 'copper’s watts at that torque',
    unit: 'W',
    factor: 1,
    subject: 'copper’s watts at the same torque',
  },
  drag: { figure: 'drag without load', unit: 'mN·m', factor: 1e3, subject: 'drag without load' },
  temperatureRise: {
    figure: 'copper warmer at those watts',
    unit: 'K',
    factor: 1,
    subject: 'warming of the copper at equal watts',
  },
  usefulPower: {
    figure: 'into the load in that wind',
    unit: 'W',
    factor: 1,
    subject: 'power into the load in that wind',
  },
  cutInWind: { figure: 'current begins in', unit: 'm/s', factor: 1, subject: 'wind in which current begins' },
  energy: { figure: 'a year', unit: 'kWh', factor: 1 / 3.6e6, subject: 'energy of a year' },
}

/** What each rule is decided on, and the figure that it makes equal by itself. */
const decisive: Readonly<Record<ContestRule, ScoreName>> = {
  'equal-copper-mass': 'motorConstant',
  'equal-winding-volume': 'motorConstant',
  'equal-loss': 'copperMass',
  'equal-cost': 'motorConstant',
  'as-they-are': 'motorConstant',
}

const madeEqual: Readonly<Record<ContestRule, readonly ScoreName[]>> = {
  'equal-copper-mass': ['copperMass'],
  'equal-winding-volume': [],
  'equal-loss': ['motorConstant', 'copperLoss'],
  'equal-cost': [],
  'as-they-are': [],
}

/** "8.6 % ± 0.4 %": how far a ratio is from one, in the direction that the sentence takes. */
function distance({ ratio, spread }: Pair): string {
  const percent = 100 * Math.abs(ratio - 1)
  const width = 100 * spread * ratio
  const decimals = percent >= 9.95 || width >= 9.95 ? 0 : 1
  return width < 0.05
    ? `${percent.toFixed(decimals)} %`
    : `${percent.toFixed(decimals)} % ± ${width.toFixed(decimals)} %`
}

/** Contestants from the best to the worst on a score; what never happens comes last. */
function ranked({ contestants }: Contest, name: ScoreName): number[] {
  const worth = contestants.map(({ scores }) => {
    const value = scores[name]
    return scoreKinds[name].better === 'more'
      ? value
      : Number.isFinite(value)
        ? -value
        : Number.NEGATIVE_INFINITY
  })
  return worth.map((_, k) => k).sort((a, b) => worth[b]! - worth[a]! || a - b)
}

/** How a contestant is called in tables: A, B, C … */
export const letterOf = (index: number): string => String.fromCharCode(65 + index)

/** The best against one other. */
interface Clause {
  readonly other: string
  /** How far apart, as "8.6 % ± 0.4 % more". */
  readonly text: string
  readonly told: boolean
  /** The guess that would have to be settled to tell them apart, where one bears most of it. */
  readonly cause: string | undefined
}

const never = (contest: Contest, name: ScoreName, index: number): boolean => {
  const value = contest.contestants[index]!.scores[name]
  return scoreKinds[name].better === 'more' ? value === 0 : !Number.isFinite(value)
}

function clause(contest: Contest, name: ScoreName, best: number, index: number): Clause {
  const pair = contest.pairs[name][best]![index]
  const { better } = scoreKinds[name]
  const other = letterOf(index)
  if (pair === undefined) {
    const idle = never(contest, name, index)
    const both = idle && never(contest, name, best)
    const text = both ? 'neither ever comes to any' : idle ? 'never comes to any' : 'no ratio'
    return { other, text, told: idle && !both, cause: undefined }
  }
  if (Math.abs(pair.ratio - 1) < 1e-6 && pair.spread < 1e-6)
    return { other, text: 'the same', told: false, cause: undefined }
  const cause = pair.spread > workshopMargin ? pair.cause : undefined
  return { other, text: `${distance(pair)} ${better}`, told: pair.told, cause }
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** "8.6 % more than A; not to be told apart from C (1.0 % more)". */
function comparison(clauses: readonly Clause[]): string {
  const told = clauses
    .filter((each) => each.told)
    .map(({ other, text }) => (text.startsWith('never') ? `${other} ${text}` : `${text} than ${other}`))
  const untold = clauses.filter((each) => !each.told)
  if (untold.length === 0) return told.join('; ')
  const causes = [...new Set(untold.flatMap(({ cause }) => (cause === undefined ? [] : [cause])))]
  const open =
    causes.length === 0 ? '' : ` before ${listed(causes)} ${causes.length > 1 ? 'are' : 'is'} known`
  const names = listed(untold.map(({ other, text }) => `${other} (${text})`))
  return [...told, `not to be told apart from ${names}${open}`].join('; ')
}

function sentence(contest: Contest, name: ScoreName): string {
  const [best, ...others] = ranked(contest, name)
  const clauses = others.map((other) => clause(contest, name, best!, other))
  const { subject, factor, unit } = scoreWords[name]
  if (!clauses.some(({ told }) => told))
    return `${subject}: nobody is ahead; ${letterOf(best!)} is ${comparison(clauses)}.`
  const value = formatNumber(contest.contestants[best!]!.scores[name] * factor)
  return `${subject}: ${letterOf(best!)} is ahead (${value} ${unit}): ${comparison(clauses)}.`
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The decisive score first, then every other that the rule does not make equal, then what the words mean. */
export function verdictOf(contest: Contest): string[] {
  const { rule, contestants } = contest
  const main = decisive[rule]
  const others = scoreNames.filter((name) => name !== main && !madeEqual[rule].includes(name))
  const [best, ...rest] = ranked(contest, main)
  const clauses = rest.map((other) => clause(contest, main, best!, other))
  const wins = clauses.some(({ told }) => told)
  const terms = rule === 'as-they-are' ? 'As they are' : `At ${contestRuleWords[rule]}`
  const what = scoreWords[main].subject
  const scores = others.map((name) => sentence(contest, name))
  return [
    wins
      ? `${terms} ${letterOf(best!)}, “${contestants[best!]!.name}”, wins. ${capital(what)}: ${comparison(clauses)}.`
      : `${terms} nobody wins. ${capital(what)}: ${letterOf(best!)} is ${comparison(clauses)}.`,
    ...scores.map((text) => capital(text)),
    `Differences within ${formatNumber(100 * workshopMargin, 1)} %, which two machines of one drawing have, or within what the guesses leave open (90 %), are not told apart. A calculation: nothing here was measured.`,
  ]
}
