/** Copies in the browser's small store, written at once: a bridge until the database has the state, and a quick start. */
import { newIdentity } from './identity.ts'
import { isRawObject, type RawObject } from './raw-document.ts'

export interface Copy {
  /** Of the design. */
  readonly id: string
  readonly document: RawObject
  /** [ms since 1970] */
  readonly changedAt: number
  /** When the state of the shelf that this one goes on from was changed; undefined where the shelf had none. */
  readonly seenAt: number | undefined
  /** The page that wrote it. */
  readonly page: string
  /** The database has it. */
  readonly stored: boolean
  /** An example nobody has changed: not a design of one's own yet. */
  readonly untouched: boolean
}

/** Each page writes a place of its own, so that two windows never write over each other. */
const prefix = 'gustloom.copy.'
const herePlace = 'gustloom.here'
const aside = 'gustloom.unreadable'

/** Where pages before the shelf kept the design, and the one that another took the place of. */
const formerPlaces: Readonly<Record<string, string>> = {
  'gustloom.document': 'first-kept',
  'gustloom.before': 'first-kept-before',
}

export const page = newIdentity()

const isCopy = (value: unknown): value is Copy =>
  isRawObject(value) &&
  typeof value.id === 'string' &&
  typeof value.changedAt === 'number' &&
  typeof value.page === 'string' &&
  isRawObject(value.document)

export interface FoundCopy {
  readonly place: string
  readonly text: string
  readonly copy: Copy
}

export interface FoundCopies {
  /** The last changed first. */
  readonly found: readonly FoundCopy[]
  /** Texts that could not be read; they were put aside. */
  readonly unreadable: number
  /** The store cannot be used at all. */
  readonly fault: unknown
}

/** A design kept before there was a shelf; its name is fixed, so that it is taken over once only. */
function formerCopy(place: string, value: unknown): Copy | undefined {
  const id = formerPlaces[place]
  if (id === undefined || !isRawObject(value)) return undefined
  const changedAt = place === 'gustloom.document' ? 1 : 0
  return {
    id,
    document: value,
    changedAt,
    seenAt: undefined,
    page: 'before the shelf',
    stored: false,
    untouched: false,
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function putAside(place: string, text: string): void {
  try {
    localStorage.setItem(aside, text)
    localStorage.removeItem(place)
  } catch {
    // no room for the second copy: the first place goes on holding it
  }
}

/** Everything that pages before this one left behind. */
export function foundCopies(): FoundCopies {
  const found: FoundCopy[] = []
  let unreadable = 0
  try {
    const places = Array.from({ length: localStorage.length }, (_, k) => localStorage.key(k)!).filter(
      (place) => place.startsWith(prefix) || place in formerPlaces,
    )
    for (const place of places) {
      const text = localStorage.getItem(place)
      if (text === null) continue
      const value = parsed(text)
      const copy = place.startsWith(prefix) ? (isCopy(value) ? value : undefined) : formerCopy(place, value)
      if (copy !== undefined) found.push({ place, text, copy })
      else {
        unreadable += 1
        putAside(place, text)
      }
    }
  } catch (fault) {
    return { found, unreadable, fault }
  }
  return { found: found.sort((a, b) => b.copy.changedAt - a.copy.changedAt), unreadable, fault: undefined }
}

/** Writes this page's copy; returns what went wrong. */
export function writeCopy(copy: Copy): unknown {
  try {
    localStorage.setItem(prefix + copy.page, JSON.stringify(copy))
    sessionStorage.setItem(herePlace, copy.id)
    return undefined
  } catch (fault) {
    // what stands there is older; the shelf knows better, or nothing does
    return fault
  }
}

/** Takes a copy away, where it still is what was found. */
export function dropCopy({ place, text }: FoundCopy): void {
  try {
    if (localStorage.getItem(place) === text) localStorage.removeItem(place)
  } catch {
    // a store that does not answer holds nothing that could be taken away
  }
}

/** The design that this tab had open before it was loaded again. */
export function designHere(): string | undefined {
  try {
    return sessionStorage.getItem(herePlace) ?? undefined
  } catch {
    return undefined
  }
}
