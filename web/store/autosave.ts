/** Keeps every state of the open design at once, in the small store and on the shelf, with versions at turning points. */
import { signal } from '@preact/signals'
import { say } from '../text/say.ts'
import { type Copy, designHere, dropCopy, type FoundCopies, page, writeCopy } from './keeping.ts'
import { keepingTrouble } from './keeping-trouble.ts'
import { latestWrite } from './latest-write.ts'
import type { RawObject } from './raw-document.ts'
import type { Shelf, ShelvedVersion } from './shelf.ts'
import type { TurningPoint } from './turning-point.ts'

/** A design by the name of its place on the shelf. */
export interface Held {
  readonly id: string
  readonly document: RawObject
}

/** Why the last change is not safe, in a sentence; empty when it is. */
export const trouble = signal('')
/** Counts what is written, so that lists of the shelf are read again. */
export const shelfWrites = signal(0)
/** When another window last changed the design that is open here [ms since 1970]. */
export const changedElsewhere = signal<number | undefined>(undefined)
/** Another window's state was kept as a version when this one was written over it. */
export const keptForOther = signal(false)

/** While somebody works, a version is kept this often [ms]. */
export const versionEvery = 10 * 60_000

/** The database may be long in opening, but a person has to be told some time [ms]. */
const longestOpening = 15_000

const seenAt = new Map<string, number>()
const onShelf = new Map<string, RawObject>()
const untouched = new Set<string>()
const versionKeptAt = new Map<string, number>()
const versionsToKeep: ShelvedVersion[] = []
let latest: Copy | undefined
let smallStoreFault: unknown

let opening: Promise<Shelf> | undefined
let settle: ((shelf: Shelf) => Promise<void>) | undefined

async function opened(): Promise<Shelf> {
  const { openShelf } = await import('./shelf.ts')
  const shelf = await Promise.race([
    openShelf('gustloom', () => {
      opening = undefined
    }),
    new Promise<never>((_, refuse) => {
      setTimeout(() => refuse(new Error(say`the database does not answer`)), longestOpening)
    }),
  ])
  await settle?.(shelf)
  settle = undefined
  return shelf
}

/** The shelf, opened when it is first asked for and again after a failure. */
export function theShelf(): Promise<Shelf> {
  opening ??= opened().catch((error: unknown) => {
    opening = undefined
    throw error
  })
  return opening
}

const others = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('gustloom')

/** Tells the other windows what was written here. */
export function tellOthers(id: string, changedAt: number): void {
  shelfWrites.value += 1
  others?.postMessage({ id, changedAt })
}

if (others)
  others.onmessage = ({ data }: MessageEvent<{ readonly id: string; readonly changedAt: number }>) => {
    shelfWrites.value += 1
    if (data.id === latest?.id) changedElsewhere.value = data.changedAt
  }

async function put(copy: Copy): Promise<void> {
  const shelf = await theShelf()
  const { putState } = await import('./shelf.ts')
  const { id, document, changedAt } = copy
  const versions = [...versionsToKeep]
  const isNew = !copy.untouched && onShelf.get(id) !== document
  const foreign = await putState(shelf, {
    open: id,
    design: isNew ? { id, document, changedAt, page } : undefined,
    seenAt: seenAt.get(id),
    versions,
  })
  versionsToKeep.splice(0, versions.length)
  if (isNew) {
    seenAt.set(id, changedAt)
    onShelf.set(id, document)
    if (foreign) keptForOther.value = true
    tellOthers(id, changedAt)
  }
  if (latest === copy) {
    latest = { ...copy, stored: true }
    writeCopy(latest)
  }
}

const saving = latestWrite<Copy>(put, (fault) => {
  trouble.value = fault === undefined ? '' : keepingTrouble(fault, smallStoreFault)
})

/** Settles when everything is written. */
export const saved = (): Promise<void> => saving.rest()

/** Tries again what could not be written, after room was made. */
export function saveAgain(): void {
  if (latest) saving.write(latest)
}

