/** Picture of many builds of one drawing: where nine of ten end up, beside the drawing and the target. */
import { formatNumber } from '../../units/format.ts'
import { said } from '../telling.ts'
import type { BuildScatter } from '../tolerance-report.ts'
import { linearScale, niceDomain, tickStep, ticks, tickText } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { picture, px, textAt } from './picture.ts'

export interface BuildScatterChart {
  readonly width: number
  readonly rows: readonly BuildScatter[]
}

const title = 'Where nine of ten builds end up'

/** Of a row whose words fit into one line, and of one whose words take two [px]. */
const rowHeights = [48, 64] as const

const off = (ratio: number): number => 100 * (ratio - 1)

const signed = (value: number): string => `${value > 0 ? '+' : ''}${formatNumber(value, 2)} %`

/** Whether the interval stays within what the target asks. */
const within = ({ low, high, least, most }: BuildScatter): boolean =>
  (least === undefined || low >= least) && (most === undefined || high <= most)

export function buildScatterChart({ width, rows }: BuildScatterChart): string {
  const all = rows.flatMap(({ low, high, least, most }) => [low, high, least ?? 1, most ?? 1]).map(off)
  const [left, right] = [24, 24]
  const count = Math.max(4, Math.floor(width / 90))
  const domain = niceDomain([Math.min(-0.5, ...all), Math.max(0.5, ...all)], count)
  const x = linearScale(domain, [left, width - right])
  const twoLines = rows.some(({ label, text }) => 7.6 * (said(label).length + text.length + 2) > width - 8)
  const rowHeight = rowHeights[twoLines ? 1 : 0]
  const own = rowHeight - rowHeights[0]
  const top = 8
  const foot = top + rowHeight * rows.length
  const step = tickStep(domain, count)
  const bars = rows.map(({ label, text, low, middle, high, least, most }, k) => {
    const y = top + rowHeight * k
    const bar = y + own + 22
    const bracket = (ratio: number | undefined, turn: 1 | -1) =>
      ratio === undefined
        ? ''
        : `<path class="upright ink-against" d="M${px(x(off(ratio)) + 6 * turn)} ${px(bar - 4)}h${-6 * turn}v24h${6 * turn}"/>`
    return (
      (twoLines
        ? textAt(4, y + 14, label, { className: 'line-label halo ink-joint' }) +
          textAt(4, y + 30, text, { className: 'line-label halo ink-joint' })
        : textAt(4, y + 14, `${label}: ${text}`, { className: 'line-label halo ink-joint' })) +
      `<rect class="bar ink-store" x="${px(x(off(low)))}" y="${px(bar)}" width="${px(Math.max(1, x(off(high)) - x(off(low))))}" height="16"/>` +
      `<path class="upright ink-joint" d="M${px(x(off(middle)))} ${px(bar)}v16"/>` +
      bracket(least, 1) +
      bracket(most, -1)
    )
  })
  const axis = ticks(domain, count).map(
    (value) =>
      `<path class="${Math.abs(value) < step / 1e6 ? 'axis' : 'grid'}" d="M${px(x(value))} ${px(top)}V${px(foot)}"/>` +
      textAt(x(value), foot + 16, `${value > 0 ? '+' : ''}${tickText(value, step)}`, {
        className: 'tick-text',
        anchor: 'middle',
      }),
  )
  const notes = [
    'Bar: nine of ten builds; line in it: half of them stay below.',
    ...(rows.some(({ least }) => least !== undefined) ? ['Brackets: what the target allows.'] : []),
  ].flatMap((sentence) => linesOfParagraph(sentence, Math.floor((width - 12) / 7)))
  return picture(
    {
      name: 'build-scatter',
      title,
      description: `${rows
        .map(
          (row) =>
            `${row.label} ${row.text}, ${signed(off(row.low))} to ${signed(off(row.high))} off the drawing${row.least === undefined ? '' : within(row) ? ', within the target' : ', beyond the target at an end'}`,
        )
        .join('; ')}.`,
      width,
      height: foot + 52 + 18 * notes.length,
    },
    axis.join('') +
      bars.join('') +
      textAt(width - right, foot + 34, 'off the drawing, %', { className: 'axis-text', anchor: 'end' }) +
      notes.map((text, k) => lineAt(4, foot + 56 + 18 * k, text, { className: 'tick-text' })).join(''),
  )
}

export function buildScatterTable(rows: readonly BuildScatter[]): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'of the build' },
      { head: 'nine of ten' },
      ...['5 of 100 stay below', 'mean', 'half stay below', '95 of 100 stay below'].map((head) => ({
        head,
        unit: '% off the drawing',
      })),
      { head: 'target from', unit: '% off the drawing' },
      { head: 'target to', unit: '% off the drawing' },
    ],
    rows: rows.map(({ label, text, low, mean, middle, high, least, most }) => [
      label,
      text,
      off(low),
      off(mean),
      off(middle),
      off(high),
      least === undefined ? undefined : off(least),
      most === undefined ? undefined : off(most),
    ]),
  }
}
