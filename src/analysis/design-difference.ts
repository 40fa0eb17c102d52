/** What differs between two designs: fields of their documents, figures of their machines, concerns. */
import type { Severity } from './concern/concern.ts'
import type { DesignFigures, FigureName } from './design-figure.ts'
import type { Change, Key } from './remedy/change.ts'

type JsonObject = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isBare = (value: unknown): boolean =>
  typeof value !== 'object' || value === null || (isObject(value) && 'value' in value)

/** Where the fields of a document end: a value, a quantity with its spread, a list of such, or nothing at all. */
const isField = (value: unknown): boolean =>
  isBare(value) ||
  (Array.isArray(value) ? value.every(isBare) : Object.keys(value as JsonObject).length === 0)

/** A quantity that says no more than its value is its value. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain)
  if (!isObject(value)) return value
  const said = Object.entries(value).filter(([, part]) => part !== undefined)
  if (said.length === 1 && said[0]![0] === 'value') return said[0]![1]
  return Object.fromEntries(
    said.map(([key, part]) => [key, plain(part)] as const).sort(([a], [b]) => (a < b ? -1 : 1)),
  )
}

/** Every field of a document with its place, in the order of the document. */
function* fieldsOf(value: unknown, path: readonly Key[]): Generator<readonly [readonly Key[], unknown]> {
  if (path.length > 0 && isField(value)) {
    if (value !== undefined) yield [path, value]
  } else if (Array.isArray(value))
    for (const [k, entry] of value.entries()) yield* fieldsOf(entry, [...path, k])
  else if (isObject(value))
    for (const [key, entry] of Object.entries(value)) yield* fieldsOf(entry, [...path, key])
}

/** By place; a place as text tells `a.b` as one key from `a` that holds `b`. */
const fieldMap = (document: unknown) =>
  new Map(
    [...fieldsOf(document, [])].map(([path, value]) => [JSON.stringify(path), { path, value }] as const),
  )

/** Every field that is not the same in both documents, once each, in the order of the new one; what is gone comes last. */
export function documentDifferences(from: unknown, to: unknown): readonly Change[] {
  const before = fieldMap(from)
  const after = fieldMap(to)
  const changed = [...after].flatMap(([place, { path, value }]): Change[] => {
    const old = before.get(place)?.value
    return JSON.stringify(plain(old)) === JSON.stringify(plain(value)) ? [] : [{ path, from: old, to: value }]
  })
  const gone = [...before].flatMap(([place, { path, value }]): Change[] =>
    after.has(place) ? [] : [{ path, from: value, to: undefined }],
  )
  return [...changed, ...gone]
}

export interface FigureDifference {
  readonly name: FigureName
  /** In SI units; infinite where it never happens. */
  readonly from: number
  readonly to: number
  /** to − from; zero where neither ever happens, infinite where one does not. */
  readonly difference: number
  /** Share by which the new one is larger; undefined where a share has no meaning. */
  readonly share: number | undefined
}

/** Shares of these would depend on where their scale begins. */
const withoutShare: ReadonlySet<FigureName> = new Set(['copperTemperature', 'hottestCopper'])

const shareOf = (name: FigureName, from: number, to: number): number | undefined =>
  withoutShare.has(name) || !(from > 0) || !Number.isFinite(from) || !Number.isFinite(to)
    ? undefined
    : to / from - 1

/** Every figure that both machines have. */
export const figureDifferences = (from: DesignFigures, to: DesignFigures): readonly FigureDifference[] =>
  (Object.keys(to) as FigureName[]).flatMap((name): FigureDifference[] => {
    const [old, now] = [from[name], to[name]]
    if (old === undefined || now === undefined) return []
    const difference = old === now ? 0 : now - old
    return [{ name, from: old, to: now, difference, share: shareOf(name, old, now) }]
  })

interface Raised {
  readonly code: string
  readonly severity: Severity
  /** In words. */
  readonly what: string
}

/** A concern that one of two machines does not raise, or not as gravely. */
export interface ConcernDifference {
  readonly code: string
  readonly what: string
  readonly before: Severity | undefined
  readonly after: Severity | undefined
}

/** Concerns that come or change, in the order of the new machine; those that go come last. */
export function concernDifferences(
  from: readonly Raised[],
  to: readonly Raised[],
): readonly ConcernDifference[] {
  const severityIn = (list: readonly Raised[], code: string) =>
    list.find((each) => each.code === code)?.severity
  const both = [...to, ...from.filter(({ code }) => severityIn(to, code) === undefined)]
  return both
    .filter(({ code }, k) => both.findIndex((each) => each.code === code) === k)
    .map(({ code, what }) => ({ code, what, before: severityIn(from, code), after: severityIn(to, code) }))
    .filter(({ before, after }) => before !== after)
}
