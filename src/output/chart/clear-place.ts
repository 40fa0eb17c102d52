/** A place for words on a picture where they cover as little as possible of what is drawn. */
import { overlap, type WordBox, wordBox } from './panel.ts'
import type { Point } from './picture.ts'

export interface WordPlace {
  readonly at: Point
  readonly anchor: 'start' | 'middle' | 'end'
  readonly box: WordBox
}

/** What words should not lie over; all in the places of the sheet [px]. */
export interface Covered {
  /** Words may not leave it. */
  readonly within: WordBox
  /** Signs and points of lines. */
  readonly points: readonly Point[]
  readonly words: readonly WordBox[]
}

/** A sign keeps this distance from words [px]. */
const clearance = 4

/** Far from what they name, words are as bad as over a point [px]. */
const farOff = 90

/** From what they name to where words begin: across, and down to the foot of the letters [px]. */
const across = 12
const downs = [20, -10, 36, -26, 52, -42, 68, -58] as const

function cost({ at, box }: WordPlace, from: Point, { within, points, words }: Covered): number {
  const outside =
    Math.max(0, within.left - box.left, box.right - within.right) +
    Math.max(0, within.top - box.top, box.bottom - within.bottom)
  const over = points.filter(
    ([x, y]) =>
      x > box.left - clearance &&
      x < box.right + clearance &&
      y > box.top - clearance &&
      y < box.bottom + clearance,
  ).length
  const distance = Math.hypot(at[0] - from[0], at[1] - from[1])
  return outside + 3 * words.filter((other) => overlap(box, other)).length + over + distance / farOff
}

/** Beside a point, on the side and at the height where the words cover least. */
export function clearPlace(from: Point, text: string, covered: Covered): WordPlace {
  const places = downs.flatMap((down) =>
    ([1, -1] as const).map((side): WordPlace => {
      const at: Point = [from[0] + side * across, from[1] + down]
      const anchor = side === 1 ? 'start' : 'end'
      return { at, anchor, box: wordBox(at, text, anchor) }
    }),
  )
  return places.reduce((best, place) =>
    cost(place, from, covered) < cost(best, from, covered) ? place : best,
  )
}
