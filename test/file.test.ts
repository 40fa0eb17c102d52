/** Checks names, lengths, first lines, exports and links of all files. */
import { statSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { anchorsOf, linkFaults, nameFaults, textFaults } from './file.ts'
import { exists, filesUnder, repositoryRoot, textOf } from './repository.ts'

const folders = ['src', 'cli', 'web', 'test', 'scripts', 'bench', 'docs', 'examples', '.ci'] as const
const files = filesUnder(...folders)
const pages = filesUnder('').filter((path) => path.endsWith('.md'))

const read = (path: string): string | undefined => {
  const bare = path.replace(/\/$/, '')
  if (!exists(bare)) return undefined
  return statSync(repositoryRoot + bare).isDirectory() ? '' : textOf(bare)
}

describe('law: files keep the rules of the house', () => {
  test('names', () => expect(files.flatMap(nameFaults)).toEqual([]))
  test('texts', () => {
    const texts = [...files, ...pages].filter(
      (path) => /\.(tsx?|css|html|md|ci\/run)$/.test(path) && !path.startsWith('test/reference/'),
    )
    expect([...new Set(texts)].flatMap((path) => textFaults(path, textOf(path)))).toEqual([])
  })
  test('links and anchors', () => {
    expect(pages.length).toBeGreaterThan(0)
    expect(pages.flatMap((path) => linkFaults(path, textOf(path), read))).toEqual([])
  })
  test('pages end their lines with a line feed alone', () => {
    expect(pages.filter((path) => textOf(path).includes('\r'))).toEqual([])
  })
})

describe('law: the check can fail', () => {
  const head = '/** What lives here. */\n'
  const planted: readonly (readonly [string, string, string])[] = [
    ['src/units/a.ts', `${head}${'\n'.repeat(400)}`, '401 lines'],
    ['src/units/a.ts', 'export const a = 1\n', 'does not begin with a sentence'],
    ['src/units/a.ts', '/** no full stop */\n', 'does not begin with a sentence'],
    ['src/units/a.ts', `${head}export class A {}\n`, 'has a class'],
    ['src/units/a.ts', `${head}const A = class {}\n`, 'has a class'],
    ['src/units/a.ts', `${head}export * from './b.ts'\n`, 'passes on everything'],
    ['src/units/a.ts', `${head}export default 3\n`, 'has a default export'],
    ['src/units/a.ts', `${head}export default function a() {}\n`, 'has a default export'],
    ['src/units/a.ts', `${head}// ${'TO'}DO\n`, 'says that it is unfinished'],
    ['src/units/a.ts', `${head}const \u00b5 = 1\n`, 'micro sign'],
    ['src/units/a.ts', `${head}// see ${'/ho'}me/me/x\n`, 'names a folder of one machine'],
  ]
  for (const [path, text, fault] of planted)
    test(fault, () => {
      const faults = textFaults(path, text)
      expect(faults).toHaveLength(1)
      expect(faults[0]).toContain(fault)
    })
  test('a clean file passes, a table may be long', () => {
    expect(textFaults('src/units/a.ts', head)).toEqual([])
    expect(textFaults('src/data/a.ts', `${head}${'\n'.repeat(900)}`)).toEqual([])
    expect(textFaults('src/units/a.published.ts', `${head}${'\n'.repeat(900)}`)).toEqual([])
  })
  test('names', () => {
    for (const path of [
      'src/units/unitTable.ts',
      'src/Units/a.ts',
      'src/units/utils.ts',
      'src/units/helpers/a.ts',
    ])
      expect(nameFaults(path), path).not.toEqual([])
    for (const path of [
      'src/units/unit.test.ts',
      '.ci/run',
      'README.md',
      'examples/5-w.json',
      'web/index.html',
    ])
      expect(nameFaults(path), path).toEqual([])
  })
  test('links', () => {
    const there: Record<string, string> = { 'docs/a.md': '# One thing\n## Two: (b)\n## Two: (b)\n' }
    const look = (text: string) => linkFaults('docs/b.md', text, (path) => there[path])
    expect(look('[x](a.md) [y](a.md#one-thing) [z](a.md#two-b-1) [w](https://example.org/#q)')).toEqual([])
    expect(look('# Here\n[x](#here) `[not](a-link.md)` <!-- [nor](this.md) -->')).toEqual([])
    expect(look('[x](c.md)')).toEqual(['docs/b.md: c.md leads nowhere'])
    expect(look('[x](a.md#three)')).toEqual(['docs/b.md: a.md#three has no such heading'])
    expect(look('![picture](p.png)')).toHaveLength(1)
    expect(anchorsOf('```\n# not a heading\n```\n# `code` and *star*')).toEqual(new Set(['code-and-star']))
  })
})
