/** The next number up or down that a hand on a button means: a small, round part of what stands there. */

/** Between half a hundredth and a twentieth of the value; a power of ten. */
const roundStep = (size: number): number => 10 ** (Math.floor(Math.log10(size / 2)) - 1)

/** The finest mark of a ruler in inches. */
const finest = 1 / 64

/** A power of two of an inch, about a thirtieth of the value. */
const rulerStep = (size: number): number => Math.max(finest, 2 ** Math.round(Math.log2(size / 32)))

const isOnRuler = (value: number): boolean =>
  value >= 0.25 && Math.abs(value / finest - Math.round(value / finest)) < 1e-9

export interface StepPlace {
  /** In the unit that is said; undefined where the field is not bounded. */
  readonly least: number | undefined
  readonly most: number | undefined
  /** Only whole numbers. */
  readonly whole?: boolean
  /** Inches: what stands on a mark of the ruler goes to the next mark. */
  readonly ruler?: boolean
}

function stepFor(value: number, { most, whole = false, ruler = false }: StepPlace): number {
  if (whole) return 1
  const size = Math.abs(value)
  if (ruler && isOnRuler(size)) return rulerStep(size)
  return roundStep(size > 0 ? size : Math.min(most ?? 1, 100))
}

/** `by` steps on, upon the round numbers, and never over the bounds. */
export function steppedNumber(value: number, by: number, place: StepPlace): number {
  // from 20 one goes down to 19.9 as one comes up from there
  const inwards = value * by < 0 ? value * (1 - 1e-9) : value
  const step = stepFor(place.ruler ? value : inwards, place)
  const at = value / step
  const near = 1e-6
  const next = by > 0 ? Math.floor(at + near) + by : Math.ceil(at - near) + by
  const bounded = Math.min(
    place.most ?? Number.POSITIVE_INFINITY,
    Math.max(place.least ?? Number.NEGATIVE_INFINITY, next * step),
  )
  return Number(bounded.toPrecision(10))
}
