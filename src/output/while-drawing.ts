/** What holds while something is drawn or set, and nowhere else: a reader’s words, a reader’s units. */

export interface WhileDrawing<Value> {
  readonly now: () => Value
  /** Draws with `value` in place of what held before, which holds again afterwards, also when the drawing fails. */
  readonly by: <Drawn>(value: Value, draw: () => Drawn) => Drawn
}

/**
 * Kept in one place and not handed from picture to picture, since every picture has words and numbers and none needs to know
 * who reads them; drawing never waits, so nobody else draws meanwhile.
 */
export function whileDrawing<Value>(usual: Value): WhileDrawing<Value> {
  let held = usual
  return {
    now: () => held,
    by(value, draw) {
      const before = held
      held = value
      try {
        return draw()
      } finally {
        held = before
      }
    },
  }
}
