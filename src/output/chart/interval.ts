/** Picture of how sure the results are: an interval for each, cut into what its causes bear of it. */
import { formatNumber } from '../../units/format.ts'
import { said } from '../telling.ts'
import { linearScale, niceDomain, tickStep, ticks, tickText } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { picture, px, textAt } from './picture.ts'

export interface IntervalCause {
  readonly label: string
  /** Of the variance, 0…1. */
  readonly share: number
}

export interface IntervalRow {
  readonly label: string
  /** Value and interval as words, with their unit. */
  readonly text: string
  /** In one unit: the value and the ends between which nine of ten cases lie. */
  readonly value: number
  readonly low: number
  readonly high: number
  /** The largest first. */
  readonly causes: readonly IntervalCause[]
}

export interface IntervalChart {
  readonly width: number
  readonly rows: readonly IntervalRow[]
}

const title = 'How sure the results are'

/** Of a row whose words fit into one line, and of one whose words take two [px]. */
const rowHeights = [46, 62] as const
/** Causes that have a letter and a shade of their own; the others are drawn together. */
const mostLetters = 8
/** An interval wider than this is drawn torn: it would flatten all others. */
const widest = 1.5

/** Causes of all results, each with its letter: those that bear most of all together first. */
function lettered(rows: readonly IntervalRow[]): Map<string, string> {
  const weight = new Map<string, number>()
  for (const { causes } of rows)
    for (const { label, share } of causes) weight.set(label, (weight.get(label) ?? 0) + share)
  return new Map(
    [...weight]
      .sort((a, b) => b[1] - a[1])
      .slice(0, mostLetters)
      .map(([label], k): [string, string] => [label, String.fromCharCode(97 + k)]),
  )
}

interface Segment {
  readonly share: number
  readonly letter: string
}

/** Shares of the variance as parts of the interval, what has no name last. */
function segments({ causes }: IntervalRow, letters: Map<string, string>): Segment[] {
  const named = causes
    .filter(({ label, share }) => letters.has(label) && share > 0)
    .map(({ label, share }) => ({ share, letter: letters.get(label)! }))
  const rest = 1 - named.reduce((sum, { share }) => sum + share, 0)
  return rest > 1e-6 ? [...named, { share: rest, letter: '' }] : named
}

const relative = ({ value }: IntervalRow, end: number): number => {
  const off = value === 0 ? 0 : (end - value) / Math.abs(value)
  return Number.isFinite(off) ? off : 0
}

const tickCount = (width: number): number => Math.max(6, Math.floor(width / 90))

export function intervalChart({ width, rows }: IntervalChart): string {
  const letters = lettered(rows)
  const reach = Math.min(
    widest,
    Math.max(0.02, ...rows.flatMap((row) => [-relative(row, row.low), relative(row, row.high)])),
  )
  const left = 24
  const right = 24
  const domain = niceDomain([-100 * reach, 100 * reach], tickCount(width))
  const x = linearScale(domain, [left, width - right])
  const twoLines = rows.some(
    ({ label, text }) => 7.6 * (said(label).length + said(text).length + 2) > width - 8,
  )
  const rowHeight = rowHeights[twoLines ? 1 : 0]
  const own = rowHeight - rowHeights[0]
  const top = 8
  const foot = top + rowHeight * rows.length
  const step = tickStep(domain, tickCount(width))
  const bars = rows.map((row, k) => {
    const y = top + rowHeight * k
    const ends = [
      Math.max(domain[0], 100 * relative(row, row.low)),
      Math.min(domain[1], 100 * relative(row, row.high)),
    ] as const
    const [from, to] = [x(ends[0]), x(ends[1])]
    let at = from
    const body = segments(row, letters).map(({ share, letter }) => {
      const wide = share * (to - from)
      const piece =
        `<rect class="cause cause-${letter === '' ? 'rest' : letter}" x="${px(at)}" y="${px(y + own + 21)}" width="${px(Math.max(0, wide))}" height="16"/>` +
        (wide > 13 && letter !== ''
          ? textAt(at + wide / 2, y + own + 33, letter, { className: 'stack-letter', anchor: 'middle' })
          : '')
      at += wide
      return piece
    })
    return (
      (twoLines
        ? textAt(4, y + 14, row.label, { className: 'line-label halo ink-joint' }) +
          textAt(4, y + 30, row.text, { className: 'line-label halo ink-joint' })
        : textAt(4, y + 14, `${row.label}: ${row.text}`, { className: 'line-label halo ink-joint' })) +
      body.join('') +
      `<path class="upright ink-joint" d="M${px(x(0))} ${px(y + own + 18)}v22"/>`
    )
  })
  const axis = ticks(domain, tickCount(width)).map(
    (value) =>
      `<path class="grid" d="M${px(x(value))} ${px(top)}V${px(foot)}"/>` +
      textAt(x(value), foot + 16, `${value > 0 ? '+' : ''}${tickText(value, step)}`, {
        className: 'tick-text',
        anchor: 'middle',
      }),
  )
  const columns = width >= 620 ? 3 : 1
  const keys = [...letters].map(([label, letter], k) => {
    const at = 4 + (k % columns) * ((width - 8) / columns)
    const y = foot + 46 + 19 * Math.floor(k / columns)
    return (
      `<rect class="cause cause-${letter}" x="${px(at)}" y="${px(y)}" width="16" height="14"/>` +
      textAt(at + 8, y + 11, letter, { className: 'stack-letter', anchor: 'middle' }) +
      textAt(at + 22, y + 11, label, { className: 'tick-text' })
    )
  })
  return picture(
    {
      name: 'interval',
      title,
      description: `${rows.map(({ label, text, causes }) => `${label} ${text}${causes[0] === undefined ? '' : `, mostly from ${causes[0].label}`}`).join('; ')}. Nine of ten cases lie within each bar; its parts are the shares of the causes.`,
      width,
      height: foot + 52 + 19 * Math.ceil(letters.size / columns),
    },
    axis.join('') +
      bars.join('') +
      textAt(width - right, foot + 34, 'off the result, %', { className: 'axis-text', anchor: 'end' }) +
      keys.join(''),
  )
}

export function intervalTable(rows: readonly IntervalRow[]): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'result' },
      { head: 'value and interval' },
      { head: 'down to', unit: '%' },
      { head: 'up to', unit: '%' },
      { head: 'causes, share of the variance' },
    ],
    rows: rows.map((row) => [
      row.label,
      row.text,
      100 * relative(row, row.low),
      100 * relative(row, row.high),
      row.causes.map(({ label, share }) => `${label} ${formatNumber(100 * share, 2)} %`).join('; '),
    ]),
  }
}
