/** The guesses as a page of text: how far they let every result be off, whose doing it is, what to measure next. */
import type { NextMeasurement } from '../analysis/measure-next.ts'
import type { ResultSpread, SpreadStudy } from '../analysis/spread.ts'
import type { SpreadOutput } from '../analysis/spread-output.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { intervalText } from './interval-words.ts'
import { type SpreadWords, scaledSpread, spreadWords } from './spread-result.ts'
import { textTable, wrapped } from './text-table.ts'

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })

const columns = 96

export const percent = (share: number): string => `${Math.round(100 * share)} %`

/** "6.1 to 7.5 W" */
export const rangeText = (low: number, high: number, suffix: string): string =>
  `${formatNumber(fromSi(low, unit(suffix)))} to ${formatSi(high, suffix)}`

export const effortText = ({ hours, days }: Pick<NextMeasurement, 'hours' | 'days'>): string =>
  `${formatNumber(hours, 2)} h of work${days > 0 ? ` and ${days} days of waiting` : ''}`

/** A share of the variance below which nothing is told of what guesses do together only. */
export const leastTogether = 0.05

/** What causes do beside each other, where it is worth a word. */
export function togetherText({ together, pair }: ResultSpread): string | undefined {
  if (together < leastTogether) return undefined
  const whom = pair === undefined ? '' : `, most of all ${pair[0]} and ${pair[1]}`
  return `${percent(together)} of it comes only from guesses together${whom}`
}

/** The results for which measurements are told, the first that any guess moves. */
const toldResults = ['energy', 'usefulPower', 'cutInWind', 'hottestCopper', 'runawayVoltage'] as const

function measureLines(spread: ResultSpread, { title: name, suffix }: SpreadWords): PageLine[] {
  if (spread.next.length === 0) return []
  return [
    title(`${name}, ${intervalText(spread.value, suffix, spread)}: measure next`),
    ...spread.next
      .slice(0, 3)
      .flatMap(({ path, instrument, doing, gain, low, high, hours, days }, k) =>
        wrapped(
          `  ${k + 1}  ${path} with ${instrument}: ${doing}. Then ${rangeText(low, high, suffix)}, ${percent(gain)} narrower, for ${effortText({ hours, days })}.`,
          columns,
          '     ',
        ).map(plain),
      ),
    plain(''),
  ]
}

export interface SpreadPageParts {
  readonly name: string
  readonly study: SpreadStudy
}

export function spreadPage({ name, study }: SpreadPageParts): PageLine[] {
  const { results, samples, states, seed, drawn, asked } = study
  if (drawn.length === 0)
    return [title(name), plain('Nothing in this design is guessed: no result has a spread.')]
  const rows = Object.entries(spreadWords).map(([output, told]) => ({
    told,
    spread: scaledSpread(results[output as SpreadOutput], told.scale),
  }))
  const number = (si: number, { suffix }: SpreadWords) =>
    Number.isFinite(si) ? formatNumber(fromSi(si, unit(suffix))) : 'never'
  const table = textTable(
    [
      { head: 'result', align: 'left' },
      { head: 'plain', align: 'right' },
      { head: '5 %', align: 'right' },
      { head: 'middle', align: 'right' },
      { head: '95 %', align: 'right' },
      { head: 'unit', align: 'left' },
      { head: 'never', align: 'right' },
    ],
    rows.map(({ told, spread: { value, low, median, high, never } }) => [
      told.title,
      ...[value, low, median, high].map((si) => number(si, told)),
      unit(told.suffix).symbol.trim(),
      never > 0 ? percent(never) : '',
    ]),
  )
  const causes = rows.flatMap(({ told, spread }) => {
    if (spread.causes.length === 0) return []
    const list = spread.causes.map(({ path, share }) => `${path} ${percent(share)}`).join(', ')
    const more = togetherText(spread)
    return wrapped(`  ${told.title}: ${list}${more === undefined ? '' : `; ${more}`}`, columns, '    ').map(
      plain,
    )
  })
  return [
    title(`${name}: all guesses at once`),
    ...wrapped(
      `${samples} draws of ${drawn.length} guesses (${states} of them with blades, magnets and circuit of their own), seed ${seed}. Nine of ten draws lie between the two ends. The telling wind is ${formatSi(asked.telling, 'm_per_s', 2)}, the mean one ${formatSi(asked.mean, 'm_per_s', 2)}, twice as much ${formatSi(asked.strong, 'm_per_s', 2)}.`,
      columns,
    ).map(faint),
    plain(''),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    plain(''),
    title('Whose doing it is, as shares of the variance'),
    ...causes,
    plain(''),
    ...toldResults.flatMap((output) =>
      measureLines(scaledSpread(results[output], spreadWords[output].scale), spreadWords[output]),
    ),
    ...wrapped(
      'Hours, and what an instrument leaves open, are common practice without a source. The interval after a measurement takes the guess’s own effect out of every draw and puts back what is left of it, as if the measurement found the present value.',
      columns,
    ).map(faint),
  ]
}
