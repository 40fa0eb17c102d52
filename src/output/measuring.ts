/** The units in which something is drawn or set: those of the workshop, or those that a reader has chosen. */
import { formatSi } from '../units/format.ts'
import { type MeasureChoice, metricMeasure, saidUnit } from '../units/measure-choice.ts'
import { inUnit, spokenUnit } from '../units/spoken-unit.ts'
import { fromSi, type Unit } from '../units/unit.ts'
import { shortNumber } from './chart/picture.ts'
import { whileDrawing } from './while-drawing.ts'

const choice = whileDrawing(metricMeasure)

/** Whatever is drawn within `measuredBy` shows its quantities in the units of that choice. */
export const measuredBy = choice.by

/** How the reader counts wire. */
export const wireMeasured = (): MeasureChoice['wire'] => choice.now().wire

/** The unit in which a quantity of that suffix is shown. */
export const unitMeasured = (suffix: string): Unit => saidUnit(suffix, choice.now())

/** Its sign, as axes and heads bear it: "m/s", "mph". */
export const signMeasured = (suffix: string): string => unitMeasured(suffix).symbol.trim()

/** A number counted in the unit of that suffix, in the reader’s. */
export const measured = (value: number, suffix: string): number =>
  inUnit(value, spokenUnit(suffix), unitMeasured(suffix))

/** The way back: what the reader counts, in the unit of that suffix. */
export const unmeasured = (value: number, suffix: string): number =>
  inUnit(value, unitMeasured(suffix), spokenUnit(suffix))

/** An SI value that was computed: "12.3 mm", "0.484 in". */
export const measuredText = (value: number, suffix: string, digits?: number): string =>
  formatSi(value, unitMeasured(suffix), digits)

/** Digits of a round number that is none in the reader’s unit. */
const turnedDigits = 3

/** An SI value that somebody chose, without its unit: "6.5", "14.5". */
export function chosenNumber(value: number, suffix: string): string {
  const target = unitMeasured(suffix)
  const shown = fromSi(value, target)
  return shortNumber(target.suffix === suffix ? shown : Number(shown.toPrecision(turnedDigits)))
}

/** The same with its unit: "6.5 m/s", "14.5 mph". */
export const chosenText = (value: number, suffix: string): string =>
  chosenNumber(value, suffix) + unitMeasured(suffix).symbol
