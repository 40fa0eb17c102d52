/** Reads the text of a wind logger's file into a clean series, every row accounted for. */
import { kelvinOf, pascalFactor, type SpeedUnit, speedUnitIn, speedUnits } from './column-role.ts'
import { type ImportReport, type RefusalKind, refusalKinds } from './import-report.ts'
import { commonStep, evenClock, orderByTime } from './logger-clock.ts'
import { type RowsRead, readRows, refuseLine } from './row-reader.ts'
import { fastestGust, sensorTrouble, spikes } from './sensor-trouble.ts'
import { type WindLayout, windLayout } from './wind-layout.ts'
import { reportOf } from './wind-report.ts'
import { type ExtraColumn, extraColumns, type SeriesColumn, type WindSeries } from './wind-series.ts'

export interface WindImportOptions {
  /** What the file does not say, or says wrongly. */
  readonly unit?: SpeedUnit | undefined
  readonly dateOrder?: 'day first' | 'month first' | undefined
  /** Head or number (from 1) of the column of wind speeds. */
  readonly windColumn?: string | undefined
}

export type WindImport =
  | { readonly ok: true; readonly series: WindSeries; readonly report: ImportReport }
  | { readonly ok: false; readonly reason: string }

type DateOrder = ImportReport['dateOrder']

/** Steps that go back, or are not the usual one: few on the clock that was meant. */
function unevenness(time: Float64Array): number {
  const common = commonStep(time)
  if (!common) return 0
  let uneven = 0
  for (let i = 1; i < time.length; i++)
    if (Math.abs(Math.abs(time[i]! - time[i - 1]!) - common.step) > 0.5) uneven++
  return uneven
}

function dateOrderOf(
  dayFirst: Float64Array,
  monthFirst: Float64Array,
  told: WindImportOptions['dateOrder'],
): DateOrder {
  let differ = false
  let onlyDay = 0
  let onlyMonth = 0
  for (let i = 0; i < dayFirst.length; i++) {
    if (Number.isNaN(monthFirst[i]!)) onlyDay++
    else if (Number.isNaN(dayFirst[i]!)) onlyMonth++
    else if (dayFirst[i] !== monthFirst[i]) differ = true
  }
  if (!differ && onlyDay + onlyMonth === 0) return { order: 'either', how: 'written plainly' }
  if (told) return { order: told, how: 'told' }
  if (onlyDay !== onlyMonth)
    return { order: onlyDay > onlyMonth ? 'day first' : 'month first', how: 'a day above 12' }
  const [byDay, byMonth] = [unevenness(dayFirst), unevenness(monthFirst)]
  if (byDay !== byMonth) return { order: byDay < byMonth ? 'day first' : 'month first', how: 'an even clock' }
  return { order: 'day first', how: 'assumed' }
}

/** Rows kept, by index into the columns as read. */
const picked = (column: Float64Array, rows: ArrayLike<number>): Float64Array =>
  Float64Array.from({ length: rows.length }, (_, k) => column[rows[k]!]!)

/** Takes rows out for a reason; gives the indices of those that stay. */
function without(
  rows: Uint32Array,
  isBad: (k: number) => RefusalKind | undefined,
  line: Float64Array,
  refused: RowsRead['refused'],
): Uint32Array {
  return rows.filter((row, k) => {
    const kind = isBad(k)
    if (kind !== undefined) refuseLine(refused, kind, line[row]!)
    return kind === undefined
  })
}

function unitOf(
  { heads, columns }: WindLayout,
  read: RowsRead,
  told: SpeedUnit | undefined,
): ImportReport['unit'] {
  if (told) return { unit: told, how: 'told' }
  const named = speedUnitIn(heads[columns.wind!] ?? '')
  if (named) return { unit: named, how: 'named' }
  const behind = [...read.units].sort((a, b) => b[1] - a[1])[0]
  return behind ? { unit: behind[0], how: 'named' } : { unit: 'm/s', how: 'assumed' }
}

function extraColumn(
  values: Float64Array,
  convert: (value: number, k: number) => number | undefined,
): SeriesColumn {
  const value = new Float64Array(values.length)
  const known = new Uint8Array(values.length)
  for (let k = 0; k < values.length; k++) {
    const found = Number.isNaN(values[k]!) ? undefined : convert(values[k]!, k)
    if (found === undefined) continue
    value[k] = found
    known[k] = 1
  }
  return { value, known }
}

function extrasOf(
  read: RowsRead,
  { columns, heads }: WindLayout,
  rows: Uint32Array,
  factor: (row: number) => number,
): WindSeries['extra'] {
  const extra: Partial<Record<ExtraColumn, SeriesColumn>> = {}
  for (const name of extraColumns) {
    const at = columns[name]
    if (at === undefined) continue
    const values = picked(read.rows.extra[name].done(), rows)
    const head = heads[at] ?? ''
    if (name === 'gust' || name === 'deviation')
      extra[name] = extraColumn(values, (value, k) => (value < 0 ? undefined : value * factor(rows[k]!)))
    else if (name === 'direction')
      extra[name] = extraColumn(values, (value) =>
        value < -360 || value > 720 ? undefined : (((value % 360) + 360) % 360) * (Math.PI / 180),
      )
    else if (name === 'temperature') {
      const kelvin = kelvinOf(head)
      extra[name] = extraColumn(values, (value) =>
        kelvin(value) > 180 && kelvin(value) < 340 ? kelvin(value) : undefined,
      )
    } else {
      const scale = pascalFactor(head, values.find((value) => !Number.isNaN(value)) ?? 0)
      extra[name] = extraColumn(values, (value) =>
        value * scale > 30_000 && value * scale < 112_000 ? value * scale : undefined,
      )
    }
  }
  return extra
}

