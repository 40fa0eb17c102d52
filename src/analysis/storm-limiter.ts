/** What a mechanical limiter leaves of the wind, and how fast it gets there. */
import type { Protection } from '../machine/supply-side.ts'
import { furlYaw, yawReduction } from '../physics/aerodynamics/yaw.ts'
import { limiterWind } from './power-curve.ts'
import type { StormChain } from './storm-chain.ts'

/** What is guessed of a mechanical limiter. */
export interface LimiterGuess {
  /** Until most of a change has been followed [s]. */
  readonly lag: number
  /** Farthest that a tail turns the rotor away [rad]. */
  readonly stop: number
}

type Mechanical = Protection['mechanical']

/**
 * Lags of the limiters, and the quickest and slowest that are likely [s]: a tail must swing a whole head round, blades
 * only themselves. Guesses, no source.
 */
export const limiterLags: Readonly<
  Record<Mechanical, readonly [usual: number, least: number, most: number]>
> = {
  'furling tail': [1.5, 0.7, 4],
  'pitching blades': [0.5, 0.2, 1.5],
  'friction brake': [0.5, 0.2, 1.5],
  none: [1, 1, 1],
}

const degree = Math.PI / 180

/** Farthest that a tail turns the rotor away [rad]. A guess, no source: tails end between 70° and 85°. */
const tailStop = { usual: 75 * degree, least: 70 * degree, most: 85 * degree } as const

export const usualLimiter = (mechanical: Mechanical): LimiterGuess => ({
  lag: limiterLags[mechanical][0],
  stop: tailStop.usual,
})

/** It acts late and not as far, or at once and farther: both ends of what is guessed. */
export const slowLimiter = (mechanical: Mechanical): LimiterGuess => ({
  lag: limiterLags[mechanical][2],
  stop: tailStop.least,
})
export const quickLimiter = (mechanical: Mechanical): LimiterGuess => ({
  lag: limiterLags[mechanical][1],
  stop: tailStop.most,
})

/**
 * Share of the wind that it leaves once it has settled, at a wind and speed.
 *
 * All of them hold the power that the machine has in the wind at which they act. A tail also turns the rotor away from
 * a stronger push: of the working rotor it balances the thrust in that wind, and a rotor that has lost its load is
 * pushed harder. Blades that pitch, and a brake on the shaft, also answer to a speed above that of the wind at which
 * they act.
 */
export function limiterShare(
  chain: StormChain,
  { stop }: Pick<LimiterGuess, 'stop'>,
): (wind: number, speed: number) => number {
  const { machine, blades } = chain
  const { mechanical } = machine.protection
  if (mechanical === 'none') return () => 1
  const actsAt = limiterWind(machine)
  const held = chain.rowAt(Math.min(actsAt, machine.site.stormWind))
  if (mechanical !== 'furling tail') {
    const most = Math.max(held.speed, 1e-6)
    return (wind, speed) => Math.min(1, actsAt / Math.max(wind, 1e-9), most / Math.max(speed, 1e-9))
  }
  const pushed = blades.thrust(actsAt, held.speed)
  return (wind, speed) => {
    // the wind in which the working rotor would be pushed as hard
    const thrust = pushed > 0 && wind > 0 ? Math.max(0, blades.thrust(wind, speed)) / pushed : 0
    const windSpeed = Math.max(wind, actsAt * Math.sqrt(thrust))
    return yawReduction(furlYaw({ windSpeed, heldWind: actsAt, greatest: stop })).wind
  }
}
