/** A wind record as a page of text, and as JSON: what the import did, what the wind is like, what a design makes of it. */
import { monthNames } from '../analysis/worth-verdict.ts'
import { type ImportReport, refusalKinds } from '../measurement/import-report.ts'
import { measuredSite } from '../measurement/measured-site.ts'
import type { WindStatistics } from '../measurement/wind-statistics.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'
import type { WindComparison } from './wind-comparison.ts'

const columns = 96
const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const warning = (text: string): PageLine => ({ text, tone: 'warning' })
const block = (text: string, line = plain): PageLine[] => wrapped(`  ${text}`, columns, '    ').map(line)

const percent = (share: number): string => `${formatNumber(100 * share, 3)} %`
const metres = (speed: number): string => formatNumber(speed, 3)
const clockText = (time: number): string => new Date(time * 1000).toISOString().slice(0, 16).replace('T', ' ')

/** A time in the unit that people would say. */
export function durationText(seconds: number): string {
  const [size, word] =
    seconds >= 2 * 86_400
      ? [86_400, 'days']
      : seconds >= 2 * 3600
        ? [3600, 'hours']
        : seconds >= 120
          ? [60, 'minutes']
          : [1, 'seconds']
  return `${String(Number((seconds / size).toPrecision(3)))} ${word}`
}

/** Lines of the file, the first few by number. */
export function linesText(lines: ArrayLike<number>): string {
  const shown = Array.from({ length: Math.min(8, lines.length) }, (_, k) => lines[k]!)
  return `line${lines.length === 1 ? '' : 's'} ${shown.join(', ')}${lines.length > shown.length ? ' …' : ''}`
}

/** How the rows of the file were counted, one phrase each. */
export function rowSentences(report: ImportReport): string[] {
  const { rows, refused } = report
  return [
    `${rows.total} rows: ${rows.read} readings, ${rows.refused} refused, ${rows.header} heads, ${rows.comment} comments, ${rows.blank} blank`,
    ...refused.map(
      ({ kind, lines }) => `refused ${lines.length}: ${refusalKinds[kind]} (${linesText(lines)})`,
    ),
  ]
}

/** What was taken for granted, and what was found on the way. */
export function layoutSentences(report: ImportReport): string[] {
  const { columns: found, unit: speed, dateOrder, unused } = report
  const how = { named: 'by its name', told: 'as told', assumed: 'assumed' }[speed.how]
  return [
    `cells between ${report.separator}s, decimal ${report.decimal}; ${Object.entries(found)
      .map(([role, head]) => `${role} from “${head}”`)
      .join(', ')}${unused.length > 0 ? `; not used: ${unused.join(', ')}` : ''}`,
    `speeds in ${speed.unit}, ${how}; dates ${dateOrder.order === 'either' ? 'written plainly' : `${dateOrder.order}, ${dateOrder.how}`}`,
    `a reading every ${durationText(report.step)} (${percent(report.stepShare)} of them)${report.newestFirst ? ', newest first' : ''}${report.outOfOrder > 0 ? `; ${report.outOfOrder} rows put in order` : ''}`,
    report.gapCount === 0
      ? 'no gaps'
      : `${report.gapCount} gap${report.gapCount === 1 ? '' : 's'}, ${report.missingReadings} readings missing; the longest from ${clockText(report.gaps[0]!.from)} to ${clockText(report.gaps[0]!.to)}; ${percent(report.completeness)} complete`,
  ]
}

function importLines(report: ImportReport): PageLine[] {
  return [
    title('The file'),
    ...[...rowSentences(report), ...layoutSentences(report)].flatMap((text) => block(text)),
    ...report.remarks.flatMap((text) => block(text)),
    ...report.questions.flatMap(({ text, choices }) =>
      block(`? ${text}${choices.length > 0 ? ` (${choices.join(', ')})` : ''}`, warning),
    ),
  ]
}

/** The notes that every figure of a record needs. */
export const recordNotes = [
  'Times between readings are taken for averaging times: a logger that stores single moments shows more spread than one that averages.',
  'The model of turbulence is that of the IEC 61400-2 rules for small turbines, I = 0.18 (15 m/s + 2 v)/(3 v); sites among trees and houses are often above it.',
] as const

