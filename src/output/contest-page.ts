/** A contest as a page of text: the rule, the figures side by side, watts by wind, the verdict. */
import type { Contest } from '../analysis/fair-contest.ts'
import { formatNumber } from '../units/format.ts'
import type { PageLine } from './chain-page.ts'
import { contestReport } from './contest-report.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })

const block = (text: string, indent: string): PageLine[] => wrapped(`  ${text}`, columns, indent).map(plain)

const tableLines = (lines: readonly string[]): PageLine[] =>
  lines.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))

export function contestPage(contest: Contest): PageLine[] {
  const report = contestReport(contest)
  const { letters, names, changes, figures, winds, conditions, verdict } = report
  const gap = plain('')
  const values = letters.map((head) => ({ head, align: 'right' as const }))
  const whole = winds.filter(({ wind }) => Number.isInteger(wind))
  const same = (a: (typeof whole)[number] | undefined, b: (typeof whole)[number] | undefined) =>
    a !== undefined && b !== undefined && a.watts.every((value, at) => value === b.watts[at])
  // while the limiter holds, every row says the same: the first and the last will do
  const shown = whole.filter((row, k) => !(same(row, whole[k - 1]) && same(row, whole[k + 1])))
  return [
    title(report.rule),
    ...letters.flatMap((letter, k) => block(`${letter}  ${names[k]}: ${changes[k]}`, '     ')),
    gap,
    title('Verdict'),
    ...verdict.flatMap((text) => block(text, '    ')),
    gap,
    title('Side by side'),
    ...tableLines(
      textTable(
        [{ head: '', align: 'left' }, { head: '', align: 'left' }, ...values],
        figures.map(({ name, unit, values: cells }) => [name, unit, ...cells]),
      ),
    ),
    gap,
    title('Watts into the load'),
    ...tableLines(
      textTable(
        [{ head: 'wind m/s', align: 'right' }, ...values],
        shown.map(({ wind, watts }) => [formatNumber(wind, 2), ...watts.map((value) => formatNumber(value))]),
      ),
    ),
    gap,
    title('Conditions'),
    ...conditions.flatMap((text) => block(text, '    ')),
  ]
}

/** What keeps a contest from being held. */
export const refusedPage = (texts: readonly string[]): PageLine[] =>
  texts.map((text) => ({ text, tone: 'blocking' }))
