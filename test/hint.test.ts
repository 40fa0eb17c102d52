/** Checks of the hints: every figure names functions that the engine calls and documents, and shows its inputs as they stand. */
import { posix } from 'node:path'
import { describe, expect, test } from 'vitest'
import { documentedMethods } from '../scripts/figure-method.ts'
import { allGerman } from '../scripts/text.ts'
import { spokenWireSize } from '../src/data/spoken-wire.ts'
import { designForm } from '../src/machine/design-fields.ts'
import { figureInputs, shownFields } from '../web/hint/figure-input.ts'
import { figureKeys, methodsFor, namedMethods, notCalled } from '../web/hint/figure-method.ts'
import { figureWords } from '../web/hint/figure-words.ts'
import { formulaLetters } from '../web/hint/formula-letter.ts'
import { glossary } from '../web/hint/glossary.ts'
import { termKeys } from '../web/hint/term-key.ts'
import { exampleDocument, exampleNames } from './example.ts'
import { exists, textOf } from './repository.ts'

const documented = documentedMethods()

/** Files that the computation of a whole machine reaches by imports of values. */
function reachedFrom(start: string): Set<string> {
  const found = new Set<string>()
  const visit = (path: string): void => {
    if (found.has(path) || !exists(path)) return
    found.add(path)
    for (const [, from] of textOf(path).matchAll(/^(?:import|export) (?!type )[^']*from '(\.[^']+\.ts)'/gm))
      visit(posix.normalize(posix.join(posix.dirname(path), from!)))
  }
  visit(start)
  return found
}

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')

describe('law: every figure names functions of the engine that say where they come from', () => {
  test('each named function exists and has a sentence, a formula, a range, an accuracy and a source', () => {
    expect(Object.keys(documented).sort()).toEqual([...namedMethods])
    const bare = Object.entries(documented).filter(
      ([, { sentence, formula, holds, accuracy, where }]) =>
        [sentence, holds, accuracy, where].some((text) => !/[\p{L}\d]/u.test(text)) || !/[=≈]/.test(formula),
    )
    expect(bare.map(([name]) => name)).toEqual([])
  })
  test('each is called on the way to a whole machine, but for those that say they are not', () => {
    const reached = [...reachedFrom('src/analysis/compute.ts')].map((path) => ({
      path,
      text: withoutComments(textOf(path)),
    }))
    expect(reached.length).toBeGreaterThan(100)
    const called = (name: string): boolean => {
      const [file, symbol] = name.split('#')
      const imported = new RegExp(
        `^import \\{[^}]*\\b(?<!type )${symbol}\\b[^}]*\\} from '[^']*/${posix.basename(file!)}\\.ts'`,
        'm',
      )
      const used = new RegExp(`\\b${symbol}\\b`, 'g')
      // once where it is imported, and once where it is called
      return reached.some(({ text }) => imported.test(text) && (text.match(used) ?? []).length > 1)
    }
    expect(namedMethods.filter((name) => !called(name) && !notCalled.includes(name))).toEqual([])
    expect(notCalled.filter((name) => !namedMethods.includes(name))).toEqual([])
  })
  test('no name of the code and no key of the bibliography is left in what is told', () => {
    const coded = Object.entries(documented).flatMap(([name, { sentence, holds, accuracy, where }]) =>
      [sentence, holds, accuracy, where]
        .filter((text) => /`|\b[a-z]+[A-Z]\w+|_[A-Z]|\b[a-z]+\d{4}\b|\be-\d/.test(text))
        .map((text) => `${name}: ${text}`),
    )
    expect(coded).toEqual([])
  })
  test('the letters that are explained stand in the formula, and every formula has some', () => {
    for (const name of namedMethods) {
      const letters = formulaLetters[name]?.() ?? []
      expect(letters.length, name).toBeGreaterThan(0)
      for (const [letter] of letters)
        for (const one of letter.split(', '))
          expect(documented[name]!.formula, `${name}: ${one}`).toContain(one)
    }
  })
  test('all of it has German, numbers with their comma', () => {
    const german = allGerman()
    const texts = Object.values(documented).flatMap(({ sentence, holds, accuracy, where }) => [
      sentence,
      holds,
      accuracy,
      where,
    ])
    expect(texts.filter((text) => !(text in german))).toEqual([])
    const digits = (text: string) => (text.match(/\d+/g) ?? []).sort().join(' ')
    expect(texts.filter((text) => digits(text) !== digits(german[text]!))).toEqual([])
  })
})

describe('law: what a figure is computed from is what stands in the document', () => {
  for (const name of exampleNames)
    test(name, () => {
      const document = exampleDocument(name)
      const form = designForm(document)
      for (const key of figureKeys) {
        const shown = shownFields(key, form, document)
        expect(shown.length, key).toBeGreaterThan(0)
        for (const { path, text } of shown) {
          const typed = path.split('.').reduce<any>((value, part) => value?.[part], document)
          const field = form.find((each) => each.path === path)!
          const kept = typed?.value ?? typed ?? field.default
          const value = field.kind === 'wire size' ? spokenWireSize(kept, 'mm')!.text : kept
          expect(text, path).toContain(String(value))
          if (typed?.spread !== undefined) expect(text, path).toContain(`± ${typed.spread}`)
        }
        // a rotor of buckets has measured coefficients alone
        const bare = ['startWind'].includes(key) && document.blades.kind === 'drag-rotor'
        expect(methodsFor(key, document).length > 0 || bare, key).toBe(true)
      }
    })
  test('an edit is told before the form has been told anew', () => {
    const document = exampleDocument('hen-house-drum')
    const form = designForm(exampleDocument('hen-house-drum'))
    document.site.meanWind_m_per_s.value = 5.1
    const [first] = shownFields('energy', form, document)
    expect(first!.text).toBe('5.1 ± 0.8 m/s')
  })
  test('every path of the lists is a field of some document', () => {
    const known = new Set(textOf('docs/design-fields.md').match(/(?<=`)[a-zA-Z]+\.[\w.]+(?=`)/g))
    const unknown = figureKeys.flatMap((key) => figureInputs[key].fields.filter((path) => !known.has(path)))
    expect(unknown).toEqual([])
  })
})

describe('law: the words of the trade', () => {
  test('each is told in two sentences, and no two have one name', () => {
    const sentences = (text: string) => text.split(/(?<=\.)\s+/).length
    const odd = termKeys.filter((key) => sentences(glossary[key].says()) !== 2)
    expect(odd).toEqual([])
    const names = termKeys.map((key) => glossary[key].name())
    expect(new Set(names).size).toBe(names.length)
  })
  test('a clause names its standard and its place; every figure leans on words that are there', () => {
    for (const key of termKeys) {
      const { clause } = glossary[key]
      if (clause !== undefined) expect(clause).toMatch(/^IEC [\d-]+:\d{4}, [\d.-]+$/)
    }
    for (const key of figureKeys) {
      expect(figureWords[key].terms.length).toBeGreaterThan(0)
      for (const term of figureWords[key].terms) expect(termKeys).toContain(term)
    }
  })
})
