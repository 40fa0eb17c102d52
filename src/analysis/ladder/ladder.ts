/** Steps of one kind of change, ever stronger: what a remedy of a concern is tried by. */
import { nominal, type Quantity } from '../../units/quantity.ts'
import type { ConcernRemedy, TriableRemedy } from '../concern/concern.ts'
import { type Change, inSteps, type Key, valueChange } from '../remedy/change.ts'

export type Ladder = TriableRemedy['ladder']

/** As advice only, where this design leaves nothing to try. */
export const triable = (words: string, ladder: Ladder): ConcernRemedy =>
  ladder.length === 0 ? words : { words, ladder }

/** Nothing at all where this design leaves nothing to try: the words would say what cannot be done. */
export const whereTriable = (words: string, ladder: Ladder): ConcernRemedy[] =>
  ladder.length === 0 ? [] : [{ words, ladder }]

/** A change that puts one word, list or group in the place of another. */
export const put = (path: readonly Key[], from: unknown, to: unknown): Change => ({ path, from, to })

/** One quantity through the values given; those that it has already are left out. */
export const valueLadder = (
  path: readonly Key[],
  from: Quantity | undefined,
  values: readonly number[],
): Ladder =>
  values
    .filter((value, k) => (from === undefined || value !== nominal(from)) && value !== values[k - 1])
    .map((value) => [valueChange(path, from, value)])

/** One quantity through multiples of what it is, in steps that a workshop can hold. */
export const scaleLadder = (
  path: readonly Key[],
  from: Quantity,
  { factors, step }: { readonly factors: readonly number[]; readonly step: number },
): Ladder =>
  valueLadder(
    path,
    from,
    factors.map((factor) => inSteps(factor * nominal(from), step)),
  )

/** A value rounded up to two digits: what one asks for in a shop. */
export function roundedUp(value: number): number {
  if (!(value > 0)) return value
  const step = 10 ** (Math.floor(Math.log10(value)) - 1)
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(12))
}

/** Each step of one ladder with the last of another; none where either has none. */
export function both(rising: Ladder, whole: Ladder): Ladder {
  const last = whole.at(-1)
  return last === undefined ? [] : rising.map((changes) => [...changes, ...last])
}
