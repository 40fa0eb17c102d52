/** How a wind logger's file is laid out: what separates its cells, which rows are heads, which columns hold what. */
import { type ClockReading, clockReading } from './clock-text.ts'
import { type ColumnRole, isUnitRow, roleOfHead } from './column-role.ts'
import { cellsOf, recordReader, type Separator, separators, type TextRecord } from './delimited-text.ts'
import { cellReading, type DecimalMark } from './number-text.ts'

export interface WindLayout {
  readonly separator: Separator
  readonly decimal: DecimalMark
  /** Line of the first row of readings. */
  readonly firstLine: number
  /** Head of each column with its unit; empty where the file has none. */
  readonly heads: readonly string[]
  /** Line of the row of units, where there is one. */
  readonly unitLine: number | undefined
  /** Columns that together tell the time. */
  readonly timeColumns: readonly number[]
  /** Year, month, day, hour and minute stand in columns of their own. */
  readonly timeInParts: boolean
  readonly columns: Readonly<Partial<Record<ColumnRole, number>>>
  /** Columns that were not used, by head or number. */
  readonly unused: readonly string[]
  /** The wind's column was taken for its place, not for its head. */
  readonly windAssumed: boolean
}

/** Records of the beginning that are looked at. */
const sampleSize = 240

export const isComment = (text: string): boolean => /^\s*(?:#|\/\/|%|!)/.test(text)
export const isBlank = (text: string): boolean => /^[\s;,|"]*$/.test(text)

/** The time that a row's cells tell. */
export function rowTime(
  cells: readonly string[],
  { timeColumns, timeInParts }: Pick<WindLayout, 'timeColumns' | 'timeInParts'>,
): ClockReading | undefined {
  const cell = (k: number) => cells[timeColumns[k]!] ?? ''
  if (timeInParts) {
    const [year, month, day, hour = '0', minute = '0'] = timeColumns.map((_, k) => cell(k))
    return clockReading(`${year}-${month}-${day} ${hour}:${minute?.padStart(2, '0')}`)
  }
  if (timeColumns.length === 1) return clockReading(cell(0))
  return clockReading(timeColumns.map((_, k) => cell(k)).join(' '))
}

const partWords = [
  /^(?:year|yyyy|yr|jahr|ann[ée]e|año)$/i,
  /^(?:month|mm|mo|monat|mois|mes)$/i,
  /^(?:day|dd|tag|jour|d[ií]a)$/i,
  /^(?:hour|hh|hr|stunde|heure|hora)$/i,
  /^(?:min|minute|mi|mn|minuto)s?$/i,
]

interface Candidate {
  readonly separator: Separator
  readonly decimal: DecimalMark
  readonly timeColumns: readonly number[]
  readonly timeInParts: boolean
  readonly score: number
}

const looksLikeClock = (cell: string): boolean =>
  /^\d{1,2}(?:[:h]\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m\.?)?|\s*[ap]m)$/i.test(cell) ||
  /^[ap]m$/i.test(cell)

/** Sets of columns that may tell the time, the more of them the better. */
function timeChoices(rows: readonly (readonly string[])[], heads: readonly string[]) {
  const parts = partWords.map((word) => heads.findIndex((head) => word.test(head.trim())))
  const choices: { columns: readonly number[]; inParts: boolean }[] = []
  if (parts.slice(0, 4).every((at) => at >= 0))
    choices.push({ columns: parts.filter((at) => at >= 0), inParts: true })
  const width = Math.min(8, Math.max(0, ...rows.map((row) => row.length)))
  const mostly = (column: number, test: (cell: string) => boolean) =>
    rows.filter((row) => test(row[column] ?? '')).length > 0.7 * rows.length
  for (let first = 0; first < width; first++) {
    for (let count = Math.min(3, width - first); count > 1; count--) {
      const rest = Array.from({ length: count - 1 }, (_, k) => first + 1 + k)
      const clock = (column: number) =>
        mostly(column, looksLikeClock) ||
        (/^(?:time|zeit|uhrzeit|hour|clock|hora|heure|hhmm)/i.test(heads[column] ?? '') &&
          mostly(column, (cell) => /^\d{4}(?:\d{2})?$/.test(cell)))
      if (rest.every(clock)) choices.push({ columns: [first, ...rest], inParts: false })
    }
    choices.push({ columns: [first], inParts: false })
  }
  return choices
}

function candidatesFor(records: readonly TextRecord[], separator: Separator): Candidate[] {
  const rows = records.map(({ text }) => cellsOf(text, separator))
  const data = rows.slice(-Math.ceil(Math.max(4, rows.length * 0.75)))
  const heads = rows.find((row) => row.filter((cell) => roleOfHead(cell) !== undefined).length >= 2) ?? []
  const found: Candidate[] = []
  for (const { columns: timeColumns, inParts: timeInParts } of timeChoices(data, heads)) {
    const timed = data.filter((cells) => rowTime(cells, { timeColumns, timeInParts }) !== undefined)
    if (timed.length < 0.3 * data.length || timed.length === 0) continue
    for (const decimal of ['.', ','] as const) {
      let numbers = 0
      let others = 0
      for (const cells of timed)
        cells.forEach((cell, column) => {
          if (timeColumns.includes(column) || cell === '') return
          others++
          if (cellReading(cell, decimal).kind === 'number') numbers++
        })
      if (numbers === 0) continue
      const score = timed.length / data.length + numbers / Math.max(1, others) + 0.01 * timeColumns.length
      found.push({ separator, decimal, timeColumns, timeInParts, score })
    }
    // the first set of columns that tells the time is the fullest
    if (found.length > 0) break
  }
  return found
}

/** The layout of a file, or nothing where no column of times stands beside a column of numbers. */
export function windLayout(
  text: string,
  wanted: { readonly wind?: string | undefined } = {},
): WindLayout | undefined {
  const reader = recordReader(text)
  const records: TextRecord[] = []
  while (records.length < sampleSize) {
    const record = reader.next()
    if (!record) break
    if (!isBlank(record.text) && !isComment(record.text)) records.push(record)
  }
  const candidates = separators.flatMap((separator) => candidatesFor(records, separator))
  const best = candidates.reduce<Candidate | undefined>(
    (found, each) => (found === undefined || each.score > found.score + 1e-9 ? each : found),
    undefined,
  )
  if (!best) return undefined
  const { separator, decimal, timeColumns, timeInParts } = best
  const rows = records.map(({ text: each }) => cellsOf(each, separator))
  const first = rows.findIndex((cells) => rowTime(cells, best) !== undefined)
  const before = rows.slice(0, first)
  const rank = (cells: readonly string[]) =>
    isUnitRow(cells) ? 0 : cells.filter((cell) => roleOfHead(cell) !== undefined).length
  const headAt = before.reduce(
    (at, cells, k) => (rank(cells) > 0 && (at < 0 || rank(cells) >= rank(before[at]!)) ? k : at),
    -1,
  )
  const unitAt = before.findIndex((cells, k) => k > headAt && headAt >= 0 && isUnitRow(cells))
  const width = Math.max(...rows.slice(first).map((cells) => cells.length))
  const bare = headAt < 0 ? [] : before[headAt]!
  const heads = Array.from({ length: width }, (_, k) =>
    [bare[k] ?? '', unitAt < 0 ? '' : (before[unitAt]![k] ?? '')].filter((part) => part !== '').join(' '),
  )
  const isNumeric = (column: number) =>
    rows.slice(first).some((cells) => cellReading(cells[column] ?? '', decimal).kind === 'number')
  const free = Array.from({ length: width }, (_, k) => k).filter(
    (k) => !timeColumns.includes(k) && isNumeric(k),
  )
  const columns: Partial<Record<ColumnRole, number>> = {}
  for (const k of free) {
    // a head alone tells more than its unit; the unit helps where the head says nothing
    const role = roleOfHead(bare[k] ?? '') ?? roleOfHead(heads[k]!)
    if (role === undefined || role === 'time' || role === 'date' || role === 'clock') continue
    const better =
      role === 'wind' &&
      columns.wind !== undefined &&
      /avg|mean|mittel|moy|media/i.test(heads[k]!) &&
      !/avg|mean|mittel|moy|media/i.test(heads[columns.wind]!)
    if (columns[role] === undefined || better) columns[role] = k
  }
  const wished = wanted.wind
  if (wished !== undefined) {
    const at = heads.findIndex((head, k) => head === wished || bare[k] === wished || String(k + 1) === wished)
    if (at < 0 || timeColumns.includes(at)) return undefined
    for (const role of Object.keys(columns) as ColumnRole[]) if (columns[role] === at) delete columns[role]
    columns.wind = at
  }
  const taken = new Set(Object.values(columns))
  const windAssumed = columns.wind === undefined
  if (windAssumed) {
    const next = free.find((k) => !taken.has(k) && (heads[k] === '' || roleOfHead(heads[k]!) === undefined))
    if (next === undefined) return undefined
    columns.wind = next
    taken.add(next)
  }
  return {
    separator,
    decimal,
    firstLine: records[first]!.line,
    heads: headAt < 0 ? [] : heads,
    unitLine: unitAt < 0 ? undefined : records[unitAt]!.line,
    timeColumns,
    timeInParts,
    columns,
    unused: Array.from({ length: width }, (_, k) => k)
      .filter((k) => !timeColumns.includes(k) && !taken.has(k))
      .map((k) => heads[k] || `column ${k + 1}`),
    windAssumed,
  }
}
