/** Checks of the shelf against a database in memory: what is put is there, versions in order, nobody's work lost. */
import * as memory from 'fake-indexeddb'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import {
  clearDesign,
  designOn,
  designsOn,
  keepVersion,
  mostVersions,
  openedDesign,
  openShelf,
  putDesign,
  putState,
  type Shelf,
  versionCount,
  versionsOf,
} from './shelf.ts'

beforeAll(() => {
  for (const [name, value] of Object.entries(memory))
    if (/^IDB|^indexedDB$/.test(name)) vi.stubGlobal(name, value)
})
afterAll(() => {
  vi.unstubAllGlobals()
})

let count = 0
const fresh = (): Promise<Shelf> => openShelf(`shelf ${count++}`)
const state = (turns: number) => ({ gustloom: 2, name: 'one', turns })
const put = (shelf: Shelf, page: string, changedAt: number, seenAt: number | undefined) =>
  putDesign(shelf, { id: 'a', document: state(changedAt), changedAt, page }, seenAt)

describe('law: what is put on the shelf is there', () => {
  test('the last state of each, the last changed first; the open one is remembered', async () => {
    const shelf = await fresh()
    expect(await put(shelf, 'here', 1, undefined)).toBe(false)
    expect(await put(shelf, 'here', 3, 1)).toBe(false)
    await putDesign(shelf, { id: 'b', document: state(9), changedAt: 2, page: 'here' }, undefined)
    await putState(shelf, { open: 'b', design: undefined, seenAt: undefined, versions: [] })
    expect((await designsOn(shelf)).map(({ id, document }) => [id, document.turns])).toEqual([
      ['a', 3],
      ['b', 9],
    ])
    expect(await openedDesign(shelf)).toBe('b')
    expect(await versionCount(shelf, 'a')).toBe(0)
  })

  test('cleared for good takes the versions along, and no other’s', async () => {
    const shelf = await fresh()
    await put(shelf, 'here', 1, undefined)
    for (const id of ['a', 'aa']) await keepVersion(shelf, { id, at: 5, what: 'opened', document: state(1) })
    await clearDesign(shelf, 'a')
    expect(await designOn(shelf, 'a')).toBeUndefined()
    expect(await versionCount(shelf, 'a')).toBe(0)
    expect(await versionCount(shelf, 'aa')).toBe(1)
  })
})

describe('law: a change is written whole or not at all', () => {
  test('a version that cannot be kept leaves the design as it was', async () => {
    const shelf = await fresh()
    await put(shelf, 'here', 1, undefined)
    const uncloneable = { id: 'a', at: 2, what: 'opened', document: { no: () => 0 } } as const
    const design = { id: 'a', document: state(2), changedAt: 2, page: 'here' }
    await expect(putState(shelf, { open: 'a', design, seenAt: 1, versions: [uncloneable] })).rejects.toThrow()
    expect((await designOn(shelf, 'a'))?.document).toEqual(state(1))
    expect(await openedDesign(shelf)).toBeUndefined()
  })
})

describe('law: two windows lose nothing of each other', () => {
  test('a state that was not seen is kept as a version before it is written over', async () => {
    const shelf = await fresh()
    await put(shelf, 'one', 1, undefined)
    expect(await put(shelf, 'two', 2, 1)).toBe(false)
    expect(await put(shelf, 'one', 3, 1)).toBe(true)
    expect((await designOn(shelf, 'a'))?.document.turns).toBe(3)
    expect((await versionsOf(shelf, 'a')).map(({ what, document }) => [what, document.turns])).toEqual([
      ['other-window', 2],
    ])
  })

  test('however two windows write in turn, every state is on the shelf or among its versions', async () => {
    const shelf = await fresh()
    const seen: Record<string, number | undefined> = { one: undefined, two: undefined }
    for (let at = 1; at <= 40; at++) {
      const page = (at * 7) % 3 === 0 ? 'one' : 'two'
      const before = await designOn(shelf, 'a')
      const foreign = await put(shelf, page, at, seen[page])
      expect(foreign).toBe(before !== undefined && before.page !== page && before.changedAt !== seen[page])
      if (foreign) expect((await versionsOf(shelf, 'a'))[0]?.document).toEqual(before?.document)
      seen[page] = at
    }
  })

  test('a clock set back changes nothing of it', async () => {
    const shelf = await fresh()
    await put(shelf, 'one', 1000, undefined)
    await put(shelf, 'two', 500, 1000)
    expect(await put(shelf, 'one', 600, 1000)).toBe(true)
    expect((await versionsOf(shelf, 'a'))[0]?.document.turns).toBe(500)
  })
})

describe('law: versions', () => {
  test('newest first; one like the newest is not kept twice, two of one moment are both kept', async () => {
    const shelf = await fresh()
    const keep = (at: number, turns: number) =>
      keepVersion(shelf, { id: 'a', at, what: 'working', document: state(turns) })
    await keep(1, 1)
    await keep(2, 1)
    await keep(3, 2)
    await keep(3, 4)
    expect((await versionsOf(shelf, 'a')).map(({ document }) => document.turns)).toEqual([4, 2, 1])
  })

  test('many are thinned in the older half only, and the newest always stay', async () => {
    const shelf = await fresh()
    for (let at = 1; at <= 3 * mostVersions; at++)
      await keepVersion(shelf, { id: 'a', at, what: 'working', document: state(at) })
    const left = (await versionsOf(shelf, 'a')).map(({ at }) => at)
    expect(left.length).toBeLessThanOrEqual(mostVersions + 1)
    expect(left.slice(0, 30)).toEqual(Array.from({ length: 30 }, (_, k) => 3 * mostVersions - k))
    expect(left).toContain(1)
  })
})
