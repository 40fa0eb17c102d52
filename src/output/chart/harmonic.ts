/** Picture of the harmonics of a phase beside those between the lines, as shares of the fundamental. */
import type { HarmonicRow, VoltageHarmonics } from '../../analysis/voltage-harmonics.ts'
import { formatNumber } from '../../units/format.ts'
import { axisBeside, linearScale, niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { picture, px, textAt } from './picture.ts'

export interface HarmonicChart {
  readonly width: number
  readonly height: number
  readonly harmonics: VoltageHarmonics
}

const title = 'Harmonics of the volts'

/** Turns per minute by a thousand, in rad/s. */
const thousandRpm = (1000 * 2 * Math.PI) / 60

/** Orders drawn at most: the strongest stay. */
const mostGroups = (width: number): number => Math.max(5, Math.floor(width / 34))

function shown(rows: readonly HarmonicRow[], count: number): HarmonicRow[] {
  const strength = ({ phaseShare, lineShare }: HarmonicRow) => Math.max(phaseShare, lineShare ?? 0)
  const kept = new Set([...rows].sort((a, b) => strength(b) - strength(a)).slice(0, count))
  return rows.filter((row) => kept.has(row))
}

const percentText = (share: number): string =>
  share === 0 ? '0' : share < 0.0005 ? '< 0.1' : formatNumber(100 * share, share < 0.1 ? 2 : 3)

const cancelWord = ({ connection }: VoltageHarmonics): string =>
  connection === 'delta' ? 'runs round inside the delta' : 'cancels between the lines'

function description({ rows, phaseDistortion, lineDistortion, connection }: VoltageHarmonics): string {
  const told = rows
    .filter(({ order }) => order > 1)
    .map(
      ({ order, phaseShare, lineShare, cancels }) =>
        `${order}: ${percentText(phaseShare)} % of a phase${lineShare === undefined ? '' : `, ${percentText(lineShare)} % between lines`}${cancels ? ', cancelled' : ''}`,
    )
  const most = rows
    .filter(({ order }) => order > 1)
    .reduce<(typeof rows)[number] | undefined>(
      (best, row) => (best === undefined || row.phaseShare > best.phaseShare ? row : best),
      undefined,
    )
  const largest = most === undefined ? '' : `, mostly of order ${most.order}`
  const between = lineDistortion === undefined ? '' : `, those between lines ${percentText(lineDistortion)} %`
  return `Beside the fundamental the volts of a phase hold ${percentText(phaseDistortion)} % of harmonics${largest}${between}${connection === 'delta' ? '; the delta is closed' : ''}. By order, in percent of the fundamental: ${told.join('; ')}.`
}

export function harmonicChart({ width, height, harmonics }: HarmonicChart): string {
  const { rows, connection, phaseDistortion, lineDistortion } = harmonics
  const groups = shown(rows, mostGroups(width))
  const left = 46
  const top = 74
  const plot = { left, top, width: Math.max(60, width - left - 10), height: Math.max(40, height - top - 52) }
  const rest = groups.filter(({ order }) => order > 1)
  const most = Math.max(1e-3, ...rest.flatMap(({ phaseShare, lineShare }) => [phaseShare, lineShare ?? 0]))
  const domain = niceDomain([0, Math.min(100, 115 * most)], 4)
  const up = linearScale(domain, [plot.height, 0])
  const step = plot.width / groups.length
  const bar = Math.min(26, step * 0.36)
  const foot = top + plot.height
  const joined = lineDistortion !== undefined
  const bars = groups.map((row, k) => {
    const middle = left + (k + 0.5) * step
    const one = (share: number, at: number, kind: string) => {
      const tall = 100 * share > domain[1]
      const y = tall ? top : top + up(100 * share)
      const tear = tall
        ? `<path class="tear" d="M${px(at - 1)} ${px(top + 14)}l${px(bar / 2)} -6l${px(bar / 2 + 2)} 6"/>`
        : ''
      return `<rect class="bar ${kind}" x="${px(at)}" y="${px(y)}" width="${px(bar)}" height="${px(Math.max(0, foot - y))}"/>${tear}`
    }
    const start = joined ? middle - bar - 1 : middle - bar / 2
    const highest = Math.min(domain[1], 100 * Math.max(row.phaseShare, row.lineShare ?? 0))
    const label = row.order === 1 || step < 40 || row.phaseShare < 5e-4 ? '' : percentText(row.phaseShare)
    return (
      `<g data-order="${row.order}">${one(row.phaseShare, start, 'ink-phase-1')}` +
      (row.lineShare === undefined ? '' : one(row.lineShare, middle + 1, 'outlined ink-wind')) +
      (label === ''
        ? ''
        : textAt(middle, top + up(highest) - 6, label, { className: 'tick-text', anchor: 'middle' })) +
      textAt(middle, foot + 18, row.cancels ? `(${row.order})` : String(row.order), {
        className: row.cancels ? 'tick-text ink-against strong' : 'tick-text',
        anchor: 'middle',
      }) +
      '</g>'
    )
  })
  const key = [
    `<rect class="bar ink-phase-1" x="4" y="4" width="12" height="12"/>` +
      textAt(22, 14, `a phase: ${percentText(phaseDistortion)} % in all`, { className: 'tick-text' }),
    joined
      ? `<rect class="bar outlined ink-wind" x="4.5" y="22.5" width="11" height="11"/>` +
        textAt(22, 32, `between lines: ${percentText(lineDistortion)} % in all`, { className: 'tick-text' })
      : textAt(22, 32, connection === 'single' ? 'one phase alone' : 'every phase has its own bridge', {
          className: 'tick-text',
        }),
  ]
  const cancelled = groups.some(({ cancels }) => cancels)
  return picture(
    { name: 'harmonics', title, description: description(harmonics), width, height },
    key.join('') +
      axisBeside(plot, { label: '% of the fundamental; torn: 100 %', domain }) +
      bars.join('') +
      `<path class="axis" d="M${px(left)} ${px(foot)}h${px(plot.width)}"/>` +
      textAt(width - 10, foot + 38, 'order of the harmonic', { className: 'axis-text', anchor: 'end' }) +
      (cancelled
        ? textAt(4, foot + 38, width < 460 ? '( ) cancels' : `( ) ${cancelWord(harmonics)}`, {
            className: 'tick-text ink-against strong',
          })
        : ''),
  )
}

export function harmonicTable(harmonics: VoltageHarmonics): ChartTable {
  const joined = harmonics.lineDistortion !== undefined
  return {
    caption: title,
    columns: [
      { head: 'order' },
      { head: 'phase, peak', unit: 'V per 1000 rpm' },
      { head: 'phase', unit: '% of fundamental' },
      ...(joined
        ? [
            { head: 'line, peak', unit: 'V per 1000 rpm' },
            { head: 'line', unit: '% of fundamental' },
            { head: 'remark' },
          ]
        : []),
    ],
    rows: harmonics.rows.map(({ order, phase, line, phaseShare, lineShare, cancels }) => [
      order,
      phase * thousandRpm,
      100 * phaseShare,
      ...(joined
        ? [
            line === undefined ? undefined : line * thousandRpm,
            lineShare === undefined ? undefined : 100 * lineShare,
            cancels ? cancelWord(harmonics) : '',
          ]
        : []),
    ]),
  }
}