function statisticLines(statistics: WindStatistics): PageLine[] {
  const { weibull, rose, turbulence } = statistics
  const days = (statistics.to - statistics.from) / 86_400
  return [
    title(`The wind from ${clockText(statistics.from)} to ${clockText(statistics.to)}`),
    plain(
      `  mean ${formatSi(statistics.mean, 'm_per_s')}, deviation ${formatSi(statistics.deviation, 'm_per_s')}, greatest ${formatSi(statistics.greatest, 'm_per_s')}${statistics.greatestGust === undefined ? '' : `, greatest gust ${formatSi(statistics.greatestGust, 'm_per_s')}`}`,
    ),
    ...block(
      weibull === undefined
        ? 'no Weibull distribution fits readings that are all alike'
        : `Weibull by maximum likelihood: k ${formatNumber(weibull.shape, 3)}, A ${formatSi(weibull.scale, 'm_per_s')}`,
    ),
    ...block(
      `it carries ${formatNumber(statistics.patternFactor)} times what its mean alone would (⟨v³⟩/⟨v⟩³)`,
    ),
    ...(days < 330
      ? block(
          `${formatNumber(days, 2)} days say nothing of the seasons that were missed: the year is a guess`,
          warning,
        )
      : []),
    ...(statistics.airDensity === undefined
      ? []
      : [plain(`  air ${formatSi(statistics.airDensity, 'kg_per_m3', 4)} by its temperature and pressure`)]),
    ...(rose === undefined
      ? []
      : block(
          `from ${[...rose.sectors]
            .sort((a, b) => b.share - a.share)
            .slice(0, 4)
            .map(({ name, share, mean }) => `${name} ${percent(share)} at ${metres(mean)} m/s`)
            .join(', ')}`,
        )),
    ...(rose !== undefined && rose.shadowed.length > 0
      ? block(
          `from ${rose.shadowed.join(', ')} the wind is far weaker than from both sides: does mast, tower or house stand before the anemometer?`,
          warning,
        )
      : []),
    plain(''),
    title('By month and by hour'),
    ...textTable(
      [
        { head: 'month', align: 'left' },
        { head: 'mean m/s', align: 'right' },
        { head: 'complete', align: 'right' },
      ],
      statistics.months.map(({ year, month, mean, completeness }) => [
        `${monthNames[month - 1]} ${year}`,
        metres(mean),
        percent(completeness),
      ]),
    ).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...block(
      `hours 0 to 23: ${statistics.hourlyMean.map((mean) => (mean === undefined ? '–' : formatNumber(mean, 2))).join(' ')} m/s`,
    ),
    ...(turbulence.length === 0
      ? []
      : [
          plain(''),
          title('Turbulence within ten minutes'),
          ...textTable(
            [
              { head: 'wind m/s', align: 'right' },
              { head: 'stretches', align: 'right' },
              { head: 'mean %', align: 'right' },
              { head: 'with deviation %', align: 'right' },
              { head: 'model %', align: 'right' },
            ],
            turbulence.map(({ wind, count, mean, characteristic, model }) => [
              formatNumber(wind, 3),
              String(count),
              ...[mean, characteristic, model].map((share) => formatNumber(100 * share, 3)),
            ]),
          ).map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
        ]),
    ...recordNotes.flatMap((text) => block(text, faint)),
  ]
}

function comparisonLines({ chain, byHistogram, byWeibull, byMean, hubWind }: WindComparison): PageLine[] {
  const { range } = chain.year
  return [
    title(`${chain.machine.name} in this wind: a year`),
    plain(`  mean wind at the hub ${formatSi(hubWind, 'm_per_s')}`),
    plain(`  by the measured frequencies ${formatSi(byHistogram, 'kWh')}`),
    ...(byWeibull === undefined
      ? []
      : [plain(`  by the Weibull distribution ${formatSi(byWeibull, 'kWh')}`)]),
    plain(`  if the mean blew all year   ${formatSi(byMean, 'kWh')}: what cubing the mean wind promises`),
    ...block(
      `a single year lies between ${formatSi(range.low, 'kWh')} and ${formatSi(range.high, 'kWh')} (nine of ten, by weather and by what is guessed of the wind)`,
    ),
  ]
}

export function windPage(
  name: string,
  report: ImportReport,
  statistics: WindStatistics,
  comparison?: WindComparison,
): PageLine[] {
  return [
    title(`Wind record ${name}`),
    plain(''),
    ...importLines(report),
    plain(''),
    ...statisticLines(statistics),
    ...(comparison === undefined ? [] : [plain(''), ...comparisonLines(comparison)]),
  ]
}

/** The same for other programs; `site` is what a design's site may take over as it is. */
export const windResult = (
  report: ImportReport,
  statistics: WindStatistics,
  comparison?: WindComparison,
) => ({
  report: {
    ...report,
    refused: report.refused.map(({ kind, lines }) => ({ kind, lines: Array.from(lines) })),
  },
  statistics: {
    readings: statistics.readings,
    from: clockText(statistics.from),
    to: clockText(statistics.to),
    mean_m_per_s: statistics.mean,
    deviation_m_per_s: statistics.deviation,
    greatest_m_per_s: statistics.greatest,
    greatestGust_m_per_s: statistics.greatestGust ?? null,
    patternFactor: statistics.patternFactor,
    weibullShape: statistics.weibull?.shape ?? null,
    weibullScale_m_per_s: statistics.weibull?.scale ?? null,
    averaging_s: statistics.averaging,
    months: statistics.months.map(({ mean, ...rest }) => ({ ...rest, mean_m_per_s: mean })),
    hourlyMean_m_per_s: statistics.hourlyMean.map((mean) => mean ?? null),
    turbulence: statistics.turbulence.map(({ wind, ...rest }) => ({ wind_m_per_s: wind, ...rest })),
    rose: statistics.rose ?? null,
    temperature_degC:
      statistics.temperature === undefined ? null : fromSi(statistics.temperature, unit('degC')),
    airDensity_kg_per_m3: statistics.airDensity ?? null,
  },
  site: measuredSite(statistics),
  year:
    comparison === undefined
      ? null
      : {
          hubWind_m_per_s: comparison.hubWind,
          byHistogram_kWh: fromSi(comparison.byHistogram, unit('kWh')),
          byWeibull_kWh:
            comparison.byWeibull === undefined ? null : fromSi(comparison.byWeibull, unit('kWh')),
          byMean_kWh: fromSi(comparison.byMean, unit('kWh')),
          low_kWh: fromSi(comparison.chain.year.range.low, unit('kWh')),
          high_kWh: fromSi(comparison.chain.year.range.high, unit('kWh')),
        },
})
