/** Checks that the front door of the engine lists its public names by hand. */
import { posix } from 'node:path'
import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import { type ExportedName, exportedNames } from './exported-name.ts'
import { internalNames } from './internal-name.ts'
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

/** A type is reached through the functions that speak of it; whether it is listed too is a matter of taste. */
const isType = ({ node }: ExportedName): boolean =>
  node !== undefined && (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node))

describe('law: the front door lists names by hand', () => {
  test('it exists', () => {
    expect(exists(door)).toBe(true)
  })
  test('no export *, nothing made at the door, nothing twice', () => {
    expect(listed(door, textOf(door)).faults).toEqual([])
  })
  test('every listed name exists where it is said to be', () => {
    const missing = [...listed(door, textOf(door)).names].filter((entry) => {
      const [path = '', name] = entry.split(' ')
      return !exists(path) || !exportedNames(path, textOf(path)).some((there) => there.name === name)
    })
    expect(missing).toEqual([])
  })
  test('every name of machine and analysis is listed or said to be internal', () => {
    const { names } = listed(door, textOf(door))
    const forgotten = entryFiles
      .filter((path) => internalNames[path] !== 'all')
      .flatMap((path) =>
        exportedNames(path, textOf(path))
          .filter((entry) => !entry.internal && !isType(entry) && !internalNames[path]?.includes(entry.name))
          .filter((entry) => !names.has(`${path} ${entry.name}`))
          .map((entry) => `${path}: ${entry.name} is neither at ${door} nor in test/internal-name.ts`),
      )
    expect(forgotten).toEqual([])
  })
  test('what is said to be internal exists and is not at the door', () => {
    const { names } = listed(door, textOf(door))
    const stale = Object.entries(internalNames).flatMap(([path, which]) => {
      if (!exists(path)) return [`${path} does not exist`]
      const there = exportedNames(path, textOf(path)).map((entry) => entry.name)
      const said = which === 'all' ? there : which
      return said
        .filter((name) => !there.includes(name) || names.has(`${path} ${name}`))
        .map((name) => `${path}: ${name} is ${there.includes(name) ? 'at the door' : 'not exported'}`)
    })
    expect(stale).toEqual([])
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
