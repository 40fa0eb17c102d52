/** The designs kept in the browser's database, each as it stands and as it stood at turning points before. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { RawObject } from './raw-document.ts'

export interface ShelvedDesign {
  readonly id: string
  readonly document: RawObject
  /** [ms since 1970] */
  readonly changedAt: number
  /** Which opened page wrote it last: two may have the same design open. */
  readonly page: string
  /** Put aside; still here until the shelf is cleared [ms since 1970]. */
  readonly asideAt?: number
}

export interface ShelvedVersion {
  readonly id: string
  readonly at: number
  /** What it was kept for: `before a remedy`, `opened`. */
  readonly what: string
  readonly document: RawObject
}

interface Places extends DBSchema {
  designs: { key: string; value: ShelvedDesign }
  versions: { key: [string, number]; value: ShelvedVersion }
  session: { key: string; value: string }
}

export type Shelf = IDBPDatabase<Places>

const form = 1
const openKey = 'open'

/** Older versions of one design beyond this many are thinned, every other one of the older half. */
export const mostVersions = 120

export const openShelf = (name = 'gustloom'): Promise<Shelf> =>
  openDB<Places>(name, form, {
    upgrade(shelf) {
      shelf.createObjectStore('designs', { keyPath: 'id' })
      shelf.createObjectStore('versions', { keyPath: ['id', 'at'] })
      shelf.createObjectStore('session')
    },
  })

const versionsRange = (id: string) =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, Number.POSITIVE_INFINITY])

/**
 * Puts a design as it stands. Where another page has written it since `seenAt`, that state is kept as a version
 * first: neither page's work is lost.
 */
export async function putDesign(shelf: Shelf, design: ShelvedDesign, seenAt: number): Promise<void> {
  const transaction = shelf.transaction(['designs', 'versions'], 'readwrite')
  const there = await transaction.objectStore('designs').get(design.id)
  if (there !== undefined && there.page !== design.page && there.changedAt > seenAt)
    await transaction.objectStore('versions').put({
      id: there.id,
      at: there.changedAt,
      what: 'as another window had it',
      document: there.document,
    })
  await transaction.objectStore('designs').put(design)
  await transaction.done
}

/** Keeps a state for the way back, thinning the oldest where there are many. */
export async function keepVersion(shelf: Shelf, version: ShelvedVersion): Promise<void> {
  const transaction = shelf.transaction('versions', 'readwrite')
  await transaction.store.put(version)
  const keys = await transaction.store.getAllKeys(versionsRange(version.id))
  if (keys.length > mostVersions) {
    const older = keys.slice(0, Math.floor(keys.length / 2))
    await Promise.all(older.filter((_, k) => k % 2 === 1).map((key) => transaction.store.delete(key)))
  }
  await transaction.done
}

/** The newest first. */
export async function versionsOf(shelf: Shelf, id: string): Promise<ShelvedVersion[]> {
  return (await shelf.getAll('versions', versionsRange(id))).reverse()
}

/** Those in use and those put aside, the last changed first. */
export async function designsOn(shelf: Shelf): Promise<ShelvedDesign[]> {
  return (await shelf.getAll('designs')).sort((a, b) => b.changedAt - a.changedAt)
}

/** Takes a design and its versions off for good. */
export async function clearDesign(shelf: Shelf, id: string): Promise<void> {
  const transaction = shelf.transaction(['designs', 'versions'], 'readwrite')
  await transaction.objectStore('designs').delete(id)
  await transaction.objectStore('versions').delete(versionsRange(id))
  await transaction.done
}

export const openedDesign = (shelf: Shelf): Promise<string | undefined> => shelf.get('session', openKey)

export async function rememberOpened(shelf: Shelf, id: string): Promise<void> {
  await shelf.put('session', id, openKey)
}

/** Why something could not be kept, in a sentence for the page. */
export function shelfTrouble(error: unknown): string {
  const name = error instanceof DOMException || error instanceof Error ? error.name : ''
  if (name === 'QuotaExceededError')
    return 'Your last change is not kept on this machine, for the browser’s room is used up. Save the design as a file now, then clear designs that were put aside.'
  const reason = error instanceof Error ? error.message : String(error)
  return `Your last change is not kept on this machine (${reason}). Save the design as a file.`
}
