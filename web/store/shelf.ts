/** The designs kept in the browser's database, each as it stands and as it stood at turning points before. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb'
import type { RawObject } from './raw-document.ts'
import type { TurningPoint } from './turning-point.ts'

export interface ShelvedDesign {
  readonly id: string
  readonly document: RawObject
  /** [ms since 1970] */
  readonly changedAt: number
  /** Which opened page wrote it last: two may have the same design open. */
  readonly page: string
  /** Put aside; still here until it is cleared for good [ms since 1970]. */
  readonly asideAt?: number
}

export interface ShelvedVersion {
  readonly id: string
  /** [ms since 1970] */
  readonly at: number
  readonly what: TurningPoint
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

/** `lost` is called when the browser closes the database by itself: it has to be opened again. */
export async function openShelf(name = 'gustloom', lost: () => void = () => {}): Promise<Shelf> {
  const shelf = await openDB<Places>(name, form, {
    upgrade(made) {
      made.createObjectStore('designs', { keyPath: 'id' })
      made.createObjectStore('versions', { keyPath: ['id', 'at'] })
      made.createObjectStore('session')
    },
    // a newer page in another window changes the form: it must not wait for this one
    blocking: (_now, _wished, event) => {
      ;(event.target as IDBDatabase).close()
      lost()
    },
    terminated: lost,
  })
  return shelf
}

const versionsRange = (id: string) =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, Number.POSITIVE_INFINITY])

const sameDocument = (a: RawObject | undefined, b: RawObject): boolean =>
  a !== undefined && JSON.stringify(a) === JSON.stringify(b)

type Writing = IDBPTransaction<Places, ('designs' | 'versions' | 'session')[], 'readwrite'>

/** Where another page has written since `seenAt`, that state is kept as a version first. */
async function putIn(writing: Writing, design: ShelvedDesign, seenAt: number | undefined): Promise<boolean> {
  const designs = writing.objectStore('designs')
  const there = await designs.get(design.id)
  const foreign =
    there !== undefined &&
    there.page !== design.page &&
    there.changedAt !== seenAt &&
    !sameDocument(there.document, design.document)
  if (foreign)
    await writing.objectStore('versions').put({
      id: there.id,
      at: there.changedAt,
      what: 'other-window',
      document: there.document,
    })
  await designs.put(design)
  return foreign
}

/** One like the newest version is not kept twice; where there are many, the oldest are thinned. */
async function keepIn(writing: Writing, version: ShelvedVersion): Promise<void> {
  const versions = writing.objectStore('versions')
  const keys = await versions.getAllKeys(versionsRange(version.id))
  const newest = keys.at(-1)
  const last = newest === undefined ? undefined : await versions.get(newest)
  if (sameDocument(last?.document, version.document)) return
  const taken = new Set(keys.map(([, at]) => at))
  let { at } = version
  while (taken.has(at)) at += 1
  await versions.put({ ...version, at })
  if (keys.length < mostVersions) return
  const older = keys.slice(0, Math.floor(keys.length / 2))
  await Promise.all(older.filter((_, k) => k % 2 === 1).map((key) => versions.delete(key)))
}

/** Everything that `act` writes, or nothing of it. */
async function whole<Result>(shelf: Shelf, act: (writing: Writing) => Promise<Result>): Promise<Result> {
  const writing = shelf.transaction(['designs', 'versions', 'session'], 'readwrite')
  const acted = act(writing).catch((fault: unknown) => {
    // a fault before the database was asked would let the rest be kept
    try {
      writing.abort()
    } catch {
      // the database has given it up already
    }
    throw fault
  })
  const [result] = await Promise.all([acted, writing.done])
  return result
}

export interface ShelfState {
  /** The design that is open. */
  readonly open: string
  /** Its new state; undefined where the shelf has it, or where it is not to have it. */
  readonly design: ShelvedDesign | undefined
  readonly seenAt: number | undefined
  readonly versions: readonly ShelvedVersion[]
}

/** All that one change asks for; returns whether another page's state became a version. */
export const putState = (shelf: Shelf, { open, design, seenAt, versions }: ShelfState): Promise<boolean> =>
  whole(shelf, async (writing) => {
    const foreign = design !== undefined && (await putIn(writing, design, seenAt))
    for (const version of versions) await keepIn(writing, version)
    await writing.objectStore('session').put(open, openKey)
    return foreign
  })

/**
 * Puts a design as it stands. Where another page has written it since the state changed at `seenAt`, that state is
 * kept as a version first: neither page's work is lost. Returns whether that was so.
 */
export const putDesign = (
  shelf: Shelf,
  design: ShelvedDesign,
  seenAt: number | undefined,
): Promise<boolean> => whole(shelf, (writing) => putIn(writing, design, seenAt))

/** Keeps a state for the way back. */
export const keepVersion = (shelf: Shelf, version: ShelvedVersion): Promise<void> =>
  whole(shelf, (writing) => keepIn(writing, version))

/** The newest first. */
export async function versionsOf(shelf: Shelf, id: string): Promise<ShelvedVersion[]> {
  return (await shelf.getAll('versions', versionsRange(id))).reverse()
}

export const versionCount = (shelf: Shelf, id: string): Promise<number> =>
  shelf.count('versions', versionsRange(id))

export const designOn = (shelf: Shelf, id: string): Promise<ShelvedDesign | undefined> =>
  shelf.get('designs', id)

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
