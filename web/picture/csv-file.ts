/** A table as a file of comma-separated values that spreadsheets open with its letters right. */
import { type ChartTable, tableCsv } from '../../src/output/chart/chart-table.ts'

/** Without it some spreadsheets take °, Ω and – for letters of another alphabet. */
const byteOrderMark = '\uFEFF'

export const csvText = (table: ChartTable): string => `${byteOrderMark}${tableCsv(table)}`

export const csvFile = (table: ChartTable): Blob =>
  new Blob([csvText(table)], { type: 'text/csv;charset=utf-8' })
