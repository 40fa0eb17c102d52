/** Puts together the report of an import: counts that close, gaps, questions and remarks. */
import { clockSettings } from './clock-setting.ts'
import { speedUnits } from './column-role.ts'
import { type Gap, type ImportReport, mostGaps, type WindQuestion } from './import-report.ts'
import type { RowsRead } from './row-reader.ts'
import type { Trouble } from './sensor-trouble.ts'
import type { WindLayout } from './wind-layout.ts'
import type { WindSeries } from './wind-series.ts'

/** A mean above this is rather in another unit [m/s]: common practice, no source. */
const implausibleMeanWind = 12

/** Calms longer than this are rather a stuck or iced anemometer [s]: common practice, no source. */
const suspectCalm = 3 * 86_400

/** Gusts below the mean in more than this share of rows: the columns are mixed up. */
const oddGustShare = 0.05

interface ReportParts
  extends Pick<ImportReport, 'unit' | 'dateOrder' | 'newestFirst' | 'outOfOrder' | 'jumps' | 'stepShare'> {
  readonly layout: WindLayout
  readonly read: RowsRead
  readonly series: WindSeries
  readonly trouble: Trouble
}

const separatorWords: Readonly<Record<WindLayout['separator'], string>> = {
  '\t': 'tab',
  ';': 'semicolon',
  ',': 'comma',
  '|': 'bar',
  ' ': 'space',
}

const clockText = (time: number): string => new Date(time * 1000).toISOString().slice(0, 16).replace('T', ' ')

function gapsOf({ time, step }: WindSeries): { gaps: Gap[]; gapCount: number; missingReadings: number } {
  const gaps: Gap[] = []
  let gapCount = 0
  let missingReadings = 0
  if (step > 0)
    for (let i = 1; i < time.length; i++) {
      const missing = Math.round((time[i]! - time[i - 1]!) / step) - 1
      if (missing < 1) continue
      gapCount++
      missingReadings += missing
      gaps.push({ from: time[i - 1]!, to: time[i]!, missing })
      // only the longest are shown: now and then the others go
      if (gaps.length > 50 * mostGaps) gaps.sort((a, b) => b.missing - a.missing).splice(mostGaps)
    }
  gaps.sort((a, b) => b.missing - a.missing).splice(mostGaps)
  return { gaps, gapCount, missingReadings }
}

function meanOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}

function questionsOf({ unit, dateOrder, layout, series }: ReportParts): WindQuestion[] {
  const mean = meanOf(series.wind)
  const questions: WindQuestion[] = []
  if (mean > implausibleMeanWind && unit.how !== 'told')
    questions.push({
      about: 'unit',
      text: `The mean would be ${mean.toFixed(1)} m/s, which hardly any site has. Is the column of wind really in ${unit.unit}?`,
      choices: Object.keys(speedUnits),
    })
  else if (unit.how === 'assumed')
    questions.push({
      about: 'unit',
      text: 'The file names no unit of speed; m/s was taken. Is that right?',
      choices: Object.keys(speedUnits),
    })
  if (dateOrder.how === 'assumed')
    questions.push({
      about: 'date order',
      text: 'No date tells whether the day or the month comes first; the day was taken.',
      choices: ['day first', 'month first'],
    })
  if (layout.windAssumed)
    questions.push({
      about: 'column',
      text: 'No head names the wind; the first free column of numbers was taken.',
      choices: layout.unused,
    })
  return questions
}

function settingRemarks({ series: { time, step }, stepShare }: ReportParts): string[] {
  const settings = clockSettings(time, step, stepShare)
  const worst = settings.reduce<(typeof settings)[number] | undefined>(
    (most, each) => (most === undefined || Math.abs(each.by) > Math.abs(most.by) ? each : most),
    undefined,
  )
  if (worst === undefined) return []
  return [
    `The clock was set ${settings.length === 1 ? 'once' : `${settings.length} times`}, by ${settings.length === 1 ? '' : 'up to '}${Math.round(Math.abs(worst.by))} s (${clockText(worst.at)}): until then it was ${worst.by < 0 ? 'ahead' : 'behind'} by that. Beside another logger’s watts it must be put right first.`,
  ]
}

function remarksOf(parts: ReportParts): string[] {
  const { series, trouble, jumps, dateOrder, read } = parts
  const remarks: string[] = settingRemarks(parts)
  for (const { kind, at } of jumps)
    remarks.push(
      kind === 'repeated hour'
        ? `The clock was put back an hour at ${clockText(at)}: all rows from there are counted an hour later, none is lost.`
        : `The clock was put forward an hour at ${clockText(at)}: all rows from there are counted an hour earlier, no gap is counted.`,
    )
  if (trouble.longestCalm > suspectCalm)
    remarks.push(
      `The longest calm lasts ${(trouble.longestCalm / 86_400).toFixed(1)} days. It is kept, but ask whether the anemometer was stuck or iced.`,
    )
  if (trouble.calm > 0 && trouble.calmShare > 0.01)
    remarks.push(
      `Calms read ${trouble.calm.toFixed(2)} m/s, not 0: the offset of the anemometer. They are kept as they are.`,
    )
  const gust = series.extra.gust
  if (gust) {
    let known = 0
    let odd = 0
    for (let k = 0; k < gust.value.length; k++)
      if (gust.known[k] === 1) {
        known++
        if (gust.value[k]! < series.wind[k]! - 1e-9) odd++
      }
    if (odd > oddGustShare * known)
      remarks.push('Many gusts are below the mean beside them: are the columns or their units mixed up?')
  }
  if (read.units.size > 1)
    remarks.push(
      `Units change from row to row (${[...read.units.keys()].join(', ')}); each row was taken in its own.`,
    )
  if (dateOrder.how === 'a day above 12' && (read.refused.get('no-time')?.length() ?? 0) > 0)
    remarks.push('Some dates fit only with day and month the other way round; they are among the refused.')
  return remarks
}

export function reportOf(parts: ReportParts): ImportReport {
  const { layout, read, series, trouble, unit, dateOrder, newestFirst, outOfOrder, jumps, stepShare } = parts
  const refused = [...read.refused].map(([kind, lines]) => ({ kind, lines: lines.done().sort() }))
  const columnName = (at: number) => layout.heads[at] || `column ${at + 1}`
  const refusedCount = refused.reduce((sum, { lines }) => sum + lines.length, 0)
  const { gaps, gapCount, missingReadings } = gapsOf(series)
  const { time, step } = series
  const held = step > 0 ? Math.round((time[time.length - 1]! - time[0]!) / step) + 1 : time.length
  return {
    rows: { ...read.tally, read: series.wind.length, refused: refusedCount },
    refused,
    separator: separatorWords[layout.separator],
    decimal: layout.decimal === '.' ? 'point' : 'comma',
    columns: {
      time: layout.timeColumns.map(columnName).join(' and '),
      ...Object.fromEntries(Object.entries(layout.columns).map(([role, at]) => [role, columnName(at)])),
    },
    unused: layout.unused,
    unit,
    dateOrder,
    step,
    stepShare,
    newestFirst,
    outOfOrder,
    jumps,
    gaps,
    gapCount,
    missingReadings,
    completeness: Math.min(1, series.wind.length / Math.max(1, held)),
    calm: { reading: trouble.calm, share: trouble.calmShare, longest: trouble.longestCalm },
    questions: questionsOf(parts),
    remarks: remarksOf(parts),
  }
}
