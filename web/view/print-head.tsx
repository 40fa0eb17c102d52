/** A line that only paper shows: which design, which room, which wind. */
import { row as rowIndex, snapshot } from '../store/design.ts'
import { windSaid } from '../store/measure.ts'
import { say } from '../text/say.ts'

export function PrintHead() {
  const result = snapshot.value
  const row = result?.rows[rowIndex.value]
  return (
    <p class="print-head" aria-hidden="true">
      <b>{result?.name ?? ''}</b>
      <span>{row ? say`Looked at in a wind of ${windSaid(row.wind)}.` : ''}</span>
      <span>Gustloom</span>
    </p>
  )
}
