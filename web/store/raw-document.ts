/** The raw document as it is typed: looked up and changed by path, never rewritten from SI. */

export type Key = string | number
export type Path = readonly Key[]
export type RawObject = Readonly<Record<string, unknown>>

export const isRawObject = (value: unknown): value is RawObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const valueAt = (document: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<Key, unknown>)[key]
        : undefined,
    document,
  )

/** A copy with `value` at `path`; `undefined` takes the key out. Missing objects on the way are made. */
export function withValue(document: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  if (typeof key === 'number') {
    const list = Array.isArray(document) ? [...document] : []
    const next = withValue(list[key], rest, value)
    if (next === undefined) list.splice(key, 1)
    else list[key] = next
    return list
  }
  const copy: Record<string, unknown> = isRawObject(document) ? { ...document } : {}
  const next = withValue(copy[key], rest, value)
  if (next === undefined) delete copy[key]
  else copy[key] = next
  return copy
}

/** What a person typed into a field for a number: a number where it is one, else the text itself. */
export function typedNumber(text: string): number | string | undefined {
  const bare = text.trim().replace('−', '-')
  if (bare === '') return undefined
  const value = Number(bare)
  return Number.isFinite(value) && /^[-+.\deE]+$/.test(bare) ? value : text
}

export const documentText = (document: unknown): string => `${JSON.stringify(document, undefined, 2)}\n`
