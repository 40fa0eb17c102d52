/** A storm as a page of text, as JSON in workshop units, and one trace as comma-separated values. */
import type { StormStudy } from '../analysis/storm-study.ts'
import { type StormTrace, type TraceColumn, traceColumns } from '../analysis/storm-trace.ts'
import { formatNumber } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { brakeColumns, type StormReport, type StormReportRow, stormColumns } from './storm-report.ts'
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
export function stormCsv(trace: StormTrace): string {
  const lines = [traceColumns.map((name) => traceHeads[name].name).join(',')]
  for (let k = 0; k < trace.time.length; k++)
    lines.push(
      values(trace, k)
        .map((value) => String(Number(value.toPrecision(7))))
        .join(','),
    )
  return `${lines.join('\r\n')}\r\n`
}

/** The rows that tell most: the graver first, the failure's own order among equals. */
export function gravest(rows: readonly StormReportRow[]): StormReportRow {
  const rank = { 'runs away': 3, damaged: 2, survived: 1, held: 0 } as const
  return rows.reduce((worst, row) => (rank[row.outcome] > rank[worst.outcome] ? row : worst), rows[0]!)
}

const shownSamples = 16

function traceLines({ trace }: StormReportRow): string[] {
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

export function stormPage(report: StormReport): PageLine[] {
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const blank = plain('')
  const { rows, brake } = report
  const limitedBy = stormColumns.length - 1
  const table = textTable(
    [
      { head: '', align: 'right' },
      ...stormColumns.slice(0, limitedBy).map((head, k) => ({
        head,
        align: k === 0 ? ('left' as const) : ('right' as const),
      })),
    ],
    rows.map(({ cells }, k) => [String(k + 1), ...cells.slice(0, limitedBy)]),
  )
  const worst = gravest(rows)
  return [
    title(`${report.name} — in a storm`),
    ...wrapped(`  ${report.windWords}`, columns, '  ').map(plain),
    blank,
    ...report.verdict.flatMap((sentence) =>
      wrapped(`  ${sentence}`, columns, '    ').map(
        (text): PageLine => ({
          text,
          tone: /runs away|thrown/.test(sentence)
            ? 'blocking'
            : /damaged|too much/.test(sentence)
              ? 'warning'
              : 'plain',
        }),
      ),
    ),
    blank,
    title('Each failure in its turn'),
    ...rows.flatMap(({ words, cells }, k) =>
      wrapped(`  ${k + 1}  ${words}; limited by ${cells[limitedBy]}`, columns, '     ').map(plain),
    ),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    blank,
    title(`Second by second: ${worst.words}`),
    ...worst.sentences.flatMap((sentence) => wrapped(`  ${sentence}`, columns, '    ').map(plain)),
    ...traceLines(worst).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...(brake === undefined
      ? []
      : [
          blank,
          title('The shorted winding as a brake'),
          ...wrapped(`  ${brake.sentence}`, columns, '  ').map(plain),
          ...textTable(
            brakeColumns.map((head) => ({ head, align: 'right' as const })),
            brake.rows,
          ).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
        ]),
    blank,
    ...report.notes.flatMap((text) => wrapped(`  ${text}`, columns, '  ').map(faint)),
    ...report.cautions.flatMap((text) =>
      wrapped(`  ${text}`, columns, '  ').map((line): PageLine => ({ text: line, tone: 'warning' })),
    ),
  ]
}

/** The same for other programs; traces left out. */
export const stormResult = ({ table, brake }: StormStudy) => ({
  name: table.name,
  wind: {
    kind: table.wind.kind,
    before_m_per_s: table.wind.at(0),
    top_m_per_s: table.wind.top,
    duration_s: table.wind.duration,
  },
  inertia_kg_m2: table.inertia.inertia,
  inertiaSpread: table.inertia.spread,
  failures: table.rows.map(
    ({ failure, storm, limits, outcome, severity, limitedBy, magnetForce, tipSpeed }) => ({
      key: failure.key,
      words: failure.words,
      outcome,
      severity: severity ?? null,
      limitedBy,
      most: {
        speed_rpm: fromSi(storm.most.speed, unit('rpm')),
        at_s: storm.most.speedAt,
        direct_V: storm.most.directVoltage,
        line_V_rms: storm.most.lineVoltage,
        direct_A: storm.most.directCurrent,
        phase_A_rms: storm.most.phaseCurrent,
        dump_W: storm.most.dumpPower,
        copper_degC: fromSi(storm.most.copperTemperature, unit('degC')),
        magnetPull_N: magnetForce,
        tip_m_per_s: tipSpeed,
      },
      tooHotAfter_s: storm.hotAt ?? null,
      limits: limits.map(({ name, value, limit, unit: suffix, state }) => ({
        name,
        value: fromSi(value, unit(suffix)),
        limit: fromSi(limit, unit(suffix)),
        unit: unit(suffix).ucum,
        state,
      })),
      happened: storm.happened.map(({ time, words }) => ({ after_s: time, words })),
    }),
  ),
  brake:
    brake === undefined
      ? null
      : {
          stopsWorkingUpTo_m_per_s: brake.stops,
          stopsWithoutLoadUpTo_m_per_s: brake.stopsUnloaded,
          keepsParkedUpTo_m_per_s: brake.parks,
        },
})
