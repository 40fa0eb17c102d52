/** A result with the interval that guesses leave it, in words that fit into a line. */
import type { ResultSpread } from '../analysis/spread.ts'
import { formatNumber, formatSi, formatSpread } from '../units/format.ts'
import { fromSi, type Unit, unit } from '../units/unit.ts'

/** A middle off the value by more than this share of the half-width is told by its ends. */
const lopsided = 0.25

const shareText = (share: number): string => {
  const percent = 100 * share
  return percent < 1 ? 'under 1 %' : percent > 99 ? 'over 99 %' : `${Math.round(percent)} %`
}

/** "12.3 ± 0.4 kWh", or "12.3 kWh (9.1 to 18.0)" where the ends lie unevenly; with the share of draws in which it never happens. */
export function intervalText(value: number, suffix: string | Unit, spread: ResultSpread | undefined): string {
  if (!Number.isFinite(value)) return 'never'
  if (spread === undefined) return formatSi(value, suffix)
  const { low, high, spread: half, never } = spread
  const uneven = Math.abs((low + high) / 2 - value) > lopsided * half
  const target = typeof suffix === 'string' ? unit(suffix) : suffix
  const end = (of: number) => formatNumber(fromSi(of, target))
  const text =
    uneven && half > 1e-3 * Math.abs(value)
      ? `${formatSi(value, suffix)} (${end(low)} to ${end(high)})`
      : formatSpread(value, half, suffix)
  return never > 0 ? `${text} or never (${shareText(never)})` : text
}
