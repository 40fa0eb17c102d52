/** Columns of text that line up on a terminal of fixed-width letters. */

export type Align = 'left' | 'right'

/** Letters as they stand on the screen; combining marks take no room. */
const width = (text: string): number => [...text.normalize('NFC')].length

/** Rows under their heads, two spaces between columns, no line ends in a space. */
export function textTable(
  columns: readonly { readonly head: string; readonly align: Align }[],
  rows: readonly (readonly string[])[],
): string[] {
  const widths = columns.map(({ head }, c) =>
    Math.max(width(head), ...rows.map((row) => width(row[c] ?? ''))),
  )
  const line = (cells: readonly string[]) =>
    columns
      .map(({ align }, c) => {
        const cell = cells[c] ?? ''
        const room = ' '.repeat(widths[c]! - width(cell))
        return align === 'left' ? cell + room : room + cell
      })
      .join('  ')
      .trimEnd()
  return [line(columns.map(({ head }) => head)), ...rows.map(line)]
}

/** Words broken so that no line is longer than `columns`; lines after the first are set in by `indent`. */
export function wrapped(text: string, columns: number, indent = ''): string[] {
  const [, lead = '', body = ''] = /^(\s*)(.*)$/s.exec(text) ?? []
  const lines: string[] = []
  let line = lead
  for (const word of body.split(/\s+/)) {
    const next = line.trim() === '' ? line + word : `${line} ${word}`
    if (width(next) > columns && line.trim() !== '') {
      lines.push(line)
      line = indent + word
    } else line = next
  }
  return [...lines, line]
}
