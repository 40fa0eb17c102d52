/** Ladders of what is wanted and claimed: a lower goal, a claim withdrawn. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Ladder, put, valueLadder } from './ladder.ts'

export function lowerGoal({ purpose: { power_W } }: Design): Ladder {
  if (power_W === undefined) return []
  const goal = nominal(power_W)
  return valueLadder(
    ['purpose', 'power_W'],
    power_W,
    [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05].map((share) => Number((share * goal).toPrecision(2))),
  )
}

export const claimWithdrawn = ({ bench: { claims } }: Design, k: number): Ladder =>
  claims[k] === undefined
    ? []
    : [
        [
          put(
            ['bench', 'claims'],
            claims,
            claims.filter((_, j) => j !== k),
          ),
        ],
      ]

/** Every claim that rests on anything but volts and amps into a load withdrawn. */
export function idleClaimsWithdrawn({ bench: { claims } }: Design): Ladder {
  const kept = claims.filter(({ from }) => from === 'volts and amps into a load')
  return kept.length === claims.length ? [] : [[put(['bench', 'claims'], claims, kept)]]
}
