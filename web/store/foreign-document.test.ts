/** Checks of what comes from outside: each hostile text has its sentence, a design passes as it is. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deepestDocument, longestDocument } from '../../src/machine/document-bound.ts'
import { exampleDocument, exampleNames, exampleText } from '../../test/example.ts'
import { foreignDocument } from './foreign-document.ts'

const told = (text: string): string => {
  const read = foreignDocument(text, 'x.json')
  return read.kind === 'refused' ? read.reason : ''
}

describe('law: a text from outside is a design or a refusal in the words of the house', () => {
  const cases: readonly (readonly [string, string, RegExp])[] = [
    [
      'too long',
      ' '.repeat(longestDocument + 1),
      /at most 1000000 characters long; received 1000001 .*too-large/,
    ],
    ['not JSON', '{"name": ', /must be JSON; received .*not-json/],
    ['a list', '[1]', /must be an object; received a list \(wrong-type\)/],
    ['null', 'null', /must be an object; received nothing \(wrong-type\)/],
    ['a number', '7', /received a number/],
    ['nested', `${'{"a":'.repeat(deepestDocument + 1)}1${'}'.repeat(deepestDocument + 1)}`, /too-deep/],
    [
      'nested in 300 000 lists',
      `{"gustloom":2,"a":${'['.repeat(300_000)}${']'.repeat(300_000)}}`,
      /too-deep/,
    ],
    ['a prototype', '{"gustloom": 2, "rotor": {"__proto__": {"x": 1}}}', /“__proto__” \(unknown-key\)/],
    ['a constructor in a list', '{"gustloom": 2, "a": [{"constructor": 1}]}', /“constructor”/],
    [
      'of the future',
      '{"gustloom": 99}',
      /version number 2 or an older one; received 99 \(unknown-version\)/,
    ],
    ['of no version', '{"name": "x"}', /received nothing \(missing-key\)/],
    ['a version of markup', '{"gustloom": "<b>2</b>"}', /received <b>2<\/b> \(unknown-version\)/],
  ]
  for (const [name, text, sentence] of cases)
    test(name, () => {
      expect(told(text)).toMatch(sentence)
      expect(told(text)).toMatch(/^[^;]+ must be [^;]+; received .+ \([a-z-]+\)$/)
      expect(told(text).length).toBeLessThan(260)
    })

  test('every example passes as it is, with a byte-order mark too', () => {
    for (const name of exampleNames) {
      const passed = { kind: 'document', document: exampleDocument(name) }
      expect(foreignDocument(exampleText(name), name)).toEqual(passed)
      expect(foreignDocument(`\ufeff${exampleText(name)}`, name)).toEqual(passed)
    }
  })

  test('whatever JSON is given, nothing is thrown and no prototype is touched', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 8 }), (value) => {
        expect(['document', 'refused']).toContain(foreignDocument(JSON.stringify(value), 'x').kind)
      }),
      { seed: 6, numRuns: 300 },
    )
    foreignDocument('{"__proto__": {"planted": 1}, "gustloom": 2}', 'x')
    expect(Reflect.get({}, 'planted')).toBeUndefined()
  })
})
