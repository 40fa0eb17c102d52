/** Ladders of turns: fewer or more with the window as full, or fewer of the same wire. */
import type { Design } from '../../machine/design.ts'
import { turnsChanges } from '../remedy/turns-change.ts'
import { type Ladder, put } from './ladder.ts'

const fewerShares = [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3] as const
const moreShares = [1.05, 1.1, 1.2, 1.35, 1.5, 1.75, 2, 2.5] as const

const counts = ({ stator: { winding } }: Design, shares: readonly number[]): number[] =>
  [...new Set(shares.map((share) => Math.max(1, Math.round(share * winding.turns))))].filter(
    (turns) => turns !== winding.turns,
  )

/** Fewer turns of thicker wire, the copper kept. */
export const fewerTurns = (design: Design): Ladder =>
  counts(design, fewerShares).map((turns) => turnsChanges(design, turns))

/** More turns of thinner wire, the copper kept. */
export const moreTurns = (design: Design): Ladder =>
  counts(design, moreShares).map((turns) => turnsChanges(design, turns))

/** Fewer turns of the same wire: the window empties. */
export const fewerTurnsOfSameWire = (design: Design): Ladder =>
  counts(design, fewerShares).map((turns) => [
    put(['stator', 'winding', 'turns'], design.stator.winding.turns, turns),
  ])
