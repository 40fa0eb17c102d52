/** A file with all designs of the shelf and their versions: written, and read as hostile. */
import { longestDocument } from '../../src/machine/document-bound.ts'
import { say } from '../text/say.ts'
import { foreignJson, foreignObject } from './foreign-document.ts'
import { documentText, isRawObject, type RawObject } from './raw-document.ts'
import { type TurningPoint, turningPoints } from './turning-point.ts'

export interface FiledVersion {
  /** [ms since 1970] */
  readonly at: number
  readonly what: TurningPoint
  readonly document: RawObject
}

export interface FiledDesign {
  readonly document: RawObject
  /** [ms since 1970] */
  readonly changedAt: number
  readonly aside: boolean
  readonly versions: readonly FiledVersion[]
}

/** Form of the file. */
const form = 1

/** A full shelf of some hundred designs with all their versions stays below [characters]. */
export const longestShelfFile = 60_000_000

const mostDesigns = 2000
const mostVersionsOfOne = 2000

export const shelfFileText = (designs: readonly FiledDesign[]): string =>
  documentText({
    gustloomShelf: form,
    designs: designs.map(({ document, changedAt, aside, versions }) => ({
      changed: new Date(changedAt).toISOString(),
      aside,
      design: document,
      versions: versions.map(({ at, what, document: design }) => ({
        kept: new Date(at).toISOString(),
        what,
        design,
      })),
    })),
  })

export interface FiledShelf {
  readonly designs: readonly FiledDesign[]
  /** What of the file was not taken, and why; the rest was. */
  readonly refusals: readonly string[]
}

/** A moment as written, or `now` where none is to be made out. */
const momentOf = (text: unknown, now: number): number => {
  const at = typeof text === 'string' ? Date.parse(text) : Number.NaN
  return Number.isFinite(at) && at >= 0 && at <= now ? at : now
}

function filedVersions(value: unknown, name: string, now: number, refusals: string[]): FiledVersion[] {
  if (!Array.isArray(value)) return []
  return value.slice(0, mostVersionsOfOne).flatMap((entry: unknown, k) => {
    if (!isRawObject(entry)) return []
    const read = foreignObject(entry.design, say`Version ${k + 1} of ${name}`)
    if (read.kind === 'refused') {
      refusals.push(read.reason)
      return []
    }
    const what = turningPoints.find((word) => word === entry.what) ?? 'left-over'
    return [{ at: momentOf(entry.kept, now), what, document: read.document }]
  })
}

function filedShelf(value: RawObject, name: string, now: number): FiledShelf {
  if (value.gustloomShelf !== form)
    return {
      designs: [],
      refusals: [
        say`“gustloomShelf” in ${name} must be the version number ${form}; received another one (unknown-version)`,
      ],
    }
  const list: unknown = value.designs
  if (!Array.isArray(list) || list.length > mostDesigns)
    return {
      designs: [],
      refusals: [
        say`“designs” in ${name} must be a list of at most ${mostDesigns} designs; received another value (wrong-length)`,
      ],
    }
  const refusals: string[] = []
  const designs = list.flatMap((entry: unknown, k): FiledDesign[] => {
    const place = say`design ${k + 1} in ${name}`
    const read = foreignObject(isRawObject(entry) ? entry.design : entry, place)
    if (read.kind === 'refused') {
      refusals.push(read.reason)
      return []
    }
    const { changed, aside, versions } = entry as RawObject
    return [
      {
        document: read.document,
        changedAt: momentOf(changed, now),
        aside: aside === true,
        versions: filedVersions(versions, place, now, refusals),
      },
    ]
  })
  return { designs, refusals }
}

/** The designs of a file, be it one design or a whole shelf. */
export function designsInFile(text: string, name: string, now: number): FiledShelf {
  const read = foreignJson(text, name, longestShelfFile)
  if (read.kind === 'refused') return { designs: [], refusals: [read.reason] }
  if (isRawObject(read.value) && Object.hasOwn(read.value, 'gustloomShelf'))
    return filedShelf(read.value, name, now)
  const one =
    text.length > longestDocument ? foreignJson(text, name, longestDocument) : foreignObject(read.value, name)
  return one.kind === 'document'
    ? { designs: [{ document: one.document, changedAt: now, aside: false, versions: [] }], refusals: [] }
    : { designs: [], refusals: one.kind === 'refused' ? [one.reason] : [] }
}
