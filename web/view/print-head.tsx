/** A line that only paper shows: which design, which room, which wind. */
import { shortNumber } from '../../src/output/chart/picture.ts'
import { row as rowIndex, snapshot } from '../store/design.ts'
import { say } from '../text/say.ts'

export function PrintHead() {
  const result = snapshot.value
  const row = result?.rows[rowIndex.value]
  return (
    <p class="print-head" aria-hidden="true">
      <b>{result?.name ?? ''}</b>
      <span>{row ? say`Looked at in a wind of ${shortNumber(row.wind)} m/s.` : ''}</span>
      <span>Gustloom</span>
    </p>
  )
}
