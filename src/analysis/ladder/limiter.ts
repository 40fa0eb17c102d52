/** Ladders of the mechanical limiter: one added, one that acts earlier, one that suits the rotor. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { usualLimiterWind } from '../power-curve.ts'
import { valueChange } from '../remedy/change.ts'
import { type Ladder, put, valueLadder } from './ladder.ts'

/** Winds that a limiter can be set to [m/s], the gentlest first: below, a machine hardly works. Common practice, no source. */
const winds = [16, 14, 12, 11, 10, 9, 8, 7, 6, 5] as const

const upright = ({ blades }: Design): boolean => 'height_m' in blades

/** What limits a rotor of that axis without electricity. */
const suited = (design: Design) => (upright(design) ? 'friction brake' : 'furling tail')

/** A limiter where there is none, set to ever lower winds. */
export function limiterAdded(design: Design): Ladder {
  const { mechanical, actsAt_m_per_s } = design.protection
  if (mechanical !== 'none') return []
  return winds
    .filter((wind) => wind < nominal(design.site.stormWind_m_per_s))
    .map((wind) => [
      put(['protection', 'mechanical'], mechanical, suited(design)),
      valueChange(['protection', 'actsAt_m_per_s'], actsAt_m_per_s, wind),
    ])
}

/** The limiter that is there, set to ever lower winds. */
export function limiterEarlier({ protection }: Design): Ladder {
  const { mechanical, actsAt_m_per_s } = protection
  if (mechanical === 'none') return []
  const now = nominal(actsAt_m_per_s ?? usualLimiterWind)
  return valueLadder(
    ['protection', 'actsAt_m_per_s'],
    actsAt_m_per_s,
    winds.filter((wind) => wind < now),
  )
}

/** A limiter, or the one that is there earlier. */
export const limiter = (design: Design): Ladder =>
  design.protection.mechanical === 'none' ? limiterAdded(design) : limiterEarlier(design)

/** Another kind where the axis makes this one useless. */
export const limiterForAxis = (design: Design): Ladder => {
  const { mechanical } = design.protection
  return upright(design) && mechanical === 'furling tail'
    ? [[put(['protection', 'mechanical'], mechanical, suited(design))]]
    : []
}
