/** The answer to "is it worth it" in plain words, "no" included. */
import type { Machine } from '../machine/machine.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import type { Worth } from './worth.ts'

export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

const list = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`

/** Steps are worth a word where they bring this much more: common practice, no source. */
const tellingGain = 1.1

function answer({ year, months, standing }: Omit<Worth, 'verdict'>): string[] {
  const { energy, low, high, need } = year
  const kWh = (joule: number) => formatSi(joule, 'kWh', 2)
  const range = `${kWh(low)} to ${kWh(high)} a year, ${kWh(energy)} expected`
  // less than a joule a year is nothing
  if (energy < 1) return ['No. At this site this machine brings nothing.']
  if (need <= 0) return [`Nothing is asked of it yet; it brings ${range}.`]
  if (energy < standing)
    return [
      `No. It brings ${range}; charge controller and the like alone take ${kWh(standing)}. It would empty the battery.`,
    ]
  if (standing > 0.5 * energy)
    return [
      `Hardly. More than half of what it brings (${range}) goes into charge controller and the like (${kWh(standing)}).`,
      ...(year.cover === 'short' ? [`The need of ${kWh(need)} is not met.`] : []),
    ]
  if (months === undefined) {
    const words = {
      covered: `Yes, over the year as a whole: ${range}, and ${kWh(need)} are needed.`,
      perhaps:
        energy >= need
          ? `Probably, over the year as a whole: ${range}, and ${kWh(need)} are needed.`
          : `Probably not: ${range}, and ${kWh(need)} are needed.`,
      short: `No: ${range}, and ${kWh(need)} are needed. It would cover ${formatNumber((100 * energy) / need, 2)} % of it.`,
    }[year.cover]
    return [
      words,
      'Months are not known: a year that is covered as a whole may well have calm months that are not. Give twelve monthly means to see them.',
    ]
  }
  const short = months.filter(({ cover }) => cover === 'short')
  const unsure = months.filter(({ cover }) => cover === 'perhaps')
  const names = (some: typeof months) => list(some.map(({ month }) => monthNames[month! - 1]!))
  if (short.length === 0 && unsure.length === 0)
    return [`Yes. Every month covers its need, a poor one too: ${range}, and ${kWh(need)} are needed.`]
  if (short.length === 12)
    return [`No. No month covers its need, not even a good one: ${range}, and ${kWh(need)} are needed.`]
  return [
    short.length === 0
      ? `Mostly. ${range}, and ${kWh(need)} are needed; it depends on the weather in ${names(unsure)}.`
      : `Not by itself. ${range}, and ${kWh(need)} are needed; ${names(short)} ${short.length === 1 ? 'falls' : 'fall'} short even in a good year${unsure.length > 0 ? `, and ${names(unsure)} in a poor one` : ''}.`,
  ]
}

export function worthVerdict(worth: Omit<Worth, 'verdict'>, machine: Machine): string[] {
  const { year, autonomy, wantedAutonomy, steps } = worth
  const sentences = answer(worth)
  if (autonomy !== undefined)
    sentences.push(
      autonomy >= wantedAutonomy
        ? `The battery lasts ${formatNumber(autonomy, 2)} days without wind; ${formatNumber(wantedAutonomy, 2)} are wanted.`
        : `The battery lasts only ${formatNumber(autonomy, 2)} of the ${formatNumber(wantedAutonomy, 2)} days without wind that are wanted.`,
    )
  else if (machine.load.kind === 'battery' && year.need > 0)
    sentences.push('Give the capacity of the battery to see how many days it lasts without wind.')
  const { energy } = year
  const { storageEfficiency } = worth
  for (const kind of ['higher tower', 'larger rotor'] as const) {
    const better = steps.filter((step) => step.kind === kind)
    const said = better
      .filter((step) => step.energy * storageEfficiency > tellingGain * energy)
      .map(
        (step) =>
          `${formatSi(step.size, 'm')} ${kind === 'higher tower' ? 'of hub height' : 'of diameter'} would bring ${formatSi(step.energy * storageEfficiency, 'kWh', 2)}`,
      )
    if (said.length > 0) sentences.push(`${said.join('; ')}.`)
    else if (better.length > 0)
      sentences.push(
        kind === 'higher tower'
          ? 'A higher tower would bring hardly more, by the exponent of wind with height that the site gives.'
          : 'A larger rotor on this generator would bring hardly more.',
      )
  }
  sentences.push(
    'A larger rotor pulls harder on tower and shaft and runs into its limits sooner: look at its concerns before you build it. Local rules decide on towers.',
  )
  return sentences
}
