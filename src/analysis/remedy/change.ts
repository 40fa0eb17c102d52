/** A change of a document as a list of places with what stood there and what stands there now. */
import type { Quantity } from '../../units/quantity.ts'

export type Key = string | number

export interface Change {
  readonly path: readonly Key[]
  /** As JSON; undefined where the key is not there. */
  readonly from: unknown
  readonly to: unknown
}

type JsonObject = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** A copy with `value` at `path`; undefined takes the key out. */
function withValueAt(document: unknown, path: readonly Key[], value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  if (typeof key === 'number') {
    const list: unknown[] = Array.isArray(document) ? [...document] : []
    list[key] = withValueAt(list[key], rest, value)
    return list
  }
  const { [key]: there, ...others } = isObject(document) ? document : {}
  const next = withValueAt(there, rest, value)
  return next === undefined ? others : { ...(isObject(document) ? document : {}), [key]: next }
}

/** The document with all changes made; the one given is left alone. */
export const withChanges = (document: unknown, changes: readonly Change[]): unknown =>
  changes.reduce((made, { path, to }) => withValueAt(made, path, to), document)

/** A quantity's value changed; a spread and how it was known belong to what it was, so they go. */
export const valueChange = (path: readonly Key[], from: Quantity | undefined, to: number): Change => ({
  path,
  from,
  to,
})

/** `rotor.faceDistance_mm`, `stator.winding.phases[1].distance_mm`. */
export const pathText = (path: readonly Key[]): string =>
  path.map((key, k) => (typeof key === 'number' ? `[${key}]` : k === 0 ? key : `.${key}`)).join('')

/** Rounded to a step that a workshop can hold, without the noise of binary fractions. */
export const inSteps = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toPrecision(9))
