/** The shelf as a person sees it: its designs with their versions, and everything that can be done with them. */
import { effect, signal } from '@preact/signals'
import { say } from '../text/say.ts'
import { saveAgain, saved, shelfWrites, tellOthers, theShelf } from './autosave.ts'
import { document as design, notice, openAnother, openId, replace, setValue } from './design.ts'
import { newIdentity } from './identity.ts'
import { page } from './keeping.ts'
import { shelfTrouble } from './keeping-trouble.ts'
import { latestWrite } from './latest-write.ts'
import { type RawObject, withValue } from './raw-document.ts'
import {
  clearDesign,
  designOn,
  designsOn,
  keepVersion,
  putDesign,
  type Shelf,
  type ShelvedDesign,
  type ShelvedVersion,
  versionCount,
  versionsOf,
} from './shelf.ts'
import { designsInFile, type FiledDesign, longestShelfFile, shelfFileText } from './shelf-file.ts'
import { nameOf, sizeOf } from './shown-design.ts'

export interface ListedDesign extends ShelvedDesign {
  readonly name: string
  /** Length of its file [bytes]. */
  readonly size: number
  readonly versions: number
}

/** Undefined until the shelf has been read. */
export const listed = signal<readonly ListedDesign[] | undefined>(undefined)
/** Why the shelf could not be read or changed, in a sentence. */
export const listTrouble = signal('')
/** What came of the last thing that was done here, each in a sentence. */
export const listNotes = signal<readonly string[]>([])

async function read(): Promise<void> {
  const shelf = await theShelf()
  const designs = await designsOn(shelf)
  const counts = await Promise.all(designs.map(({ id }) => versionCount(shelf, id)))
  listed.value = designs.map((one, k) => ({
    ...one,
    name: nameOf(one.document),
    size: sizeOf(one.document),
    versions: counts[k]!,
  }))
}

async function attempt(act: (shelf: Shelf) => Promise<void>): Promise<void> {
  try {
    await act(await theShelf())
    listTrouble.value = ''
  } catch (fault) {
    listTrouble.value = shelfTrouble(fault)
  }
}

let unread = false

/** One after another: an older list must not take the place of a newer one. */
const reading = latestWrite<number>(read, (fault) => {
  if (fault !== undefined) listTrouble.value = shelfTrouble(fault)
  else if (unread) listTrouble.value = ''
  unread = fault !== undefined
})

/** Reads the list, and again whenever something is written, until the function returned is called. */
export const watchShelf = (): (() => void) => effect(() => reading.write(shelfWrites.value))

const put = async (shelf: Shelf, one: ShelvedDesign, seenAt: number | undefined): Promise<void> => {
  await putDesign(shelf, one, seenAt)
  tellOthers(one.id, one.changedAt)
}

const withDesign = (id: string, act: (shelf: Shelf, one: ShelvedDesign) => Promise<void>): Promise<void> =>
  attempt(async (shelf) => {
    await saved()
    const one = await designOn(shelf, id)
    if (one) await act(shelf, one)
  })

export const openShelved = (id: string): Promise<void> =>
  withDesign(id, async (shelf, one) => {
    const { asideAt: _, ...inUse } = one
    if (one.asideAt !== undefined) await put(shelf, inUse, one.changedAt)
    openAnother(one.document, say`opened from the shelf`, { id, changedAt: one.changedAt })
    listNotes.value = [say`“${nameOf(one.document)}” is open now.`]
  })

/** Puts a second one beside it, under a name that tells them apart. */
export const duplicate = (id: string): Promise<void> =>
  withDesign(id, async (shelf, one) => {
    const name = say`${nameOf(one.document)}, copy`.slice(0, 120)
    const document = withValue(one.document, ['name'], name) as RawObject
    await put(shelf, { id: newIdentity(), document, changedAt: Date.now(), page }, undefined)
    listNotes.value = [say`“${name}” stands beside it now.`]
  })

/** The open one is renamed like any change of it, so that the way back knows of it. */
export async function rename(id: string, name: string): Promise<void> {
  if (id === openId.value) {
    setValue(['name'], name)
    await saved()
    return
  }
  await withDesign(id, (shelf, one) =>
    put(
      shelf,
      { ...one, document: withValue(one.document, ['name'], name) as RawObject, changedAt: Date.now(), page },
      one.changedAt,
    ),
  )
}

