/** The numbers behind a picture as a table: what a page shows beside it, and a file of comma-separated values. */
import { formatNumber } from '../../units/format.ts'
import { unitOfSign } from '../../units/spoken-unit.ts'
import { measured, signMeasured, unitMeasured } from '../measuring.ts'
import { shortNumber } from './picture.ts'

export interface TableColumn {
  readonly head: string
  readonly unit?: string
  /** Its numbers were chosen or counted: 6 and 6.5, not 6.000. */
  readonly exact?: true
}

/** A number as computed, a word, or nothing where there is none. */
export type TableCell = number | string | undefined

export interface ChartTable {
  readonly caption: string
  readonly columns: readonly TableColumn[]
  readonly rows: readonly (readonly TableCell[])[]
}

/** A cell as people read it. */
export const cellText = (cell: TableCell, { exact }: Pick<TableColumn, 'exact'> = {}): string =>
  typeof cell === 'number'
    ? exact && Number.isFinite(cell)
      ? shortNumber(cell)
      : formatNumber(cell, 4)
    : (cell ?? '—')

/** The suffix of a column whose reader has chosen another unit. */
function suffixTurned({ unit }: TableColumn): string | undefined {
  const suffix = unit === undefined ? undefined : unitOfSign(unit)?.suffix
  return suffix === undefined || unitMeasured(suffix).suffix === suffix ? undefined : suffix
}

/** The table with its numbers in the units that its reader has chosen. */
export function measuredTable(table: ChartTable): ChartTable {
  const suffixes = table.columns.map(suffixTurned)
  if (suffixes.every((suffix) => suffix === undefined)) return table
  return {
    ...table,
    // what was chosen or counted is no round number any more
    columns: table.columns.map((column, k) =>
      suffixes[k] === undefined ? column : { head: column.head, unit: signMeasured(suffixes[k]) },
    ),
    rows: table.rows.map((row) =>
      row.map((cell, k) =>
        suffixes[k] === undefined || typeof cell !== 'number' ? cell : measured(cell, suffixes[k]),
      ),
    ),
  }
}

/** Digits of a number in a file: more than any of ours deserves, few enough to stay legible. */
const fileDigits = 7

const fileNumber = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(fileDigits))) : ''

/** Quoted where a comma, a quote or the end of a line would break the row. */
const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

const fileCell = (cell: TableCell): string =>
  typeof cell === 'number' ? fileNumber(cell) : quoted(cell ?? '')

/** Comma-separated values after RFC 4180, heads first, with their units. */
export function tableCsv({ columns, rows }: ChartTable): string {
  const heads = columns.map(({ head, unit }) => quoted(unit === undefined ? head : `${head}, ${unit}`))
  const lines = [heads, ...rows.map((row) => columns.map((_, k) => fileCell(row[k])))]
  return `${lines.map((line) => line.join(',')).join('\r\n')}\r\n`
}
