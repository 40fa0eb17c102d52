/** Lengths on a drawing: as words, as bare numbers, and as the bar that tells its scale. */
import { fromSi, toSi } from '../../units/unit.ts'
import { unitMeasured } from '../measuring.ts'
import { shortNumber } from './picture.ts'

/** A length to the step given in millimetres; in inches, 25 times longer, to a tenth of that number. */
export function lengthNumber(length: number, step_mm = 0.01): string {
  const unit = unitMeasured('mm')
  const step = unit.suffix === 'mm' ? step_mm : step_mm / 10
  return shortNumber(Math.round(fromSi(length, unit) / step) * step)
}

export const lengthText = (length: number, step_mm?: number): string =>
  lengthNumber(length, step_mm) + unitMeasured('mm').symbol

/** Lengths of a bar in the unit of the drawing, the longest first. */
const bars: Readonly<Record<string, readonly number[]>> = {
  mm: [200, 100, 50, 20, 10, 5, 2, 1],
  in: [8, 4, 2, 1, 0.5, 0.2, 0.1, 0.05],
}

/** A bar is shorter than this [px]. */
const longestBar = 90

/** A round length that a drawing of so many px/m has room for, with its words. */
export function scaleBar(scale: number): { readonly long: number; readonly text: string } {
  const unit = unitMeasured('mm')
  const lengths = bars[unit.suffix] ?? bars['mm']!
  const number = lengths.find((each) => toSi(each, unit) * scale < longestBar) ?? lengths.at(-1)!
  return { long: toSi(number, unit) * scale, text: `${shortNumber(number)}${unit.symbol}` }
}
