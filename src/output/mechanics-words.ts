/** A line of the mechanics in words: its number, what it may be, and how often the one holds the other. */
import type { MechanicsRow } from '../analysis/mechanics/mechanics-row.ts'
import { formatNumber, formatSi, formatSpread } from '../units/format.ts'
import type { Unit } from '../units/unit.ts'

/** The unit in which one of the document's is said; the same where nobody chose another. */
export type UnitSaid = (suffix: string) => string | Unit

const asItIs: UnitSaid = (suffix) => suffix

/** Beyond this a margin is told as such. */
const greatMargin = 100

const year = 365.25 * 86_400

/** Years for lives of years: nobody reads days by the thousand. */
export function mechanicsValue(
  { value, spread, unit: suffix }: MechanicsRow,
  unitSaid: UnitSaid = asItIs,
): string {
  if (value === undefined) return '–'
  if (suffix === 'd')
    return value > 1000 * year ? 'over 1000 years' : `${formatNumber(value / year, 2)} years`
  const said = unitSaid(suffix)
  if (value === 0 && spread > 0) return `± ${formatSi(spread, said, 2)}`
  if (spread > 0 && spread < Math.abs(value)) return formatSpread(value, spread, said)
  return spread > 0 ? `${formatSi(value, said)} ± ${formatSi(spread, said, 2)}` : formatSi(value, said)
}

export function mechanicsLimit({ limit, unit: suffix }: MechanicsRow, unitSaid: UnitSaid = asItIs): string {
  if (limit === undefined) return ''
  const sign = limit.sound === 'below' ? '≤' : '≥'
  return suffix === 'd'
    ? `${sign} ${formatNumber(limit.value / year, 2)} years`
    : `${sign} ${formatSi(limit.value, unitSaid(suffix))}`
}

export const mechanicsMargin = ({ margin }: Pick<MechanicsRow, 'margin'>): string =>
  margin === undefined ? '' : margin > greatMargin ? `> ${greatMargin}` : formatNumber(margin, 2)

/** Past its limit; what cannot be told is not. */
export const pastLimit = ({ margin }: Pick<MechanicsRow, 'margin'>): boolean =>
  margin !== undefined && margin < 1