/** Imports a file; yields the fraction done. */
export function* importWind(text: string, options: WindImportOptions = {}): Generator<number, WindImport> {
  const layout = windLayout(text, { wind: options.windColumn })
  if (!layout)
    return {
      ok: false,
      reason:
        options.windColumn === undefined
          ? 'The file must have a column of times beside a column of numbers; none was found.'
          : `The file must have a column of wind speeds named ${options.windColumn}, beside one of times; none was found.`,
    }
  const steps = readRows(text, layout)
  let read: RowsRead
  for (;;) {
    const step = steps.next()
    if (step.done === true) {
      read = step.value
      break
    }
    yield 0.8 * step.value
  }
  const { refused } = read
  const line = read.rows.line.done()
  const [dayFirst, monthFirst, zone] = [
    read.rows.dayFirst.done(),
    read.rows.monthFirst.done(),
    read.rows.zone.done(),
  ]
  yield 0.82
  const dateOrder = dateOrderOf(dayFirst, monthFirst, options.dateOrder)
  const written = dateOrder.order === 'month first' ? monthFirst : dayFirst
  let rows = without(
    Uint32Array.from(written.keys()),
    (k) => (Number.isNaN(written[k]!) ? 'no-time' : undefined),
    line,
    refused,
  )
  // a clock that says its zone needs no guess at the season: carried to the zone of the first row
  const zoned = rows.length > 0 && rows.every((row) => !Number.isNaN(zone[row]!))
  const clock = (row: number) => (zoned ? written[row]! - zone[row]! + zone[rows[0]!]! : written[row]!)
  const before = Float64Array.from(rows, clock)
  let back = 0
  for (let i = 1; i < before.length; i++) if (before[i]! < before[i - 1]!) back++
  const newestFirst = before.length > 2 && back > 0.9 * (before.length - 1)
  if (newestFirst) rows = rows.reverse()
  const raw = read.rows.wind.done()
  const rowFactor = read.rows.factor.done()
  const local = newestFirst ? before.reverse() : before
  const common = commonStep(local)
  // a file in no order at all is put in order first
  const disorder = newestFirst ? 0 : back / Math.max(1, before.length)
  const firstOrder = disorder > 0.2 ? orderByTime(local) : undefined
  if (firstOrder) rows = Uint32Array.from(firstOrder, (k) => rows[k]!)
  const ordered = firstOrder ? picked(local, firstOrder) : local
  const paced = firstOrder ? commonStep(ordered) : common
  const step = paced?.step ?? 0
  yield 0.86
  const { time: even, jumps } = zoned
    ? { time: ordered, jumps: [] }
    : evenClock(ordered, step, (i) => raw[rows[i]!] === raw[rows[i - 1]!])
  let outOfOrder = 0
  let latest = Number.NEGATIVE_INFINITY
  for (const t of newestFirst ? local : firstOrder ? local : even) {
    if (t < latest) outOfOrder++
    else latest = t
  }
  const order = orderByTime(even)
  if (order) rows = Uint32Array.from(order, (k) => rows[k]!)
  let time = order ? picked(even, order) : even
  yield 0.9
  const keep = (isBad: (k: number) => RefusalKind | undefined) => {
    const good = Uint32Array.from(rows.keys()).filter((k) => isBad(k) === undefined)
    if (good.length === rows.length) return
    const next = picked(time, good)
    rows = without(rows, isBad, line, refused)
    time = next
  }
  const unit = unitOf(layout, read, options.unit)
  const factor = (row: number) => rowFactor[row]! || speedUnits[unit.unit]
  const windOf = (row: number) => raw[row]! * factor(row)
  keep((k) => (raw[rows[k]!]! < 0 ? 'negative' : windOf(rows[k]!) > fastestGust ? 'too-fast' : undefined))
  keep((k) =>
    k > 0 && time[k] === time[k - 1]
      ? raw[rows[k]!] === raw[rows[k - 1]!]
        ? 'duplicate'
        : 'same-time'
      : undefined,
  )
  const spiky = new Set(spikes(time, Float64Array.from(rows, windOf), step))
  if (spiky.size > 0) keep((k) => (spiky.has(k) ? 'spike' : undefined))
  const trouble = sensorTrouble(Float64Array.from(rows, windOf), step)
  if (trouble.frozen.length > 0) {
    const frozen = new Uint8Array(rows.length)
    for (const { from, to } of trouble.frozen) frozen.fill(1, from, to)
    keep((k) => (frozen[k] === 1 ? 'frozen' : undefined))
  }
  yield 0.95
  if (rows.length < 2)
    return {
      ok: false,
      reason: `The file must hold two readings at least; ${rows.length} of ${read.tally.total} rows could be used (${
        [...refused].map(([kind, lines]) => `${lines.length()} where ${refusalKinds[kind]}`).join(', ') ||
        'the others are no readings'
      }).`,
    }
  const wind = Float64Array.from(rows, windOf)
  const series: WindSeries = { time, wind, extra: extrasOf(read, layout, rows, factor), step }
  return {
    ok: true,
    series,
    report: reportOf({
      layout,
      read,
      series,
      unit,
      dateOrder,
      newestFirst,
      outOfOrder,
      jumps,
      trouble,
      stepShare: paced?.share ?? 0,
    }),
  }
}
