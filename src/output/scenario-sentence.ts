/** One scenario in sentences: when it began, what switched, what is near or passed, what flies, what guesses would change. */
import type { Unbalanced } from '../analysis/scenario-run.ts'
import type { ScenarioRow } from '../analysis/scenario-table.ts'
import type { Outcome } from '../analysis/scenario-verdict.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { burnt } from './scenario-number.ts'

/** A limit whose passing breaks nothing, a fuse’s or a grade’s, counts as near, but is told as it is. */
const limitWords = { kept: 'clear of', near: 'near', passed: 'past' } as const

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const percent = (share: number): string => `${formatNumber(100 * share, 2)} %`

/** Below this share a slower beat is lost in what is unlike anyway. */
const leastBeat = 0.005

function unbalanceSentences({ force, speed, flight, volts, subharmonic }: Unbalanced): string[] {
  return [
    ...(flight === undefined
      ? []
      : [
          `What leaves, ${formatSi(flight.mass, 'g', 3)}, flies off along the rim at ${formatSi(flight.speed, 'm_per_s', 3)} with ${formatSi(flight.energy, 'J', 2)}: without air it could land ${formatSi(flight.distance, 'm', 2)} away. That is information and no safe distance; nobody may stand in the plane of the rotor.`,
        ]),
    `Without it the rotor is out of balance: ${formatSi(force, 'N', 3)} go round with it at ${formatSi(speed, 'rpm', 3)} and shake bearings, mast and guys.`,
    `The line volts fall to ${percent(volts)} of the whole rotor’s. ${
      subharmonic > leastBeat
        ? `Slower beats, the strongest ${percent(subharmonic)} of them, down to once a turn, show on a scope and are heard as a throb.`
        : 'No slower beat tells of it: the wire of each phase runs round the whole ring.'
    }`,
  ]
}

const after = (time: number, words: string): string =>
  time < 0.5 ? `From the start: ${words}.` : `After ${formatNumber(time, 2)} s ${words}.`

function beginSentences({ scenario, run, outcome }: ScenarioRow): string[] {
  if (scenario.wind !== 'rising' || run === undefined) return []
  const { turns, charges } = run.storm
  if (turns === undefined) return [`It does not turn up to ${formatSi(run.storm.wind.top, 'm_per_s', 2)}.`]
  return [
    `It begins to turn after ${formatSi(turns.time, 's', 2)}, in ${formatSi(turns.wind, 'm_per_s', 2)}.`,
    charges !== undefined
      ? `Current begins after ${formatSi(charges.time, 's', 2)} at ${formatSi(charges.speed, 'rpm', 3)}, the wind then at ${formatSi(charges.wind, 'm_per_s', 2)}.`
      : outcome === 'never begins'
        ? `No current flows up to ${formatSi(run.storm.wind.top, 'm_per_s', 2)}.`
        : 'No current can flow: nothing is connected.',
  ]
}

/** The outcome as one would say it of a whole sentence. */
export const endWords: Readonly<Record<Outcome, string>> = {
  held: 'held',
  survived: 'survived with too little margin',
  damaged: 'damaged',
  'runs away': 'it runs away',
  'never begins': 'it never begins',
  'cannot happen': 'it cannot happen',
}

export function scenarioSentences(row: ScenarioRow): string[] {
  const { scenario, run, limits, limitedBy, ends, outcome } = row
  if (run === undefined) return [`It cannot happen here: ${scenario.cannot}.`]
  const { storm, unbalanced } = run
  const told = limits.filter(({ state }) => state !== 'kept')
  return [
    ...beginSentences(row),
    ...storm.happened.map(({ time, words }) => after(time, words)),
    `At the end the rotor turns at ${formatSi(storm.last.speed, 'rpm', 3)}, limited by ${limitedBy}.`,
    ...(storm.hotAt === undefined
      ? []
      : [
          storm.hotAt === 0
            ? 'The copper is too hot from the start.'
            : `The copper is too hot after ${formatNumber(storm.hotAt, 2)} s.`,
        ]),
    ...told.map(({ name, value, limit, unit, state }) => {
      const reached = unit === 'degC' && value >= burnt ? 'above 600 °C' : formatSi(value, unit, 3)
      return `${capital(name)}: ${reached}, ${value > limit ? 'past' : limitWords[state]} the limit of ${formatSi(limit, unit, 3)}.`
    }),
    ...(unbalanced === undefined ? [] : unbalanceSentences(unbalanced)),
    ...ends.map(
      ({ words, outcome: other }) =>
        `${capital(endWords[outcome])} as reckoned, but with ${words}: ${endWords[other]}.`,
    ),
  ]
}
