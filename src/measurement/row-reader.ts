/** The rows of a logger's file as bare columns, as they stand in it, and the count of all that are none. */
import { type SpeedUnit, speedUnitIn, speedUnits } from './column-role.ts'
import { cellsOf, recordReader } from './delimited-text.ts'
import { type Column, growing } from './growing-column.ts'
import type { RefusalKind } from './import-report.ts'
import { cellReading } from './number-text.ts'
import { isBlank, isComment, rowTime, type WindLayout } from './wind-layout.ts'
import { type ExtraColumn, extraColumns } from './wind-series.ts'

/** Rows between two reports of progress. */
const stride = 4096

export interface RawRows {
  readonly line: Column
  /** The time either way [s since 1970]. */
  readonly dayFirst: Column
  readonly monthFirst: Column
  /** Of the clock ahead of universal time [s]. */
  readonly zone: Column
  readonly wind: Column
  /** To m/s, where a unit stands behind the number itself; 0 where none does. */
  readonly factor: Column
  readonly extra: Readonly<Record<ExtraColumn, Column>>
}

/** Stands in a column while the file is read, where a row has no such value. */
const absent = Number.NaN

export interface RowTally {
  total: number
  blank: number
  comment: number
  header: number
}

export interface RowsRead {
  readonly rows: RawRows
  readonly tally: RowTally
  /** Lines by what is wrong with them. */
  readonly refused: Map<RefusalKind, Column>
  /** Units written behind the numbers, and how often. */
  readonly units: Map<SpeedUnit, number>
}

export function refuseLine(refused: Map<RefusalKind, Column>, kind: RefusalKind, line: number): void {
  const lines = refused.get(kind) ?? growing()
  refused.set(kind, lines)
  lines.push(line)
}

/** Reads every record, refusing at once what cannot be read; yields the fraction done. */
export function* readRows(text: string, layout: WindLayout): Generator<number, RowsRead> {
  const { separator, decimal, columns, heads } = layout
  const reader = recordReader(text)
  const rows: RawRows = {
    line: growing(),
    dayFirst: growing(),
    monthFirst: growing(),
    zone: growing(),
    wind: growing(),
    factor: growing(),
    extra: {
      gust: growing(),
      deviation: growing(),
      direction: growing(),
      temperature: growing(),
      pressure: growing(),
    },
  }
  const tally: RowTally = { total: 0, blank: 0, comment: 0, header: 0 }
  const refused: RowsRead['refused'] = new Map()
  const units: RowsRead['units'] = new Map()
  const windColumn = columns.wind!
  let headText: string | undefined
  for (let record = reader.next(); record; record = reader.next()) {
    tally.total++
    if (tally.total % stride === 0) yield reader.fraction()
    const { text: row, line } = record
    if (isBlank(row)) tally.blank++
    else if (isComment(row)) tally.comment++
    else if (line < layout.firstLine) {
      tally.header++
      if (heads.length > 0 && line !== layout.unitLine) headText = row
    } else if (row === headText) tally.header++
    else {
      const cells = cellsOf(row, separator)
      const time = rowTime(cells, layout)
      if (!time) {
        refuseLine(refused, 'no-time', line)
        continue
      }
      const wind = cellReading(cells[windColumn] ?? '', decimal)
      if (wind.kind !== 'number') {
        refuseLine(refused, wind.kind === 'missing' ? 'no-wind' : 'unreadable-wind', line)
        continue
      }
      let factor = 0
      if (wind.unit !== '') {
        const unit = speedUnitIn(wind.unit)
        if (unit === undefined) {
          refuseLine(refused, 'unreadable-wind', line)
          continue
        }
        units.set(unit, (units.get(unit) ?? 0) + 1)
        factor = speedUnits[unit]
      }
      rows.line.push(line)
      rows.dayFirst.push(time.dayFirst ?? absent)
      rows.monthFirst.push(time.monthFirst ?? absent)
      rows.zone.push(time.zone ?? absent)
      rows.wind.push(wind.value)
      rows.factor.push(factor)
      for (const name of extraColumns) {
        const at = columns[name]
        if (at === undefined) continue
        const cell = cellReading(cells[at] ?? '', decimal)
        rows.extra[name].push(cell.kind === 'number' ? cell.value : absent)
      }
    }
  }
  return { rows, tally, refused, units }
}
