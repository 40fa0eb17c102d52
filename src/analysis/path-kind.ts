/** The state of a wind on the way up or down the map, in the words of the table of winds. */
import type { MatchWind } from './match-map.ts'
import type { WindState } from './power-curve.ts'

export const pathKind = ({ states }: MatchWind, index: number): WindState =>
  index < 0 ? 'at rest' : states[index]!.kind
