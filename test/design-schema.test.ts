/** Checks that another program can read the design schema, and that it judges the examples as we do. */
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { filesUnder, textOf } from './repository.ts'

const schema = JSON.parse(textOf('design.schema.json')) as Record<string, unknown>
// Formats and units are notes to people here; strict mode would refuse keywords it does not know.
const validate = new Ajv2020({ strict: false, allErrors: true }).compile(schema)
const examples = filesUnder('examples').filter((path) => /^examples\/[^/]+\.json$/.test(path))

describe('agrees: the JSON Schema (draft 2020-12) as an independent reader sees it', () => {
  test('it is a schema of that draft and names itself', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema.title).toContain('Gustloom')
  })
  for (const path of examples)
    test(`${path} is a design`, () => {
      const design = JSON.parse(textOf(path)) as Record<string, unknown>
      expect(validate(design), JSON.stringify(validate.errors)).toBe(true)
      expect(validate({ ...design, notAField: 1 })).toBe(false)
      const { name: _, ...nameless } = design
      expect(validate(nameless)).toBe(false)
    })
  test('what is no design is refused', () => {
    for (const value of [null, 3, 'design', [], {}]) expect(validate(value)).toBe(false)
  })
})
