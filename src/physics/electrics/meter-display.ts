/** What a meter's digits can say: the step of the last one, and how far the figure may be off. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Step of the last digit on the display of a meter that picks the finest decade range which holds the value.
 *
 *   r = 10^⌈log10(|x| / N)⌉
 *
 * Holds: decade ranges, from the meter's finest range up. Accuracy: exact.
 *
 * @param display.value   x  shown, any sign                              [V]
 * @param display.counts  N  greatest figure before the next range, > 0   [1]
 * @param display.finest  r  step of the finest range, > 0                [V]
 * @returns               r                                               [V]
 * @throws RangeError     counts or finest step not above zero; value not finite
 * @source derived, decade ranges of N counts
 * @example displayStep({ value: 12.6, counts: 2000, finest: 1e-4 }) // 0.01
 */
export function displayStep(display: {
  readonly value: number
  readonly counts: number
  readonly finest: number
}): number {
  const { value, counts, finest } = display
  requireNotNegative('|value|', Math.abs(value), 'V')
  requirePositive('counts', counts)
  requirePositive('finest', finest, 'V')
  const size = Math.abs(value) / counts
  if (size <= finest) return finest
  // a value that fills its range to the last count stays in it
  return finest * 10 ** Math.ceil(Math.log10(size / finest) - 1e-9)
}

/**
 * How far the figure shown may be off, as a meter's sheet says it: a share of the reading and a number of digits.
 *
 *   a = p |x| + n r
 *
 * Holds: inside the band for which the sheet speaks. Accuracy: a bound; taken as equally likely up to it, its half-width
 * at 90 % is 0.9 a and its standard uncertainty a/√3.
 *
 * @param sheet.value   x  shown                    [V]
 * @param sheet.share   p  of the reading, ≥ 0      [1]
 * @param sheet.digits  n  of the last place, ≥ 0   [1]
 * @param sheet.step    r  of the last place, > 0   [V]
 * @returns             a                           [V]
 * @throws RangeError   negative share or digits, step not above zero
 * @source jcgm100, 4.3.7 (a rectangular distribution between bounds)
 * @example displayBound({ value: 12.6, share: 0.01, digits: 3, step: 0.01 }) // 0.156
 */
export function displayBound(sheet: {
  readonly value: number
  readonly share: number
  readonly digits: number
  readonly step: number
}): number {
  const { value, share, digits, step } = sheet
  requireNotNegative('share', share)
  requireNotNegative('digits', digits)
  requirePositive('step', step, 'V')
  return share * Math.abs(value) + digits * step
}
