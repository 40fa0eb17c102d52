/** Heat of a design in sentences: how long each case lasts, what one shorted turn does, and which guesses it rests on. */
import { fireCaution } from '../analysis/concern/caution.ts'
import { windShare } from '../analysis/heat-film.ts'
import type { HeatCase, HeatStudy } from '../analysis/heat-study.ts'
import type { HeatTransient } from '../analysis/heat-transient.ts'
import { formatNumber, formatSi } from '../units/format.ts'

/** Seconds as people say them. */
export function duration(seconds: number): string {
  if (seconds < 90) return `${formatNumber(seconds, 2)} s`
  if (seconds < 5400) return `${formatNumber(seconds / 60, 2)} min`
  return `${formatNumber(seconds / 3600, 2)} h`
}

const caseWords = ({ key, wind, current }: HeatCase): string => {
  switch (key) {
    case 'strong wind':
      return `From cold in ${formatSi(wind, 'm_per_s')}, steady`
    case 'gust':
      return `From there into a gust of ${formatSi(wind, 'm_per_s')} that does not end and no limiter acts in`
    case 'short':
      return `Warm from work, shorted at the leads in ${formatSi(wind, 'm_per_s')}, the load lost`
    case 'heat run':
      return `On the bench, at rest, ${formatSi(current!, 'A')} in every phase, from cold`
  }
}

const verdictOf = ({ first, settledAt, samples }: HeatTransient): string => {
  const last = samples[samples.length - 1]!
  const rest =
    settledAt === undefined
      ? `not at rest after ${duration(last.time)}`
      : `at rest after about ${duration(settledAt)}`
  const reached =
    first === undefined
      ? 'no limit is ever met'
      : `${first.name} is the first to pass its ${formatSi(first.temperature, 'degC', 3)}, after ${duration(first.at!)}`
  return `${reached}; ${rest}, hottest spot ${formatSi(last.hotSpot, 'degC', 3)}, magnets ${formatSi(last.magnets, 'degC', 3)}`
}

/** What happens, what passes its limit first and when, and where it comes to rest. */
export const caseSentence = (each: HeatCase): string => `${caseWords(each)}: ${verdictOf(each.run)}.`

export function turnSentence({ shortedTurn: turn }: HeatStudy): string | undefined {
  if (turn === undefined) return undefined
  const limits = turn.limits.map(
    ({ name, at }) => `${name} ${at === undefined ? 'never' : `after ${duration(at)}`}`,
  )
  return `One turn of a coil closed on itself at ${formatSi(turn.speed, 'rpm', 3)}: ${formatSi(turn.current, 'A')} and ${formatSi(turn.power, 'W')} in it, ${formatNumber(turn.rate, 2)} K/s at first; it settles ${formatNumber(turn.rise, 2)} K above the winding round it, at ${formatSi(turn.temperature, 'degC', 3)}. Past what it bears: ${limits.join('; ')}.`
}

/** The guesses that every warmth rests on, and formulas that were used outside their range. */
export const heatNotes = (study: HeatStudy): string[] => [
  study.spread > 0
    ? `Every warmth over the air is an estimate, ± ${formatNumber(100 * study.spread, 2)} %: no measured home-built stator was found to hold it against. A heat run settles it: amps, watts in the copper and the temperature once it no longer rises; enter the K/W. Run on the bench at rest it errs to the safe side, for no wind and no turning disc cools it there.`
    : 'The way from copper to air was measured; how it is shared among the parts is estimated.',
  `Guesses it rests on: ${formatNumber(100 * windShare, 2)} % of the wind passes the machine; 1 mm of cover on each face of the winding; ${study.cast ? 'resin without voids between the wires' : 'still air between dry wires'}; painted or printed surfaces; air drawn through the gaps of discs as by a free disc, known to a factor of two.`,
  ...study.rangesLeft.map(
    ({ face, name, symbol, value, range }) =>
      `Outside its range: ${name} at ${face}, ${symbol} ${formatNumber(value, 2)} (published for ${formatNumber(range[0], 2)} to ${formatNumber(range[1], 2)}).`,
  ),
]

/** As it is told on a page: curves in time as numbers, the rest as sentences. */
export interface HeatReport {
  /** Half-width at 90 % of every warmth over the air, as a share. */
  readonly spread: number
  /** [K] */
  readonly ambient: number
  readonly limits: readonly {
    readonly name: string
    readonly temperature: number
    readonly warmest: number
  }[]
  readonly cases: readonly {
    readonly key: HeatCase['key']
    readonly sentence: string
    /** [s], [K] */
    readonly time: Float64Array
    readonly lines: readonly { readonly label: string; readonly values: Float64Array }[]
  }[]
  readonly turn: string | undefined
  readonly notes: readonly string[]
  readonly caution: string
}

export function heatReport(study: HeatStudy, ambient: number): HeatReport {
  return {
    spread: study.spread,
    ambient,
    limits: study.limits.map(({ name, temperature, warmest }) => ({ name, temperature, warmest })),
    cases: study.cases.map((each) => {
      const { samples } = each.run
      const line = (label: string, of: (sample: (typeof samples)[number]) => number) => ({
        label,
        values: Float64Array.from(samples, of),
      })
      return {
        key: each.key,
        sentence: caseSentence(each),
        time: Float64Array.from(samples, ({ time }) => time),
        lines: [
          line('hot spot', ({ hotSpot }) => hotSpot),
          line('copper', ({ copper }) => copper),
          line('support', ({ support }) => support),
          line('magnets', ({ magnets }) => magnets),
        ],
      }
    }),
    turn: turnSentence(study),
    notes: heatNotes(study),
    caution: fireCaution,
  }
}
