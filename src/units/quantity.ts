/** A value as a person holds it: the number, how far it may be off, and how it is known. */

/** Label: printed by a shop or maker; measured: read off an instrument; guessed: neither. */
export const waysOfKnowing = ['label', 'measured', 'guessed'] as const
export type Known = (typeof waysOfKnowing)[number]

/** A bare number, or one that carries its half-width at 90 % and how it is known. */
export type Quantity =
  | number
  | { readonly value: number; readonly spread?: number | undefined; readonly known?: Known | undefined }

export const nominal = (quantity: Quantity): number =>
  typeof quantity === 'number' ? quantity : quantity.value

export const spreadOf = (quantity: Quantity): number =>
  typeof quantity === 'number' ? 0 : (quantity.spread ?? 0)

export const knownOf = (quantity: Quantity): Known | undefined =>
  typeof quantity === 'number' ? undefined : quantity.known
