/** Another variant of a noun: what both share stays, what the new one asks for is filled in, the rest goes. */
import type { FieldDescription } from '../../src/index.ts'
import { isRawObject, type Path, type RawObject, valueAt, withValue } from '../store/raw-document.ts'
import { stations } from './plan.ts'

/** The path as the descriptions write it, list entries as `[]`. */
export const generalPath = (keys: Path): string =>
  keys.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[]` : text === '' ? key : `${text}.${key}`),
    '',
  )

const conditionsOf = ({ when }: FieldDescription) => when.split(', ')

export const isVariantChoice = (fields: readonly FieldDescription[], keys: Path): boolean => {
  const begin = `${generalPath(keys)} = `
  return fields.some((field) => conditionsOf(field).some((condition) => condition.startsWith(begin)))
}

/** Keys that may stand beside the choice when it says `word`. */
function keysBeside(fields: readonly FieldDescription[], keys: Path, word: string): Set<string> {
  const condition = `${generalPath(keys)} = ${word}`
  const prefix = `${generalPath(keys.slice(0, -1))}.`
  return new Set(
    fields
      .filter((field) => field.path.startsWith(prefix) && conditionsOf(field).includes(condition))
      .map(({ path }) => path.slice(prefix.length).split(/[.[]/)[0]!),
  )
}

export function withVariant(
  document: RawObject,
  fields: readonly FieldDescription[],
  keys: Path,
  word: string,
): RawObject {
  const parent = keys.slice(0, -1)
  const choice = String(keys.at(-1))
  const before = valueAt(document, parent)
  const allowed = keysBeside(fields, keys, word)
  const kept = Object.entries(isRawObject(before) ? before : {}).filter(([key]) => allowed.has(key))
  const start = stations
    .map(({ starts }) => starts?.[generalPath(keys)]?.[word])
    .find((found) => found !== undefined)
  const next = { [choice]: word, ...start?.(document), ...Object.fromEntries(kept) }
  const settle = stations
    .map(({ settles }) => settles?.[generalPath(keys)]?.[word])
    .find((found) => found !== undefined)
  return withValue(document, parent, settle ? settle(next, document) : next) as RawObject
}
