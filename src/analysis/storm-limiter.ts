/** What a mechanical limiter leaves of the wind, and how fast it gets there. */
import type { Protection } from '../machine/supply-side.ts'
import { furlYaw, yawReduction } from '../physics/aerodynamics/yaw.ts'
import { limiterWind } from './power-curve.ts'
import type { StormChain } from './storm-machine.ts'

/** Lags of the limiters [s]: a tail must swing a whole head round, blades only themselves. Guesses, no source. */
export const limiterLag: Readonly<Record<Protection['mechanical'], number>> = {
  'furling tail': 1.5,
  'pitching blades': 0.5,
  'friction brake': 0.5,
  none: 1,
}

/** Farthest that a tail turns the rotor away [rad]. A guess, no source: tails end between 70° and 85°. */
const greatestYaw = (75 * Math.PI) / 180

/**
 * Share of the wind that it leaves once it has settled, at a wind and speed.
 *
 * All of them hold the power that the machine has in the wind at which they act. A tail also turns the rotor away from
 * a stronger push: of the working rotor it balances the thrust in that wind, and a rotor that has lost its load is
 * pushed harder. Blades that pitch, and a brake on the shaft, also answer to a speed above that of the wind at which
 * they act.
 */
export function limiterShare(chain: StormChain): (wind: number, speed: number) => number {
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
    return yawReduction(furlYaw({ windSpeed, heldWind: actsAt, greatest: greatestYaw })).wind
  }
}
