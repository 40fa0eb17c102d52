/** A table of numbers that scrolls sideways by itself where it is wider than the page. */
import type { ComponentChildren } from 'preact'

export interface Column<Row> {
  readonly head: string
  readonly unit?: string
  readonly cell: (row: Row) => ComponentChildren
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
            {columns.map(({ head, unit }) => (
              <th key={head} scope="col">
                {head}
                {unit === undefined ? null : <small>{unit}</small>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => (
            <tr key={k} class={k === chosen ? 'chosen' : ''}>
              {columns.map(({ head, cell }, at) =>
                at === 0 ? (
                  <th key={head} scope="row">
                    {onChoose ? (
                      <button type="button" class="row-button" onClick={() => onChoose(k)}>
                        {cell(row)}
                      </button>
                    ) : (
                      cell(row)
                    )}
                  </th>
                ) : (
                  <td key={head}>{cell(row)}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
