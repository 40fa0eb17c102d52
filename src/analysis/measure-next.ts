/** What to measure next: for each guess the instrument that shrinks it, and what that makes of a result. */
import { type Instrument, instruments } from '../data/instrument.ts'
import type { Guess } from './guess.ts'

export interface NextMeasurement {
  /** Of the guess. */
  readonly path: string
  readonly instrument: string
  readonly doing: string
  /** Work [h], and days of waiting while an instrument runs by itself. */
  readonly hours: number
  readonly days: number
  /** Half-width at 90 % that the guess has, and that the measurement leaves, in the document's unit or about a factor of one. */
  readonly before: number
  readonly after: number
  /** The result's interval at 90 % once it has been measured, had the measurement found the present best value. */
  readonly low: number
  readonly high: number
  /** Share of the interval's width that goes. */
  readonly gain: number
  /** How the spread that it leaves is known. */
  readonly where: string
}

/** A day of waiting counts as so many hours of work when measurements are put in order: common practice, no source. */
const waitingHours = 0.1

/** Effort by which a gain is divided [h]. */
export const effortOf = ({ hours, days }: Pick<NextMeasurement, 'hours' | 'days'>): number =>
  hours + waitingHours * days

/** Gains below this share of the width are not worth a morning, and hardly stand out from the draws' own scatter. */
const leastGain = 0.03

/** The instrument for a guess; undefined where the table has none. */
export function instrumentFor(path: string): Instrument | undefined {
  const plain = path.replace(/\[\d+\]/g, '')
  return instruments.find(({ of }) => plain === of || plain.endsWith(of))
}

/** Half-width that an instrument leaves of a guess: never more than it had. */
export function widthLeft({ value, halfWidth }: Guess, { leaves }: Instrument): number {
  const { as, size } = leaves
  const left = as === 'share' ? size * Math.abs(value) : as === 'amount' ? size : size * halfWidth
  return Math.min(left, halfWidth)
}

/** How a result's interval comes out when one guess keeps only a part of its spread. */
export type IntervalWith = (input: number, part: number) => readonly [number, number]

/** The measurements worth making for one result, by gain over effort. */
export function nextMeasurements(
  guesses: readonly (Guess | undefined)[],
  [low, high]: readonly [number, number],
  intervalWith: IntervalWith,
): NextMeasurement[] {
  const whole = high - low
  if (!(whole > 0)) return []
  return guesses
    .flatMap((guess, k): NextMeasurement[] => {
      const found = guess === undefined ? undefined : instrumentFor(guess.path)
      if (guess === undefined || found === undefined) return []
      const after = widthLeft(guess, found)
      const ends = intervalWith(k, after / guess.halfWidth)
      const gain = 1 - (ends[1] - ends[0]) / whole
      if (gain < leastGain) return []
      const { instrument, doing, hours, days, where } = found
      const { path, halfWidth: before } = guess
      return [
        { path, instrument, doing, hours, days, before, after, low: ends[0], high: ends[1], gain, where },
      ]
    })
    .sort((one, other) => other.gain / effortOf(other) - one.gain / effortOf(one))
}
