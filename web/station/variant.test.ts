/** Checks that another variant of a noun is a design that the engine accepts. */
import { describe, expect, test } from 'vitest'
import disc from '../../examples/boathouse-two-disc.json'
import round from '../../examples/class-room-fan.json'
import drum from '../../examples/hen-house-drum.json'
import { designFields, faultText, parseDesign, resolveDesign } from '../../src/index.ts'
import type { Path, RawObject } from '../store/raw-document.ts'
import { valueAt } from '../store/raw-document.ts'
import { generalPath, isVariantChoice, withVariant } from './variant.ts'

const fields = designFields()
const choices: readonly (readonly [Path, readonly string[]])[] = [
  [
    ['blades', 'kind'],
    ['optimum', 'stations', 'table', 'straight-blade', 'drag-rotor'],
  ],
  [
    ['rotor', 'arrangement'],
    ['drum', 'disc', 'two-discs'],
  ],
  [
    ['stator', 'winding', 'kind'],
    ['serpentine', 'coils'],
  ],
  [
    ['stator', 'winding', 'hole', 'shape'],
    ['round', 'rectangular', 'wedge', 'lap'],
  ],
  [
    ['load', 'kind'],
    ['battery', 'resistor', 'open'],
  ],
]

const faultsOf = (document: RawObject): string[] => {
  const parsed = parseDesign(document)
  if (!parsed.ok) return parsed.faults.map(faultText)
  resolveDesign(parsed.design)
  return []
}

describe('law: every variant of every example is accepted', () => {
  for (const example of [drum, disc, round] as readonly RawObject[])
    for (const [keys, words] of choices)
      for (const word of words)
        test(`${String(example['name'])}: ${generalPath(keys)} = ${word}`, () => {
          const hole = keys.includes('hole')
          const start = hole ? withVariant(example, fields, ['stator', 'winding', 'kind'], 'coils') : example
          const next = withVariant(start, fields, keys, word)
          expect(valueAt(next, keys)).toBe(word)
          expect(faultsOf(next)).toEqual([])
        })
})

describe('law: what both variants know is kept, what the new one does not know goes', () => {
  const parent = (document: RawObject) => document['blades'] as RawObject
  test('blades', () => {
    const next = parent(withVariant(drum, fields, ['blades', 'kind'], 'stations'))
    expect(next['diameter_m']).toEqual(drum.blades.diameter_m)
    expect(next['section']).toBe(drum.blades.section)
    expect(next).not.toHaveProperty('tipSpeedRatio')
    expect(next).toHaveProperty('stations')
  })
  test('the same word changes nothing', () => {
    for (const [keys, words] of choices)
      for (const word of words)
        if (valueAt(drum, keys) === word && generalPath(keys) !== 'stator.winding.kind')
          expect(withVariant(drum, fields, keys, word)).toEqual(drum)
  })
  test('only words that bring fields are variants', () => {
    expect(isVariantChoice(fields, ['blades', 'kind'])).toBe(true)
    expect(isVariantChoice(fields, ['rotor', 'retention', 'kind'])).toBe(false)
  })
})
