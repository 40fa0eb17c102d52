/** Drag of straight arms across the flow, on the width that faces it. */

export interface StrutShape {
  readonly name: string
  /** C_d on the width facing the flow. */
  readonly dragCoefficient: number
  /** Half-width of that between surfaces and Reynolds numbers of 10⁴ to 10⁵. */
  readonly spread: number
  readonly source: string
  readonly where: string
}

const hoerner = 'chapter III, bodies across the flow, from memory, not opened'

export const strutShapes: readonly StrutShape[] = [
  { name: 'streamlined', dragCoefficient: 0.1, spread: 0.05, source: 'hoerner1965', where: hoerner },
  { name: 'flat bar', dragCoefficient: 0.9, spread: 0.2, source: 'hoerner1965', where: hoerner },
  { name: 'round tube', dragCoefficient: 1.1, spread: 0.1, source: 'hoerner1965', where: hoerner },
  { name: 'square tube', dragCoefficient: 2, spread: 0.2, source: 'hoerner1965', where: hoerner },
]
