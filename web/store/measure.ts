/** The units that the page speaks: chosen once, kept in this browser; the document keeps its own. */
import { signal } from '@preact/signals'
import type { ResultSpread } from '../../src/index.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { chosenText, measuredBy } from '../../src/output/measuring.ts'
import { formatNumber, formatSi, formatSpread } from '../../src/units/format.ts'
import {
  type MeasureChoice,
  measureChoice,
  metricMeasure,
  saidUnit,
  withSystem,
} from '../../src/units/measure-choice.ts'
import { measuredSentence } from '../../src/units/measured-sentence.ts'
import { fromSi, type Unit } from '../../src/units/unit.ts'
import { told } from '../text/engine-sentence.ts'
import { shown } from '../text/say.ts'

const place = 'gustloom.measure'

function keptChoice(): MeasureChoice {
  try {
    return measureChoice(JSON.parse(localStorage.getItem(place) ?? 'null'))
  } catch {
    return metricMeasure
  }
}

/** Read wherever a quantity is shown, so that it is shown anew when it changes. */
export const measure = signal<MeasureChoice>(keptChoice())

function choose(next: MeasureChoice): void {
  measure.value = next
  try {
    localStorage.setItem(place, JSON.stringify(next))
  } catch {
    // a browser that keeps nothing begins with metric units next time
  }
}

export const chooseSystem = (system: MeasureChoice['system']): void =>
  choose(withSystem(measure.value, system))

export const chooseMeasure = (part: Partial<Omit<MeasureChoice, 'system'>>): void =>
  choose({ ...measure.value, ...part })

/** The unit in which a quantity with that suffix in the document is said. */
export const unitSaid = (suffix: string): Unit => saidUnit(suffix, measure.value)

/** What stands before decimals in the language of the page. */
export const decimalMark = (): '.' | ',' => (shown('0.5').includes(',') ? ',' : '.')

/** An SI value with its unit as people here say it: (0.0123, 'mm') → "12.3 mm", "0.484 in", "12,3 mm". */
export const inMeasure = (value: number, suffix: string, digits?: number): string =>
  shown(formatSi(value, unitSaid(suffix), digits))

/** Its sign, for the head of a column: "m/s", "mph". */
export const signSaid = (suffix: string): string => told(unitSaid(suffix).symbol.trim())

/** An SI value without its unit, for a column whose head bears it. */
export const numberInMeasure = (value: number, suffix: string, digits?: number): string =>
  shown(formatNumber(fromSi(value, unitSaid(suffix)), digits))

/** A wind that was chosen or stands in a table, not computed: 6 → "6 m/s", "13.4 mph". */
export const windSaid = (wind: number): string =>
  shown(measuredBy(measure.value, () => chosenText(wind, 'm_per_s')))

/** A temperature to the degree [K], without its unit and with it. */
export const degreesSaid = (temperature: number): string =>
  shown(formatNumber(Math.round(fromSi(temperature, unitSaid('degC')))))
export const warmthSaid = (temperature: number): string => degreesSaid(temperature) + unitSaid('degC').symbol

/** An SI value with its half-width at 90 %. */
export const spreadInMeasure = (value: number, spread: number, suffix: string): string =>
  shown(formatSpread(value, spread, unitSaid(suffix)))

/** A result with the interval that guesses leave it. */
export const intervalInMeasure = (value: number, suffix: string, spread: ResultSpread | undefined): string =>
  told(intervalText(value, unitSaid(suffix), spread))

/** A sentence of the engine, in its English, with its quantities in the chosen units; to be told in the language after. */
export const measured = (sentence: string): string =>
  measure.value === metricMeasure ? sentence : measuredSentence(sentence, unitSaid)
