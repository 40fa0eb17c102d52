/** The wind for which a machine is best told: the one its builder asked about, else one that shows it at work. */
import type { Chain } from './compute.ts'
import type { WindRow } from './power-curve.ts'

/** The row of the wanted wind; without one, of the least wind that yields half of the greatest use. */
export function tellingRow({ machine, rows }: Pick<Chain, 'machine' | 'rows'>): WindRow {
  const wanted = machine.design.purpose.atWind_m_per_s
  const wind = typeof wanted === 'number' ? wanted : wanted?.value
  if (wind !== undefined)
    return rows.reduce((best, row) => (Math.abs(row.wind - wind) < Math.abs(best.wind - wind) ? row : best))
  const most = Math.max(...rows.map(({ watts }) => watts.useful))
  return rows.find(({ watts }) => watts.useful >= most / 2) ?? rows[rows.length - 1]!
}
