/** The row of a power curve in which a quantity is greatest. */
import type { WindRow } from '../power-curve.ts'

/** The first row of the greatest finite value; undefined without rows. */
export function rowOfMost(rows: readonly WindRow[], value: (row: WindRow) => number): WindRow | undefined {
  let best: WindRow | undefined
  let most = Number.NEGATIVE_INFINITY
  for (const row of rows) {
    const here = value(row)
    if (Number.isFinite(here) && here > most) {
      best = row
      most = here
    }
  }
  return best
}
