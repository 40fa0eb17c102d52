/** Weights of the parabola through three points. */

/** Shares of the values at a, b and c in the parabola's value at x; they sum to 1. */
export const parabolaWeights = (
  x: number,
  [a, b, c]: readonly [number, number, number],
): [number, number, number] => [
  ((x - b) * (x - c)) / ((a - b) * (a - c)),
  ((x - a) * (x - c)) / ((b - a) * (b - c)),
  ((x - a) * (x - b)) / ((c - a) * (c - b)),
]
