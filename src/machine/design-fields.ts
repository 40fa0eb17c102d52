/** The declared document as lists of fields: for the reference page, and for a form that follows a document. */
import { unitOfName, units } from '../units/unit.ts'
import { designSchema } from './design.ts'
import { pathText } from './fault.ts'
import {
  arrayElement,
  choiceWords,
  defaultOf,
  isOptional,
  literalValue,
  metaOf,
  objectShape,
  quantityObject,
  type Schema,
  typeName,
  variantsOf,
} from './schema-walk.ts'

export type FieldKind = 'quantity' | 'count' | 'choice' | 'text' | 'flag' | 'list' | 'wire size'

export interface FieldDescription {
  /** `stator.winding.turns`; list entries as `[]`. */
  readonly path: string
  readonly kind: FieldKind
  readonly help: string
  /** Symbol of the unit, "1" for a pure number, empty where there is none. */
  readonly unit: string
  readonly symbol: string
  readonly minimum: number | undefined
  readonly maximum: number | undefined
  readonly words: readonly string[]
  readonly default: unknown
  readonly optional: boolean
  /** For fields of a variant: the choice that brings them, `rotor.arrangement = drum`. */
  readonly when: string
}

const unitOf = (path: string): string => {
  const name = path.slice(path.lastIndexOf('.') + 1).replace('[]', '')
  if (!name.includes('_')) return ''
  const suffix = name.slice(name.indexOf('_') + 1)
  return units.has(suffix) ? unitOfName(name).symbol.trim() : ''
}

function kindOf(schema: Schema): FieldKind | undefined {
  if (choiceWords(schema)) return 'choice'
  if (quantityObject(schema)) return 'quantity'
  switch (typeName(schema)) {
    case 'number':
      return 'count'
    case 'string':
      return 'text'
    case 'boolean':
      return 'flag'
    case 'array':
      return 'list'
    case 'union':
      return 'wire size'
    default:
      return undefined
  }
}

function leaf(path: string, schema: Schema, kind: FieldKind, when: string): FieldDescription {
  const meta = metaOf(schema)
  return {
    path,
    kind,
    help: meta?.description ?? '',
    unit: unitOf(path),
    symbol: meta?.symbol ?? '',
    minimum: meta?.minimum,
    maximum: meta?.maximum,
    words: choiceWords(schema) ?? [],
    default: defaultOf(schema),
    optional: isOptional(schema),
    when,
  }
}

function described(path: string, schema: Schema, when: string): FieldDescription[] {
  const inside = path === '' ? '' : `${path}.`
  const variants = variantsOf(schema)
  if (variants) {
    const words = [...variants.options.keys()]
    const choice = {
      ...leaf(`${inside}${variants.key}`, schema, 'choice', when),
      words,
      default: undefined,
      help: words
        .map((word) => {
          const option = objectShape(variants.options.get(word)!)![variants.key]!
          return `${word}: ${metaOf(option)?.description ?? word}`
        })
        .join('; '),
    }
    return [
      choice,
      ...words.flatMap((word) => {
        const { [variants.key]: _, ...rest } = objectShape(variants.options.get(word)!)!
        const condition = `${inside}${variants.key} = ${word}`
        return Object.entries(rest).flatMap(([key, field]) =>
          described(`${inside}${key}`, field, when === '' ? condition : `${when}, ${condition}`),
        )
      }),
    ]
  }
  const shape = quantityObject(schema) ? undefined : objectShape(schema)
  if (shape)
    return Object.entries(shape).flatMap(([key, field]) =>
      literalValue(field) === undefined ? described(`${inside}${key}`, field, when) : [],
    )
  const element = arrayElement(schema)
  if (element && (objectShape(element) || variantsOf(element)))
    return [leaf(path, schema, 'list', when), ...described(`${path}[]`, element, when)]
  const kind = kindOf(schema)
  return kind ? [leaf(path, schema, kind, when)] : []
}

/** Every field of the document, variants one after the other. */
export const designFields = (): readonly FieldDescription[] => described('', designSchema, '')

/** A field as it stands in one document: concrete path, the value typed there, undefined where it is left out. */
export interface FormField extends Omit<FieldDescription, 'when'> {
  readonly keys: readonly (string | number)[]
  readonly value: unknown
}

const inner = (value: unknown, key: string | number): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string | number, unknown>)[key]
    : undefined

function formOf(keys: readonly (string | number)[], schema: Schema, value: unknown): FormField[] {
  const path = pathText(keys)
  const field = (kind: FieldKind, words?: readonly string[]): FormField => {
    const { when: _, ...rest } = leaf(path.replace(/\[\d+\]$/, ''), schema, kind, '')
    return { ...rest, path, keys, value, ...(words ? { words } : {}) }
  }
  const variants = variantsOf(schema)
  if (variants) {
    const said = inner(value, variants.key)
    const word = typeof said === 'string' ? said : ''
    const chosen = variants.options.get(word)
    const choice: FormField = {
      ...field('choice', [...variants.options.keys()]),
      path: `${path}.${variants.key}`,
      keys: [...keys, variants.key],
      value: word,
      unit: '',
    }
    if (!chosen) return [choice]
    const rest = Object.entries(objectShape(chosen)!).filter(([key]) => key !== variants.key)
    return [choice, ...rest.flatMap(([key, next]) => formOf([...keys, key], next, inner(value, key)))]
  }
  const shape = quantityObject(schema) ? undefined : objectShape(schema)
  if (shape) {
    // an optional group that is left out shows nothing until somebody asks for it
    if (value === undefined && isOptional(schema) && defaultOf(schema) === undefined) return []
    return Object.entries(shape).flatMap(([key, next]) =>
      literalValue(next) === undefined ? formOf([...keys, key], next, inner(value, key)) : [],
    )
  }
  const element = arrayElement(schema)
  if (element && (objectShape(element) || variantsOf(element))) {
    const entries = Array.isArray(value) ? value : []
    return [field('list'), ...entries.flatMap((entry, k) => formOf([...keys, k], element, entry))]
  }
  const kind = kindOf(schema)
  return kind ? [field(kind)] : []
}

/** The fields that a form shows for this document, in the document's order. */
export const designForm = (document: unknown): readonly FormField[] => formOf([], designSchema, document)