export const layAside = (id: string): Promise<void> =>
  withDesign(id, (shelf, one) => put(shelf, { ...one, asideAt: Date.now() }, one.changedAt))

export const bringBack = (id: string): Promise<void> =>
  withDesign(id, (shelf, { asideAt: _, ...one }) => put(shelf, one, one.changedAt))

/** There is no way back from this one; it makes room, so what could not be kept is tried again. */
export const clearForGood = (id: string): Promise<void> =>
  attempt(async (shelf) => {
    await clearDesign(shelf, id)
    tellOthers(id, Date.now())
    saveAgain()
  })

export async function versionsOfDesign(id: string): Promise<readonly ShelvedVersion[]> {
  let versions: readonly ShelvedVersion[] = []
  await attempt(async (shelf) => {
    await saved()
    versions = await versionsOf(shelf, id)
  })
  return versions
}

/** The version stands on the page again; what stood there is kept as a version itself. */
export async function restore({ id, document }: ShelvedVersion): Promise<void> {
  if (id !== openId.value) await openShelved(id)
  if (id !== openId.value) return
  replace(document, say`an older version brought back`, 'restored')
  await saved()
  listNotes.value = [say`The version is open now. The state before it is kept as a version too.`]
}

const putFiled = async (shelf: Shelf, filed: FiledDesign): Promise<void> => {
  const id = newIdentity()
  const { document, changedAt } = filed
  const aside = filed.aside ? { asideAt: changedAt } : {}
  await putDesign(shelf, { id, document, changedAt, page, ...aside }, undefined)
  for (const version of [...filed.versions].sort((a, b) => a.at - b.at))
    await keepVersion(shelf, { id, ...version })
  tellOthers(id, changedAt)
}

/** Puts the designs of files on the shelf; one that is there already, letter for letter, is not put twice. */
export async function bringIn(files: readonly File[]): Promise<void> {
  const notes: string[] = []
  await attempt(async (shelf) => {
    await saved()
    const there = new Set((await designsOn(shelf)).map(({ document }) => JSON.stringify(document)))
    let brought = 0
    let known = 0
    for (const file of files) {
      const name = file.name.slice(0, 80)
      if (file.size > longestShelfFile) {
        notes.push(
          say`${name} must be at most ${longestShelfFile} bytes long; received ${file.size} bytes (too-large)`,
        )
        continue
      }
      const { designs, refusals } = designsInFile(await file.text(), name, Date.now())
      notes.push(...refusals)
      for (const filed of designs) {
        const text = JSON.stringify(filed.document)
        if (there.has(text)) {
          known += 1
          continue
        }
        there.add(text)
        await putFiled(shelf, filed)
        brought += 1
      }
    }
    if (brought > 0)
      notes.unshift(
        brought === 1
          ? say`One design was put on the shelf.`
          : say`${brought} designs were put on the shelf.`,
      )
    if (known > 0)
      notes.push(
        known === 1
          ? say`One design was there already, the same in every field.`
          : say`${known} designs were there already, the same in every field.`,
      )
  })
  listNotes.value = notes
}

/** Text of a file with everything on the shelf. */
export async function wholeShelf(): Promise<string | undefined> {
  let text: string | undefined
  await attempt(async (shelf) => {
    await saved()
    const designs = await designsOn(shelf)
    const versions = await Promise.all(designs.map(({ id }) => versionsOf(shelf, id)))
    text = shelfFileText(
      designs.map(({ document, changedAt, asideAt }, k) => ({
        document,
        changedAt,
        aside: asideAt !== undefined,
        versions: versions[k]!,
      })),
    )
  })
  return text
}

/** The state of the open design that another window wrote is shown here; the own one stays among the versions. */
export const showOther = (): Promise<void> =>
  withDesign(openId.value, async (shelf, one) => {
    await keepVersion(shelf, {
      id: one.id,
      at: Date.now(),
      what: 'replaced',
      document: design.value,
    })
    openAnother(one.document, say`as another window had it`, { id: one.id, changedAt: one.changedAt })
    notice.value = say`This is the design as the other window has it. What stood here is among its versions.`
  })
