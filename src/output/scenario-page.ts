/** Scenarios as a page of text, and one trace as comma-separated values. */
import type { Outcome } from '../analysis/scenario-verdict.ts'
import { type StormTrace, type TraceColumn, traceColumns } from '../analysis/storm-trace.ts'
import { formatNumber } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import { brakeColumns } from './brake-report.ts'
import type { PageLine } from './chain-page.ts'
import {
  firstCircuitColumn,
  numberColumns,
  type ScenarioReport,
  type ScenarioReportRow,
  verdictColumns,
} from './scenario-report.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

/** Name and unit of each column of a trace, for people and programs. */
export const traceHeads: Readonly<Record<TraceColumn, { readonly name: string; readonly suffix: string }>> = {
  time: { name: 'time_s', suffix: 's' },
  wind: { name: 'wind_m_per_s', suffix: 'm_per_s' },
  speed: { name: 'speed_rpm', suffix: 'rpm' },
  voltage: { name: 'direct_V', suffix: 'V' },
  current: { name: 'direct_A', suffix: 'A' },
  phaseCurrent: { name: 'phase_A', suffix: 'A' },
  copperTemperature: { name: 'copper_degC', suffix: 'degC' },
  kept: { name: 'windKept', suffix: '1' },
}

const values = (trace: StormTrace, k: number): number[] =>
  traceColumns.map((name) => fromSi(trace[name][k]!, unit(traceHeads[name].suffix)))

/** Comma-separated values after RFC 4180, one sample a line. */
export function traceCsv(trace: StormTrace): string {
  const lines = [traceColumns.map((name) => traceHeads[name].name).join(',')]
  for (let k = 0; k < trace.time.length; k++)
    lines.push(
      values(trace, k)
        .map((value) => String(Number(value.toPrecision(7))))
        .join(','),
    )
  return `${lines.join('\r\n')}\r\n`
}

/** The row that tells most: the gravest, the first among equals. */
export function gravest(rows: readonly ScenarioReportRow[]): ScenarioReportRow {
  const rank: Readonly<Record<Outcome, number>> = {
    'runs away': 5,
    damaged: 4,
    'never begins': 3,
    survived: 2,
    held: 1,
    'cannot happen': 0,
  }
  return rows.reduce((worst, row) => (rank[row.outcome] > rank[worst.outcome] ? row : worst), rows[0]!)
}

const shownSamples = 16

function traceLines({ trace }: ScenarioReportRow): string[] {
  if (trace === undefined) return []
  const last = trace.time.length - 1
  const rows = Array.from({ length: shownSamples + 1 }, (_, k) =>
    values(trace, Math.round((last * k) / shownSamples)).map((value) => formatNumber(value)),
  )
  const heads = ['s', 'wind m/s', 'rpm', 'direct V', 'direct A', 'phase A', 'copper °C', 'wind kept']
  return textTable(
    heads.map((head) => ({ head, align: 'right' as const })),
    rows,
  )
}

/** A table whose rows are counted, its last column left-aligned where it is words. */
const counted = (heads: readonly string[], rows: readonly (readonly string[])[], words: boolean): string[] =>
  textTable(
    [
      { head: '', align: 'right' },
      ...heads.map((head) => ({ head, align: words ? ('left' as const) : ('right' as const) })),
    ],
    rows.map((cells, k) => [String(k + 1), ...cells]),
  )

export function scenarioPage(report: ScenarioReport): PageLine[] {
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const blank = plain('')
  const headed = (lines: readonly string[]): PageLine[] =>
    lines.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  const { rows, brake } = report
  const worst = gravest(rows)
  const numbersUpTo = (from: number, to: number) =>
    counted(
      numberColumns.slice(from, to),
      rows.map(({ numbers }) => numbers.slice(from, to)),
      false,
    )
  return [
    title(`${report.name} — scenarios`),
    ...wrapped(`  ${report.windWords}`, columns, '  ').map(plain),
    blank,
    ...report.summary.flatMap(({ text, grave }) =>
      wrapped(`  ${text}`, columns, '    ').map(
        (line): PageLine => ({ text: line, tone: grave ? 'blocking' : 'plain' }),
      ),
    ),
    blank,
    title('Each scenario in its turn'),
    ...rows.flatMap(({ words }, k) => wrapped(`  ${k + 1}  ${words}`, columns, '     ').map(plain)),
    blank,
    title('What each class of use makes of it'),
    ...headed(
      counted(
        verdictColumns,
        rows.map(({ verdicts }) => verdicts),
        true,
      ),
    ),
    blank,
    title('How fast and how hot'),
    ...headed(numbersUpTo(0, firstCircuitColumn)),
    blank,
    title('Volts and amps'),
    ...headed(numbersUpTo(firstCircuitColumn, numberColumns.length)),
    blank,
    title(`Second by second: ${worst.words}`),
    ...worst.sentences.flatMap((sentence) => wrapped(`  ${sentence}`, columns, '    ').map(plain)),
    ...headed(traceLines(worst)),
    ...(brake === undefined
      ? []
      : [
          blank,
          title('The shorted winding as a brake'),
          ...wrapped(`  ${brake.sentence}`, columns, '  ').map(plain),
          ...headed(
            textTable(
              brakeColumns.map((head) => ({ head, align: 'right' as const })),
              brake.rows,
            ),
          ),
        ]),
    blank,
    ...report.notes.flatMap((text) => wrapped(`  ${text}`, columns, '  ').map(faint)),
    ...report.cautions.flatMap((text) =>
      wrapped(`  ${text}`, columns, '  ').map((line): PageLine => ({ text: line, tone: 'warning' })),
    ),
  ]
}
