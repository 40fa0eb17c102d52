/** Walks the declared document: what stands at a path, and every field there is. */
import type { z } from 'zod'
import type { FieldMeta } from './field.ts'

export type Schema = z.core.$ZodType
type Definition = z.core.$ZodTypes['_zod']['def']

const definitionOf = (schema: Schema): Definition => schema._zod.def as Definition

/** The schema under its optional, default and prefault wrappings. */
export function unwrapped(schema: Schema): Schema {
  const definition = definitionOf(schema)
  return definition.type === 'optional' || definition.type === 'default' || definition.type === 'prefault'
    ? unwrapped(definition.innerType)
    : schema
}

/** The default that a wrapping gives, undefined where there is none. */
export function defaultOf(schema: Schema): unknown {
  const definition = definitionOf(schema)
  if (definition.type === 'default' || definition.type === 'prefault') return definition.defaultValue
  return definition.type === 'optional' ? defaultOf(definition.innerType) : undefined
}

/** Whether a document may leave the field out. */
export const isOptional = (schema: Schema): boolean =>
  ['optional', 'default', 'prefault'].includes(definitionOf(schema).type)

/** Description, unit and limits left by `field.ts`, wherever in the wrappings they stand. */
export function metaOf(schema: Schema): FieldMeta | undefined {
  const meta = (schema as z.ZodType).meta?.() as FieldMeta | undefined
  if (meta?.description !== undefined) return meta
  const definition = definitionOf(schema)
  return definition.type === 'optional' || definition.type === 'default' || definition.type === 'prefault'
    ? metaOf(definition.innerType)
    : undefined
}

export const objectShape = (schema: Schema): Readonly<Record<string, Schema>> | undefined => {
  const definition = definitionOf(unwrapped(schema))
  return definition.type === 'object' ? definition.shape : undefined
}

export const arrayElement = (schema: Schema): Schema | undefined => {
  const definition = definitionOf(unwrapped(schema))
  return definition.type === 'array' ? definition.element : undefined
}

/** The words of a choice, undefined for other fields. */
export const choiceWords = (schema: Schema): readonly string[] | undefined => {
  const definition = definitionOf(unwrapped(schema))
  return definition.type === 'enum' ? Object.values(definition.entries).map(String) : undefined
}

export const literalValue = (schema: Schema): string | number | undefined => {
  const definition = definitionOf(unwrapped(schema))
  return definition.type === 'literal' ? (definition.values[0] as string | number) : undefined
}

export const typeName = (schema: Schema): string => definitionOf(unwrapped(schema)).type

export interface Variants {
  /** Name of the key whose word chooses the variant. */
  readonly key: string
  readonly options: ReadonlyMap<string, Schema>
}

/** The variants of a noun told apart by a word, undefined where there are none. */
export function variantsOf(schema: Schema): Variants | undefined {
  const definition = definitionOf(unwrapped(schema))
  if (definition.type !== 'union' || !('discriminator' in definition)) return undefined
  const key = String(definition.discriminator)
  const options = new Map<string, Schema>()
  for (const option of definition.options as readonly Schema[])
    options.set(String(literalValue(objectShape(option)![key]!)), option)
  return { key, options }
}

/** A union of a bare number and an object: the shape of every quantity. */
export function quantityObject(schema: Schema): Schema | undefined {
  const definition = definitionOf(unwrapped(schema))
  if (definition.type !== 'union' || 'discriminator' in definition) return undefined
  return (definition.options as readonly Schema[]).find((option) => objectShape(option) !== undefined)
}

/** The schema that governs `path` in `input`, following the variant that the input chose. */
export function schemaAt(schema: Schema, path: readonly PropertyKey[], input: unknown): Schema | undefined {
  const variants = variantsOf(schema)
  if (variants) {
    const word =
      typeof input === 'object' && input !== null
        ? (input as Record<string, unknown>)[variants.key]
        : undefined
    // anything but a word chooses nothing, and may not even be turned into one
    const chosen = typeof word === 'string' ? variants.options.get(word) : undefined
    return path.length === 0 && chosen === undefined ? schema : chosen && schemaAt(chosen, path, input)
  }
  const [key, ...rest] = path
  if (key === undefined) return quantityObject(schema) ?? schema
  const inside =
    typeof input === 'object' && input !== null ? (input as Record<PropertyKey, unknown>)[key] : undefined
  const shape = objectShape(quantityObject(schema) ?? schema)
  // a key such as "constructor" must not find what every object inherits
  const own = shape && Object.hasOwn(shape, key) ? shape[String(key)] : undefined
  const next = arrayElement(schema) ?? own
  return next && schemaAt(next, rest, inside)
}
