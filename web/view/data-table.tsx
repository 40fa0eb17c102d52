/** A table of numbers that scrolls sideways by itself where it is wider than the page. */
import type { ComponentChildren } from 'preact'
import { type ChartTable, cellText } from '../../src/output/chart/chart-table.ts'
import { shown } from '../text/say.ts'

export interface Column<Row> {
  readonly head: string
  readonly unit?: string
  readonly cell: (row: Row) => ComponentChildren
}

/** The row that is looked at, and what choosing another does. */
export interface RowChoice {
  readonly chosen: number
  readonly onChoose?: (row: number) => void
}

interface DataTable<Row> {
  readonly caption: string
  readonly columns: readonly Column<Row>[]
  readonly rows: readonly Row[]
  readonly chosen?: number
  readonly onChoose?: (row: number) => void
}

export function DataTable<Row>({ caption, columns, rows, chosen, onChoose }: DataTable<Row>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="table-scroll" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ head, unit }, at) => (
              // two columns may bear one head, as two designs may bear one name
              <th key={at} scope="col">
                {head}
                {unit === undefined ? null : <small>{unit}</small>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => (
            <tr key={k} class={k === chosen ? 'chosen' : ''} aria-current={k === chosen ? 'true' : undefined}>
              {columns.map(({ cell }, at) =>
                at === 0 ? (
                  <th key={at} scope="row">
                    {onChoose ? (
                      <button type="button" class="row-button" onClick={() => onChoose(k)}>
                        {cell(row)}
                      </button>
                    ) : (
                      cell(row)
                    )}
                  </th>
                ) : (
                  <td key={at}>{cell(row)}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** The numbers behind a picture, four digits of each; a file of them has more. */
export function ChartTableView({ table, rows }: { readonly table: ChartTable; readonly rows?: RowChoice }) {
  const columns = table.columns.map(
    (column, k): Column<ChartTable['rows'][number]> => ({
      head: column.head,
      ...(column.unit === undefined ? {} : { unit: column.unit }),
      cell: (row) => {
        const cell = row[k]
        return typeof cell === 'number' ? shown(cellText(cell, column)) : cellText(cell)
      },
    }),
  )
  return <DataTable caption={table.caption} columns={columns} rows={table.rows} {...rows} />
}
