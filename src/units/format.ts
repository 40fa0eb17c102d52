/** Numbers as people read them: three or four digits, the unit, and the spread where there is one. */
import { fromSi, type Unit, unit } from './unit.ts'

/** `digits` significant digits without exponent where that stays readable; − for minus; never "NaN". */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '—'
  if (value === 0) return '0'
  const size = Math.abs(value)
  if (size >= 1e7 || size < 1e-4) return value.toExponential(digits - 1).replaceAll('-', '−')
  const rounded = Number(value.toPrecision(digits))
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded))))
  return rounded.toFixed(Math.min(decimals, 12)).replace('-', '−')
}

const targetOf = (suffix: string | Unit): Unit => (typeof suffix === 'string' ? unit(suffix) : suffix)

/** An SI value in a unit, most often said by its suffix: (0.0123, 'mm') → "12.3 mm". */
export function formatSi(value: number, suffix: string | Unit, digits = 3): string {
  const target = targetOf(suffix)
  return formatNumber(fromSi(value, target), digits) + target.symbol
}

/** Digits that a value shows at most, however small its spread. */
const mostDigits = 4

/**
 * An SI value with its half-width at 90 %: "12.3 ± 0.4 mm", both with the decimals that the spread deserves. A spread
 * too small to show at four digits is left out.
 */
export function formatSpread(value: number, spread: number, suffix: string | Unit): string {
  const target = targetOf(suffix)
  const shown = fromSi(value, target)
  const width = (spread * target.divisor) / target.factor
  const size = Math.floor(Math.log10(Math.abs(shown)))
  const most = Number.isFinite(size) ? Math.max(0, mostDigits - 1 - size) : 12
  if (!(width >= 0.5 * 10 ** -most) || !Number.isFinite(width)) return formatSi(value, suffix)
  const decimals = Math.min(12, most, Math.max(0, 1 - Math.floor(Math.log10(width))))
  return `${shown.toFixed(decimals).replace('-', '−')} ± ${width.toFixed(decimals)}${target.symbol}`
}
