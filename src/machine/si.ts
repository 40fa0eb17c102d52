/** Numbers of the document in SI, and rows of tables by name. */
import { nominal, type Quantity } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'

export const si = (quantity: Quantity, suffix: string): number => toSi(nominal(quantity), unit(suffix))

export const siOr = (quantity: Quantity | undefined, suffix: string): number | undefined =>
  quantity === undefined ? undefined : si(quantity, suffix)

export const celsius = (value: number): number => toSi(value, unit('degC'))

/** The row of that name; the document's words come from the same table, so it is there. */
export function row<Row extends { readonly name: string }>(rows: readonly Row[], name: string): Row {
  return rows.find((candidate) => candidate.name === name)!
}
