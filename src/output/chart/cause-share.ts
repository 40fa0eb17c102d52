/** Picture of what makes one result unsure: its causes in the order of their share. */
import { formatNumber } from '../../units/format.ts'
import { linearScale } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import type { IntervalCause, IntervalRow } from './interval.ts'
import { picture, px, textAt } from './picture.ts'

export interface CauseShareChart {
  readonly width: number
  readonly row: IntervalRow
}

const rowHeight = 38

const text = ({ label, share }: IntervalCause): string => `${label}: ${formatNumber(100 * share, 2)} %`

/**
 * What a cause does alone, as a part of the whole interval: errors that know nothing of each other add as squares, so
 * that a share of the variance is the square of this.
 */
const alone = ({ share }: IntervalCause): number => Math.sqrt(Math.max(0, share))

export function causeShareChart({ width, row }: CauseShareChart): string {
  const causes = [...row.causes].sort((a, b) => b.share - a.share)
  const half = Math.max(20, width / 2 - 8)
  const along = linearScale([0, 1], [0, half])
  const top = 26
  const foot = top + rowHeight * Math.max(1, causes.length)
  const bars = causes.map((cause, k) => {
    const y = top + rowHeight * k
    const long = along(alone(cause))
    return (
      textAt(4, y + 12, text(cause), { className: 'line-label ink-joint' }) +
      `<rect class="bar ink-wind" x="${px(width / 2 - long)}" y="${px(y + 18)}" width="${px(2 * long)}" height="12"/>`
    )
  })
  return picture(
    {
      name: 'cause-share',
      title: `What makes it unsure: ${row.label}`,
      description: `${row.text}. ${causes.length === 0 ? 'No guess moves it.' : causes.map(text).join(', ')}, of the variance.`,
      width,
      height: foot + 24,
    },
    textAt(4, 14, `${row.label}: ${row.text}`, { className: 'axis-text' }) +
      `<path class="axis" d="M${px(width / 2)} ${px(top)}V${px(foot)}"/>` +
      bars.join('') +
      (causes.length === 0
        ? textAt(4, top + 14, 'No guess moves it.', { className: 'tick-text' })
        : textAt(4, foot + 14, 'Bar: its effect alone; %: of the variance.', {
            className: 'tick-text',
          })),
  )
}

export function causeShareTable({ label, causes }: IntervalRow): ChartTable {
  return {
    caption: `Causes: ${label}`,
    columns: [
      { head: 'cause' },
      { head: 'of the variance', unit: '%' },
      { head: 'alone, of the interval', unit: '%' },
    ],
    rows: [...causes]
      .sort((a, b) => b.share - a.share)
      .map((cause) => [cause.label, 100 * cause.share, 100 * alone(cause)]),
  }
}
