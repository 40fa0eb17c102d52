/** Checks that the front door of the engine lists its public names by hand. */
import { posix } from 'node:path'
import { describe, expect, test } from 'vitest'
import { exportedNames } from './exported-name.ts'
import { exists, filesUnder, isCheck, isCode, textOf } from './repository.ts'

const door = 'src/index.ts'

/** Names the door lists, as `path name`. */
function listed(path: string, text: string): { faults: string[]; names: Set<string> } {
  const faults: string[] = []
  const names = new Set<string>()
  const seen = new Set<string>()
  for (const entry of exportedNames(path, text)) {
    if (entry.name === '*') faults.push(`${path}: passes on everything from ${entry.from}`)
    else if (entry.from === undefined) faults.push(`${path}: ${entry.name} is not passed on but made here`)
    else {
      if (seen.has(entry.name)) faults.push(`${path}: ${entry.name} is listed twice`)
      seen.add(entry.name)
      names.add(`${posix.join(posix.dirname(path), entry.from)} ${entry.nameThere}`)
    }
  }
  return { faults, names }
}

/** Entry files: the files directly in `machine` and `analysis`; folders inside them are their own affair. */
const entryFiles = filesUnder('src/machine', 'src/analysis').filter(
  (path) => isCode(path) && !isCheck(path) && path.split('/').length === 3,
)

/** A whole file is internal when its opening sentence says `@internal`. */
const isInternalFile = (text: string) =>
  /^\/\*\*[\s\S]*?@internal[\s\S]*?\*\//.test(text.split('\nimport')[0]!)

describe('law: the front door lists names by hand', () => {
  test('it exists as soon as there is a machine', () => {
    expect(exists(door) || entryFiles.length === 0).toBe(true)
  })
  test.skipIf(!exists(door))('no export *, nothing made at the door, nothing twice', () => {
    expect(listed(door, textOf(door)).faults).toEqual([])
  })
  test.skipIf(!exists(door))('every listed name exists where it is said to be', () => {
    const missing = [...listed(door, textOf(door)).names].filter((entry) => {
      const [path = '', name] = entry.split(' ')
      return !exists(path) || !exportedNames(path, textOf(path)).some((there) => there.name === name)
    })
    expect(missing).toEqual([])
  })
  test.skipIf(!exists(door))('every public name of machine and analysis is listed', () => {
    const { names } = listed(door, textOf(door))
    const forgotten = entryFiles
      .filter((path) => !isInternalFile(textOf(path)))
      .flatMap((path) =>
        exportedNames(path, textOf(path))
          .filter((entry) => !entry.internal && !names.has(`${path} ${entry.name}`))
          .map((entry) => `${path}: ${entry.name} is neither listed in ${door} nor marked @internal`),
      )
    expect(forgotten).toEqual([])
  })
})

describe('law: the check can fail', () => {
  test('export * is seen', () => {
    expect(listed('src/index.ts', "export * from './a.ts'").faults).toHaveLength(1)
    expect(listed('src/index.ts', "export * as a from './a.ts'").faults).toHaveLength(1)
  })
  test('a name made at the door is seen', () => {
    expect(listed('src/index.ts', 'export const a = 1').faults).toHaveLength(1)
  })
  test('a name listed twice is seen', () => {
    const twice = "export { a } from './a.ts'\nexport { b as a } from './b.ts'"
    expect(listed('src/index.ts', twice).faults).toHaveLength(1)
  })
  test('types, renamed names and functions are read', () => {
    const { names } = listed('src/index.ts', "export { type A, b as c } from './d/e.ts'")
    expect([...names]).toEqual(['src/d/e.ts A', 'src/d/e.ts b'])
    const there = exportedNames(
      'x.ts',
      'export interface A {}\nexport const b = 1, c = 2\nexport function d() {}',
    )
    expect(there.map((entry) => entry.name)).toEqual(['A', 'b', 'c', 'd'])
  })
  test('@internal is read from the block before a name', () => {
    const [one] = exportedNames('x.ts', '/** Only for here. @internal */\nexport const a = 1')
    expect(one?.internal).toBe(true)
  })
})
