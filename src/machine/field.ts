/** The kinds of field a design document is declared from: quantities with a unit, words, counts, lists. */
import { z } from 'zod'
import { waysOfKnowing } from '../units/quantity.ts'
import { unit } from '../units/unit.ts'

export interface FieldNote {
  /** What it is, in a sentence a builder understands. */
  readonly help: string
  /** Symbol by ISO 80000 or the trade, where there is one. */
  readonly symbol?: string
}

export interface QuantityLimits extends FieldNote {
  readonly min: number
  readonly max: number
}

/** What a field leaves in its schema for forms, pages and messages. */
export interface FieldMeta {
  readonly description: string
  readonly unit?: string
  readonly symbol?: string
  readonly minimum?: number
  readonly maximum?: number
}

const metaOf = ({ help, symbol }: FieldNote, rest: Omit<FieldMeta, 'description' | 'symbol'> = {}) => ({
  description: help,
  ...(symbol === undefined ? {} : { symbol }),
  ...rest,
})

/** A quantity in the unit of `suffix`: a bare number, or `{ value, spread, known }`. */
export function quantity(suffix: string, { min, max, ...note }: QuantityLimits) {
  const { symbol } = unit(suffix)
  const bare = z.number().min(min).max(max)
  return z
    .union([
      bare,
      z.strictObject({
        value: bare,
        spread: z
          .number()
          .min(0)
          .max(max - Math.min(min, 0))
          .optional(),
        known: z.enum(waysOfKnowing).optional(),
      }),
    ])
    .meta(metaOf(note, { unit: symbol.trim() || '1', minimum: min, maximum: max }))
}

export const count = ({ min, max, ...note }: QuantityLimits) =>
  z
    .number()
    .int()
    .min(min)
    .max(max)
    .meta(metaOf(note, { minimum: min, maximum: max }))

export const choice = <const Words extends readonly string[]>(words: Words, note: FieldNote) =>
  z.enum(words).meta(metaOf(note))

export const text = (longest: number, note: FieldNote) => z.string().max(longest).meta(metaOf(note))

export const flag = (note: FieldNote) => z.boolean().meta(metaOf(note))

/** The names of a table's rows, to choose from. */
export const namesOf = (rows: readonly { readonly name: string }[]): readonly string[] =>
  rows.map(({ name }) => name)
