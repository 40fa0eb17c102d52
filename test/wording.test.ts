/** Checks the words of refusals and the titles of tests. */
import { describe, expect, test } from 'vitest'
import { concernRules } from '../src/analysis/concerns.ts'
import { refusalCodes } from '../src/refusal/code.ts'
import { checkTitles, suffices } from './check-title.ts'
import { exportedFunctions } from './docstring.ts'
import { filesUnder, isCheck, isCode, textOf } from './repository.ts'

const engine = filesUnder('src', 'cli', 'web').filter((path) => isCode(path) && !isCheck(path))

/** Words given as `code: '…'`, the way a refusal is made. */
const codesIn = (text: string): string[] =>
  [...text.matchAll(/\bcode:\s*'([^']+)'/g)].map((match) => match[1]!)

describe('law: refusal codes', () => {
  test('every code in use is a known one', () => {
    const unknown = engine
      .filter((path) => textOf(path).includes('refuse('))
      .flatMap((path) =>
        codesIn(textOf(path))
          .filter((code) => !(code in refusalCodes))
          .map((code) => `${path}: ${code}`),
      )
    expect(unknown).toEqual([])
  })
  test('every known code is explained on the page of refusals', () => {
    const page = textOf('docs/refusals.md')
    expect(Object.keys(refusalCodes).filter((code) => !page.includes(`\`${code}\``))).toEqual([])
  })
  test('codes are lower-case words, meanings are sentences without a full stop', () => {
    for (const [code, meaning] of Object.entries(refusalCodes)) {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/)
      expect(meaning).toMatch(/^[a-z].*[^.]$/)
    }
  })
})

describe('law: concerns', () => {
  test('every rule of the house is asked: each file that makes one is in the list', () => {
    const made = engine
      .filter((path) => path.startsWith('src/analysis/concern/') && /: ConcernRule = /.test(textOf(path)))
      .flatMap((path) => [...textOf(path).matchAll(/export const (\w+): ConcernRule = /g)].map((m) => m[1]!))
    const list = textOf('src/analysis/concerns.ts')
    expect(made.filter((name) => !new RegExp(`\\b${name}\\b`).test(list))).toEqual([])
  })
  test('codes are lower-case words, no two alike', () => {
    const codes = concernRules.map(({ code }) => code)
    expect(codes.filter((code) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(code))).toEqual([])
    expect(codes.filter((code, at) => codes.indexOf(code) !== at)).toEqual([])
  })
})

describe('law: titles of engine tests say the kind of check', () => {
  const tests = filesUnder('src').filter((path) => /\.test\.ts$/.test(path))
  test('every check has a kind', () => {
    expect(tests.length).toBeGreaterThan(0)
    expect(tests.flatMap((path) => checkTitles(path, textOf(path)).faults)).toEqual([])
  })
  test('a pin never stands alone', () => {
    const alone = tests.filter((path) => {
      const { kinds } = checkTitles(path, textOf(path))
      return kinds.has('pin') && kinds.size === 1
    })
    expect(alone).toEqual([])
  })
  test('every exported physics function is held against digits of others, or two routes and a law', () => {
    const checks = tests.map((path) => ({
      room: path.split('/').slice(0, 3).join('/'),
      words: new Set(textOf(path).match(/[\p{L}_$][\p{L}\p{N}_$]*/gu)),
      kinds: checkTitles(path, textOf(path)).kinds,
    }))
    const faults = engine
      .filter((path) => path.startsWith('src/physics/'))
      .flatMap((path) => {
        const room = path.split('/').slice(0, 3).join('/')
        return exportedFunctions(path, textOf(path)).flatMap(({ name, internal }) => {
          if (internal) return []
          const naming = checks.filter((check) => check.room === room && check.words.has(name))
          const kinds = new Set(naming.flatMap((check) => [...check.kinds]))
          return suffices(kinds) ? [] : [`${path}: ${name} has ${[...kinds].join(' and ') || 'no check'}`]
        })
      })
    expect(faults).toEqual([])
  })
})

describe('law: the check can fail', () => {
  const faultsOf = (text: string) => checkTitles('a.test.ts', text).faults.length
  test('a title without a kind is seen', () => {
    expect(faultsOf("test('it works', () => {})")).toBe(1)
    expect(faultsOf("describe('it', () => { test('works', () => {}) })")).toBe(1)
    expect(faultsOf("test.each([1])('it works', () => {})")).toBe(1)
    expect(faultsOf(`check(\`z = \${z}\`, 1, "1")`)).toBe(1)
    expect(faultsOf('for (const [title, a] of rows) check(title, a, "1")')).toBe(1)
  })
  test('a kind at either level is enough', () => {
    expect(faultsOf("test('law: it works', () => {})")).toBe(0)
    expect(
      faultsOf(`describe('source: a, b', () => { for (const z of x) check(\`z = \${z}\`, 1, '1') })`),
    ).toBe(0)
    expect(faultsOf("describe.each([1])('law: it', () => { test.skipIf(a)('works', () => {}) })")).toBe(0)
  })
  test('a function that passes its title on is a check by another name', () => {
    const wrapper = 'const row = (title: string, a: number) => check(title, a, "1")\n'
    expect(faultsOf(`${wrapper}describe('law: it', () => { row('a', 1) })`)).toBe(0)
    expect(faultsOf(`${wrapper}row('a', 1)`)).toBe(1)
    expect(checkTitles('a.ts', `${wrapper}row('law: a', 1)`).kinds.has('law')).toBe(true)
  })
  test('kinds are told apart', () => {
    const { kinds } = checkTitles('a.ts', "test('law: a', () => {})\ntest('pin: b', () => {})")
    expect([...kinds]).toEqual(['law', 'pin'])
    expect(suffices(kinds)).toBe(false)
    expect(suffices(new Set(['agrees', 'law'] as const))).toBe(true)
    expect(suffices(new Set(['source'] as const))).toBe(true)
  })
  test('an empty group has no kind', () => {
    expect(checkTitles('a.ts', "describe('source: a', () => {})").kinds.size).toBe(0)
  })
  test('codes are found in the way a refusal is written', () => {
    expect(codesIn("refuse({ name: 'a', code: 'not-a-code' })")).toEqual(['not-a-code'])
  })
})
