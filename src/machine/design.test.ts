/** Checks that the JSON Schema and the parser judge documents alike, for another program's sake. */
import { Ajv2020 } from 'ajv/dist/2020.js'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleDocument, exampleNames } from '../../test/example.ts'
import { setAt, variedDocument } from '../../test/varied-document.ts'
import { designJsonSchema, designSchema } from './design.ts'
import { designFields, designForm } from './design-fields.ts'
import { parseDesign } from './parse.ts'

// units and symbols are notes to people; strict mode would refuse keywords it does not know
const validate = new Ajv2020({ strict: false, allErrors: true }).compile(designJsonSchema())

/** What a schema of single values cannot say: the parser's own rules on top of it. */
const beyondSchema = (document: unknown): boolean => {
  const result = designSchema.safeParse(document)
  return !result.success && result.error.issues.every(({ code }) => code === 'custom')
}

function agreed(document: unknown): boolean {
  const byOthers = validate(document)
  const byUs = designSchema.safeParse(document).success
  return byOthers === byUs || (byOthers && beyondSchema(document))
}

describe('agrees: a JSON Schema 2020-12 validator and the parser', () => {
  for (const name of exampleNames)
    test(`${name} is a design to both`, () => {
      expect(validate(exampleDocument(name)), JSON.stringify(validate.errors)).toBe(true)
      expect(parseDesign(exampleDocument(name)).ok).toBe(true)
    })
  test('over hundreds of varied documents', () =>
    fc.assert(
      fc.property(variedDocument(4), ({ document }) => agreed(document)),
      { numRuns: 300 },
    ))
  const anything = fc.oneof(
    fc.constantFrom<unknown>(null, true, '', '12', [], {}, -1, 0, 1e308, -1e308, 5e-324, 0.5, 1e9),
    fc.record({ value: fc.double({ noNaN: true, noDefaultInfinity: true }) }),
    fc.record({ value: fc.integer(), spread: fc.integer(), known: fc.constantFrom('label', 'said') }),
    fc.jsonValue({ maxDepth: 2 }),
  )
  test('over documents with anything in the place of one field', () => {
    const document = exampleDocument('hen-house-drum')
    const places = designForm(document)
    fc.assert(
      fc.property(fc.constantFrom(...places), anything, ({ keys }, value) => {
        const broken = exampleDocument('hen-house-drum')
        setAt(broken, keys, value)
        expect(agreed(broken), `${keys.join('.')} = ${JSON.stringify(value)}`).toBe(true)
      }),
      { numRuns: 400 },
    )
  })
})

describe('law: one step beyond a limit is refused by both, the limit by neither', () => {
  const limited = designForm(exampleDocument('hen-house-drum')).filter(
    ({ kind, minimum, maximum }) =>
      (kind === 'quantity' || kind === 'count') && minimum !== undefined && maximum !== undefined,
  )
  test('the form of an example has such fields', () => expect(limited.length).toBeGreaterThan(40))
  for (const { path, keys, minimum, maximum, kind } of limited)
    test(path, () => {
      const step = kind === 'count' ? 1 : 0.001 * Math.max(1, Math.abs(maximum!))
      const verdict = (value: number) => {
        const document = exampleDocument('hen-house-drum')
        setAt(document, keys, value)
        const ours = designSchema.safeParse(document)
        // a rule that joins two fields may speak at a limit; the field's own limits may not
        const limits = ours.success ? [] : ours.error.issues.filter(({ code }) => code !== 'custom')
        return [validate(document), limits.length === 0]
      }
      expect(verdict(minimum!)).toEqual([true, true])
      expect(verdict(maximum!)).toEqual([true, true])
      expect(verdict(minimum! - step)).toEqual([false, false])
      expect(verdict(maximum! + step)).toEqual([false, false])
    })
})

describe('law: every declared field carries what a form and a page need', () => {
  const fields = designFields()
  test('a sentence of help', () => {
    for (const { path, help } of fields) if (path !== 'gustloom') expect(help.length, path).toBeGreaterThan(3)
  })
  test('limits in order, and a unit for every name that ends in one', () => {
    for (const { path, kind, minimum, maximum, unit } of fields) {
      if (kind === 'quantity' || kind === 'count') expect(minimum! < maximum!, path).toBe(true)
      if (kind === 'quantity' && /_(mm|m|deg|V|W)$/.test(path)) expect(unit, path).not.toBe('')
    }
  })
  test('no two fields of one variant share a path', () => {
    const seen = fields.map(({ path, when }) => `${path} when ${when}`)
    expect(new Set(seen).size).toBe(seen.length)
  })
})
