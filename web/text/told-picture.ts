/** Pictures and tables of the engine, in the words and the units that the page speaks. */
import { type ChartTable, measuredTable } from '../../src/output/chart/chart-table.ts'
import { measuredBy } from '../../src/output/measuring.ts'
import { toldBy } from '../../src/output/telling.ts'
import { measure } from '../store/measure.ts'
import { told } from './engine-sentence.ts'

/** What is drawn: its words, title and description, and the units of its axes. */
export const toldDrawing = (draw: () => string): string => measuredBy(measure.value, () => toldBy(told, draw))

/** A table of numbers: its caption, heads, units and words, and the numbers in those units. */
export function toldTable(table: ChartTable): ChartTable {
  const { caption, columns, rows } = measuredBy(measure.value, () => measuredTable(table))
  return {
    caption: told(caption),
    columns: columns.map((column) => ({
      ...column,
      head: told(column.head),
      ...(column.unit === undefined ? {} : { unit: told(column.unit) }),
    })),
    rows: rows.map((row) => row.map((cell) => (typeof cell === 'string' ? told(cell) : cell))),
  }
}
