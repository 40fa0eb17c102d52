/** Plain data against what stood there before: every part that says the same stays the same object. */

type Parts = Readonly<Record<string, unknown>>

const isRecord = (value: unknown): value is Parts =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype

const sameNumbers = (a: Float64Array, b: Float64Array): boolean =>
  a.length === b.length && a.every((value, k) => Object.is(value, b[k]))

/**
 * `next`, with every array, record and list of numbers in it that equals what stands in its place in `before`
 * replaced by that one: what is shown of it need not be drawn anew. Neither is changed.
 */
export function keptParts<Value>(before: unknown, next: Value): Value
export function keptParts(before: unknown, next: unknown): unknown {
  if (Object.is(before, next)) return before
  if (next instanceof Float64Array)
    return before instanceof Float64Array && sameNumbers(before, next) ? before : next
  if (Array.isArray(next)) {
    const old: readonly unknown[] = Array.isArray(before) ? before : []
    const parts = next.map((part, k) => keptParts(old[k], part))
    return Array.isArray(before) &&
      old.length === parts.length &&
      parts.every((part, k) => Object.is(part, old[k]))
      ? before
      : parts
  }
  if (!isRecord(next)) return next
  const old = isRecord(before) ? before : {}
  const parts = Object.fromEntries(
    Object.entries(next).map(([key, part]) => [key, keptParts(old[key], part)]),
  )
  const keys = Object.keys(parts)
  return isRecord(before) &&
    Object.keys(old).length === keys.length &&
    keys.every((key) => Object.hasOwn(old, key) && Object.is(parts[key], old[key]))
    ? before
    : parts
}

/** The parts of `next` that are not those of `before`; a part that is gone is told as undefined. */
export function changedParts<Value extends object>(before: Value | undefined, next: Value): Partial<Value> {
  const old: Partial<Value> = before ?? {}
  const keys = new Set([...Object.keys(old), ...Object.keys(next)]) as Set<keyof Value>
  return Object.fromEntries(
    [...keys].filter((key) => !Object.is(old[key], next[key])).map((key) => [key, next[key]]),
  ) as Partial<Value>
}
