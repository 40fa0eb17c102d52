/** The wind for which a machine is best told: the one its builder asked about, else one that shows it at work. */
import { nominal } from '../units/quantity.ts'
import type { Chain } from './compute.ts'
import type { WindRow } from './power-curve.ts'

type Winds = Pick<Chain, 'machine' | 'rows' | 'rowAt'>

export interface TellingWind {
  /** The wind that the document asks about [m/s]; undefined where it names none. */
  readonly wanted: number | undefined
  /** wanted: the row is of just that wind. beyond the storm: it was not computed, the row is of another wind. */
  readonly kind: 'wanted' | 'beyond the storm' | 'unasked'
  readonly row: WindRow
}

/** Of the least wind that yields half of the greatest use. */
function rowAtWork(rows: readonly WindRow[]): WindRow {
  const most = Math.max(...rows.map(({ watts }) => watts.useful))
  return rows.find(({ watts }) => watts.useful >= most / 2) ?? rows[rows.length - 1]!
}

/** The one rule for the wind that is told: exactly the wanted one, computed for itself, up to the storm. */
export function tellingWind({ machine, rows, rowAt }: Winds): TellingWind {
  const { atWind_m_per_s } = machine.design.purpose
  if (atWind_m_per_s === undefined) return { wanted: undefined, kind: 'unasked', row: rowAtWork(rows) }
  const wanted = nominal(atWind_m_per_s)
  if (wanted > machine.site.stormWind + 1e-9)
    return { wanted, kind: 'beyond the storm', row: rowAtWork(rows) }
  const known = rows.find(({ wind }) => Math.abs(wind - wanted) < 1e-9)
  return { wanted, kind: 'wanted', row: known ?? rowAt(wanted) }
}

export const tellingRow = (chain: Winds): WindRow => tellingWind(chain).row
