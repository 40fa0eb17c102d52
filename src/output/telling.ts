/** The words in which something is drawn or set: ours, or what a reader’s language makes of them. */

/** A sentence, a label or a word of ours as the reader is to see it. */
export type Telling = (sentence: string) => string

const ours: Telling = (sentence) => sentence

/**
 * Whatever is drawn within `toldBy` is said by its telling. Kept here and not handed from picture to picture, since every
 * picture has words and none needs to know the language; drawing never waits, so nobody else draws meanwhile.
 */
let telling = ours

export function toldBy<Drawn>(reader: Telling, draw: () => Drawn): Drawn {
  const before = telling
  telling = reader
  try {
    return draw()
  } finally {
    telling = before
  }
}

/** To be asked before room is measured or lines are broken: words of another language are longer and break elsewhere. */
export const said: Telling = (sentence) => telling(sentence)
