/** A field of the document in the words of the workshop: its name, where it stands, and what it says. */
import { toSi, units } from '../../src/units/unit.ts'
import { words } from '../station/label.ts'
import { stations } from '../station/plan.ts'
import { inMeasure, unitSaid } from '../store/measure.ts'
import { isRawObject, type Path } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'

const named = (path: Path): readonly string[] => path.filter((key): key is string => typeof key === 'string')

/** "Turns", "Width 2": the second of a list. */
export function fieldName(path: Path): string {
  const name = words(named(path).at(-1) ?? '')
  const last = path.at(-1)
  return typeof last === 'number' ? `${name} ${last + 1}` : name
}

/** "Stator, Winding": what it is a part of; empty for what stands at the root. */
export function fieldPlace(path: Path): string {
  const keys = path.slice(0, path.lastIndexOf(named(path).at(-1) ?? ''))
  return keys
    .map((key, k) => {
      if (typeof key === 'number') return String(key + 1)
      const station = k === 0 ? stations.find(({ noun }) => noun === key) : undefined
      return station === undefined ? words(key) : told(station.title)
    })
    .join(', ')
}

const suffixOf = (key: string): string => {
  const at = key.indexOf('_')
  const suffix = at < 0 ? '' : key.slice(at + 1)
  return units.has(suffix) ? suffix : '1'
}

/** A number as it was typed where the page speaks its unit, else converted. */
function numberText(value: number, suffix: string): string {
  const own = units.get(suffix)
  if (own === undefined) return shown(value)
  return unitSaid(suffix).suffix === suffix
    ? `${shown(value)}${own.symbol}`
    : inMeasure(toSi(value, own), suffix, 4)
}

/** What a field says, with its unit, its spread and how it is known. */
export function fieldValue(path: Path, value: unknown): string {
  const suffix = suffixOf(named(path).at(-1) ?? '')
  if (value === undefined || value === null) return say`not said`
  if (typeof value === 'number') return numberText(value, suffix)
  if (typeof value === 'boolean') return value ? say`yes` : say`no`
  if (typeof value === 'string') return value === '' ? say`nothing` : told(value)
  if (Array.isArray(value))
    return value.length === 0 ? say`none` : value.map((each) => fieldValue(path, each)).join('; ')
  if (!isRawObject(value)) return String(value)
  if (!('value' in value)) return say`nothing`
  const { value: best, spread, known } = value
  const middle = fieldValue(path, best)
  // a spread of degrees has no zero of its own
  const width =
    typeof spread === 'number'
      ? ` ± ${suffix === 'degC' ? `${shown(spread)} K` : numberText(spread, suffix)}`
      : ''
  return `${middle}${width}${typeof known === 'string' ? `, ${told(known)}` : ''}`
}

/** What is guessed, by its field or, where the engine guesses by itself, by its own name: "Stator, Winding: Turns". */
export function guessName(guess: string): string {
  const path = guess.split('.')
  if (path.length === 1) return told(guess)
  const place = fieldPlace(path)
  return place === '' ? fieldName(path) : `${place}: ${fieldName(path)}`
}

/** Changes of a document in the words of the workshop: "Turns 33; Wire diameter 0.9 mm". */
export const changesName = (changes: readonly { readonly path: Path; readonly to: unknown }[]): string =>
  changes.map(({ path, to }) => `${fieldName(path)} ${fieldValue(path, to)}`).join('; ')
