/** Checks of walking the declared document: the schema at a path, and the form of one document. */
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { exampleDocument, exampleNames } from '../../test/example.ts'
import { designSchema } from './design.ts'
import { designForm } from './design-fields.ts'
import { choice, count, flag, quantity, text } from './field.ts'
import {
  arrayElement,
  choiceWords,
  defaultOf,
  isOptional,
  metaOf,
  objectShape,
  quantityObject,
  schemaAt,
  unwrapped,
  variantsOf,
} from './schema-walk.ts'

const shape = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('round'),
    diameter_mm: quantity('mm', { min: 1, max: 9, help: 'Across' }),
  }),
  z.strictObject({ kind: z.literal('flat'), words: z.array(choice(['up', 'down'], { help: 'Way' })).max(3) }),
])
const sample = z.strictObject({
  shape,
  list: z.array(z.strictObject({ shape })).max(5),
  number: count({ min: 1, max: 5, help: 'How many', symbol: 'N' }).default(2),
  maybe: z.strictObject({ told: text(9, { help: 'Said' }).optional() }).optional(),
  sure: flag({ help: 'Whether' }),
})

describe('law: wrappings hide nothing', () => {
  const { number, maybe, sure } = objectShape(sample)!
  test('defaults, options, notes', () => {
    expect(defaultOf(number!)).toBe(2)
    expect(isOptional(number!)).toBe(true)
    expect(isOptional(sure!)).toBe(false)
    expect(defaultOf(maybe!)).toBeUndefined()
    expect(metaOf(number!)).toMatchObject({ description: 'How many', symbol: 'N', minimum: 1, maximum: 5 })
    expect(unwrapped(number!)).not.toBe(number)
    expect(unwrapped(sure!)).toBe(sure)
  })
  test('kinds are told apart', () => {
    expect([...variantsOf(shape)!.options.keys()]).toEqual(['round', 'flat'])
    expect(variantsOf(sample)).toBeUndefined()
    const round = objectShape(variantsOf(shape)!.options.get('round')!)!
    expect(quantityObject(round.diameter_mm!)).toBeDefined()
    expect(quantityObject(shape)).toBeUndefined()
    const flat = objectShape(variantsOf(shape)!.options.get('flat')!)!
    expect(choiceWords(arrayElement(flat.words!)!)).toEqual(['up', 'down'])
    expect(choiceWords(sure!)).toBeUndefined()
  })
})

describe('law: the schema at a path follows the variant that the document chose', () => {
  const document = { shape: { kind: 'round' }, list: [{ shape: { kind: 'flat', words: ['up'] } }, {}] }
  test('inside the chosen variant', () => {
    expect(metaOf(schemaAt(sample, ['shape', 'diameter_mm'], document)!)?.description ?? 'inside').toBe(
      'inside',
    )
    expect(schemaAt(sample, ['shape', 'diameter_mm'], document)).toBeDefined()
    expect(choiceWords(schemaAt(sample, ['list', 0, 'shape', 'words', 0], document)!)).toEqual(['up', 'down'])
  })
  test('not inside another', () => {
    expect(schemaAt(sample, ['shape', 'words'], document)).toBeUndefined()
    expect(schemaAt(sample, ['list', 0, 'shape', 'diameter_mm'], document)).toBeUndefined()
  })
  test('an undecided variant is known at its own place only', () => {
    expect(variantsOf(schemaAt(sample, ['list', 1, 'shape'], document)!)).toBeDefined()
    expect(schemaAt(sample, ['list', 1, 'shape', 'words'], document)).toBeUndefined()
  })
  test('nothing stands at a path that leads nowhere', () => {
    for (const path of [['nowhere'], ['sure', 'deeper'], ['shape', 'constructor'], ['list', 0, 'x']])
      expect(schemaAt(sample, path, document), path.join('.')).toBeUndefined()
  })
})

const at = (document: unknown, keys: readonly (string | number)[]): unknown =>
  keys.reduce<unknown>(
    (value, key) => (value as Record<string | number, unknown> | undefined)?.[key],
    document,
  )

describe('law: the form of a document', () => {
  for (const name of exampleNames)
    test(`${name}: every leaf of the document is a field, with the value that stands there`, () => {
      const document = exampleDocument(name)
      const form = designForm(document)
      for (const field of form) expect(field.value, field.path).toEqual(at(document, field.keys))
      const leaves = (value: unknown, path: string): string[] =>
        Array.isArray(value)
          ? value.flatMap((entry, k) => (typeof entry === 'object' ? leaves(entry, `${path}[${k}]`) : []))
          : typeof value === 'object' && value !== null && !('value' in value)
            ? Object.entries(value).flatMap(([key, entry]) =>
                leaves(entry, path === '' ? key : `${path}.${key}`),
              )
            : [path]
      const known = new Set(form.map(({ path }) => path))
      expect(leaves(document, '').filter((path) => path !== 'gustloom' && !known.has(path))).toEqual([])
    })
  const paths = (document: unknown) => designForm(document).map(({ path }) => path)
  test('follows a variant when it is switched', () => {
    const document = exampleDocument('hen-house-drum')
    expect(paths(document)).toContain('load.chemistry')
    document.load = { kind: 'resistor' }
    expect(paths(document)).not.toContain('load.chemistry')
    expect(paths(document)).toContain('load.resistance_ohm')
    document.load = { kind: 'kettle' }
    expect(paths(document).filter((path) => path.startsWith('load'))).toEqual(['load.kind'])
  })
  test('shows an optional group only when it is there', () => {
    const document = exampleDocument('class-room-fan')
    expect(paths(document).some((path) => path.startsWith('rotor.opposite'))).toBe(false)
    document.rotor.opposite = {}
    expect(paths(document)).toContain('rotor.opposite.faceDistance_mm')
  })
  test('shows each entry of a list', () => {
    const form = paths(exampleDocument('hen-house-drum'))
    for (const k of [0, 1, 2]) expect(form).toContain(`stator.winding.phases[${k}].offset_deg`)
    expect(form).not.toContain('stator.winding.phases[3].offset_deg')
  })
  test('names a path once', () => {
    for (const name of exampleNames) {
      const form = paths(exampleDocument(name))
      expect(form.filter((path, k) => form.indexOf(path) !== k)).toEqual([])
    }
  })
  test('stands up to what is no document', () => {
    for (const document of [undefined, null, 3, 'x', [], { rotor: 7 }, { rotor: { magnet: [] } }])
      expect(designForm(document).length).toBeGreaterThan(10)
  })
})

describe('law: every noun of the document can be reached by its path', () => {
  test('from the root', () => {
    const document = exampleDocument('hen-house-drum')
    for (const { keys, path } of designForm(document)) {
      const schema = schemaAt(designSchema, keys, document)
      expect(schema, path).toBeDefined()
    }
  })
})
