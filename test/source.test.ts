/** Checks the bibliography and that every tabulated number points into it. */
import { describe, expect, test } from 'vitest'
import { checkTitles } from './check-title.ts'
import { provenanceFaults } from './provenance.ts'
import { filesUnder, isCheck, isCode, sourceKeys, textOf } from './repository.ts'

/** Item types of the Citation Style Language 1.0.2 that occur in this trade. */
const types = new Set(
  (
    'article article-journal article-magazine book chapter dataset document entry-encyclopedia manuscript ' +
    'paper-conference patent personal_communication regulation report software standard thesis webpage'
  ).split(' '),
)

interface Entry {
  readonly id?: unknown
  readonly type?: unknown
  readonly title?: unknown
  readonly issued?: { readonly 'date-parts'?: readonly (readonly number[])[] }
  readonly author?: readonly { readonly family?: unknown; readonly literal?: unknown }[]
}

function entryFaults(entry: Entry): string[] {
  const faults: string[] = []
  const id = String(entry.id)
  if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) faults.push(`${id}: the id is not lower-case words and digits`)
  if (!types.has(String(entry.type))) faults.push(`${id}: type ${String(entry.type)} is unknown`)
  if (typeof entry.title !== 'string' || entry.title.trim() === '') faults.push(`${id}: has no title`)
  const parts = entry.issued?.['date-parts']
  if (entry.issued !== undefined && !(Number.isInteger(parts?.[0]?.[0]) && parts![0]![0]! > 1600))
    faults.push(`${id}: issued has no year`)
  for (const author of entry.author ?? [])
    if (typeof author.family !== 'string' && typeof author.literal !== 'string')
      faults.push(`${id}: an author has no family name`)
  return faults
}

const bibliography = JSON.parse(textOf('src/data/sources.json')) as Entry[]
const keys = sourceKeys()

describe('law: the bibliography is sound', () => {
  test('each entry has an id, a type and a title', () => {
    expect(bibliography.flatMap(entryFaults)).toEqual([])
  })
  test('no id occurs twice', () => {
    const ids = bibliography.map((entry) => entry.id)
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([])
  })
  test('every entry is cited somewhere', () => {
    const text = filesUnder('src', 'cli', 'web', 'test', 'docs', 'examples', 'bench')
      .filter((path) => path !== 'src/data/sources.json' && /\.(tsx?|md|json)$/.test(path))
      .map(textOf)
      .join('\n')
    const words = new Set(text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g))
    expect([...keys].filter((key) => !words.has(key))).toEqual([])
  })
})

describe('law: every number in a table has a source', () => {
  const files = filesUnder('src/data').filter((path) => isCode(path) && !isCheck(path))
  test('there are tables to look at', () => expect(files.length).toBeGreaterThan(0))
  for (const path of files)
    test(path, async () => {
      const module = (await import(/* @vite-ignore */ `../${path}`)) as Record<string, unknown>
      const faults = Object.entries(module).flatMap(([name, value]) => provenanceFaults(name, value, keys))
      expect(faults).toEqual([])
    })
})

describe('law: a check by source names its source first', () => {
  const files = filesUnder('src', 'test').filter((path) => /\.test\.ts$/.test(path))
  test('each title that begins with "source:" goes on with a key of the bibliography', () => {
    const faults = files.flatMap((path) =>
      checkTitles(path, textOf(path))
        .sources.map((title) => title.split(/[\s,]/)[0]!)
        // Empty: the key is computed, and only the run knows it.
        .filter((key) => key !== '' && !keys.has(key))
        .map((key) => `${path}: source: ${key}`),
    )
    expect(faults).toEqual([])
  })
})

describe('law: the check can fail', () => {
  const known = new Set(['book1999'])
  test('a row with a source passes', () => {
    const table = { source: 'book1999', where: 'table 1', rows: [{ a: 1, b: [2, 3] }] }
    expect(provenanceFaults('t', table, known)).toEqual([])
    expect(provenanceFaults('t', [{ a: 1, source: 'book1999', where: 'row 1' }], known)).toEqual([])
    expect(provenanceFaults('t', () => 3, known)).toEqual([])
  })
  test('a number without one does not', () => {
    expect(provenanceFaults('t', 3, known)).toEqual(['t has no source and no where'])
    expect(provenanceFaults('t', { a: 1, source: 'book1999' }, known)).toEqual(['t.a has no where'])
    expect(provenanceFaults('t', { a: 1, source: 'x', where: 'y' }, known)).toHaveLength(1)
    expect(provenanceFaults('t', new Float64Array(2), known)).toHaveLength(1)
    expect(provenanceFaults('t', [[{ a: 1 }]], known)).toHaveLength(1)
  })
  test('a broken entry is seen', () => {
    expect(entryFaults({ id: 'A B', type: 'novel', title: '', issued: {}, author: [{}] })).toHaveLength(5)
    expect(entryFaults({ id: 'book1999', type: 'book', title: 'Book' })).toEqual([])
  })
})