function keepVersionOf(before: Held, what: TurningPoint | undefined): void {
  const at = Date.now()
  const last = versionKeptAt.get(before.id)
  const why =
    what ?? (last === undefined ? 'opened' : at - last >= versionEvery ? ('working' as const) : undefined)
  if (why === undefined) return
  versionKeptAt.set(before.id, at)
  versionsToKeep.push({ id: before.id, at, what: why, document: before.document })
}

/** Keeps what stands on the page now; `before` is what stood there, `what` the turning point if it is one. */
export function hold(next: Held, before: Held, what?: TurningPoint): void {
  if (next.id === before.id) {
    untouched.delete(next.id)
    keepVersionOf(before, what)
  }
  changedElsewhere.value = undefined
  keptForOther.value = false
  latest = {
    ...next,
    changedAt: Date.now(),
    seenAt: seenAt.get(next.id),
    page,
    stored: false,
    untouched: untouched.has(next.id),
  }
  smallStoreFault = writeCopy(latest)
  saving.write(latest)
}

/** An example: no design of one's own until it is changed. */
export function notYetOwn(id: string): void {
  untouched.add(id)
}

/** The state of the shelf that the page goes on from. */
export function takenFromShelf({ id, document }: Held, changedAt: number): void {
  seenAt.set(id, changedAt)
  onShelf.set(id, document)
}

/** What this tab had open, else what was changed last. */
export function startCopy({ found }: FoundCopies): Copy | undefined {
  const here = designHere()
  return (found.find(({ copy }) => copy.id === here) ?? found[0])?.copy
}

/** Puts on the shelf what pages before this one left in the small store only. */
async function takeOver(shelf: Shelf, { found }: FoundCopies): Promise<void> {
  const { designOn, keepVersion, putDesign } = await import('./shelf.ts')
  for (const { copy } of found) {
    if (copy.stored || copy.untouched) continue
    const { id, document, changedAt } = copy
    const there = await designOn(shelf, id)
    if (there === undefined || there.changedAt < changedAt)
      await putDesign(shelf, { id, document, changedAt, page: copy.page }, copy.seenAt)
    else if (JSON.stringify(there.document) !== JSON.stringify(document))
      await keepVersion(shelf, { id, at: changedAt, what: 'left-over', document })
  }
}

/**
 * Begins to keep. `start` stands on the page, taken from a copy or an example; where the shelf knows of a newer
 * state or of another design that this tab had open, `arrived` is called with it.
 */
export function begin(
  start: Held,
  copies: FoundCopies,
  arrived: (held: Held, changedAt: number) => void,
): void {
  const mine = copies.found.find(({ copy }) => copy.id === start.id)?.copy
  if (mine === undefined || mine.untouched) notYetOwn(start.id)
  latest = {
    ...start,
    changedAt: mine?.changedAt ?? 0,
    seenAt: mine?.seenAt,
    page,
    stored: mine?.stored ?? false,
    untouched: untouched.has(start.id),
  }
  const first = latest
  const here = designHere()
  settle = async (shelf) => {
    await takeOver(shelf, copies)
    const { designOn, openedDesign } = await import('./shelf.ts')
    const own = await designOn(shelf, start.id)
    const newer = own !== undefined && own.changedAt > (mine?.changedAt ?? 0)
    if (own !== undefined && !newer) takenFromShelf(start, own.changedAt)
    const wished = here ?? (mine === undefined ? await openedDesign(shelf) : undefined) ?? start.id
    const there = wished === start.id ? (newer ? own : undefined) : await designOn(shelf, wished)
    if (latest === first) {
      if (there === undefined) writeCopy(first)
      else arrived(there, there.changedAt)
    }
    for (const found of copies.found) dropCopy(found)
  }
  addEventListener('pagehide', () => {
    if (latest) writeCopy(latest)
  })
  theShelf().catch((fault: unknown) => {
    trouble.value = keepingTrouble(fault, copies.fault)
  })
}
