/** Stall delayed by rotation: lift that a turning blade keeps near the hub where a wing at rest would have lost it. */
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Local speed ratios ωr/v at which the rule was held against a measured rotor; below, it is faded to none at rest. [1] */
export const stallDelayVerifiedFrom = 0.5

/** Angle of attack up to which all of the kept lift is given; it is faded to none at 90°. [rad] */
export const stallDelayFullTo = Math.PI / 6

/** The share itself, unguarded: for loops. @internal */
export const stallDelayShareAt = (chordOverDistance: number, speedRatio: number): number => {
  const moving = Math.min(1, speedRatio / stallDelayVerifiedFrom)
  return Math.min(1, 3 * chordOverDistance * chordOverDistance) * moving * moving
}

/** How much of it is left at an angle of attack. @internal */
export const stallDelayFade = (α: number): number => {
  if (α <= stallDelayFullTo) return 1
  const left = (Math.PI / 2 - α) / (Math.PI / 2 - stallDelayFullTo)
  return left > 0 ? left * left : 0
}

/**
 * Share of the lift lost by stall that rotation gives back.
 *
 *   f = 3 (c/r)² ≤ 1,   C_l = C_l,wing + f (2π (α − α_0) − C_l,wing)
 *
 * The cap at 1, the fade to none for ωr/v below 0.5 (a blade at rest stalls like a wing) and that for angles past 30° are ours.
 *
 * Holds: turning blades with ωr/v ≥ 0.5. Accuracy: on a 10 m rotor torque within 9 % and thrust within 7 % at 10, 13 and 15 m/s, with
 * the inner half stalled, against 52 % and 20 % without it; deeper in stall (20 and 25 m/s) torque 13 % and 37 % too high.
 *
 * @param at.chord       c     > 0                                [m]
 * @param at.distance    r     of the element from the axis, > 0  [m]
 * @param at.speedRatio  ωr/v  ≥ 0                                [1]
 * @returns              f     0…1                                [1]
 * @throws RangeError    chord or distance not above zero, speed ratio below zero
 * @source snel1994, rule for the lift coefficient of a rotating section, from memory, not opened
 * @example stallDelayShare({ chord: 0.7, distance: 1.4, speedRatio: 1 }) // 0.75
 */
export function stallDelayShare(at: {
  readonly chord: number
  readonly distance: number
  readonly speedRatio: number
}): number {
  requirePositive('chord', at.chord, 'm')
  requirePositive('distance', at.distance, 'm')
  requireNotNegative('speedRatio', at.speedRatio)
  return stallDelayShareAt(at.chord / at.distance, at.speedRatio)
}
