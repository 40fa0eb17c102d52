/** Way of the heat from the copper to the air as one resistance: what quick looks ask in place of the whole net. */
import type { RotorCurve } from './blade-rotor.ts'
import { copperNode } from './copper-node.ts'
import type { AirMotion } from './heat-film.ts'
import { type MachineHeat, typicalRises } from './machine-heat.ts'

/**
 * Narrow view of `MachineHeat`: copper to air, the copper 40 K above it, heat born in the copper alone. Right to some
 * percent of the rise between 20 and 80 K, for films depend on warmth by a small power.
 */
export interface StatorCooling {
  /**
   * Copper to air at a speed [K/W], in the wind in which the blades like that speed best: loaded or held back they turn
   * slower, and the true wind cools better.
   */
  readonly resistance: (speed: number) => number
  /** Half-width at 90 %, as a share; 0 where a heat run gave the number. */
  readonly spread: number
}

/** Wind in which blades turn at their best with this speed [m/s]. */
export const likedWind = (rotor: Pick<RotorCurve, 'best'>, radius: number, speed: number): number =>
  rotor.best.tipSpeedRatio > 0 ? (speed * radius) / rotor.best.tipSpeedRatio : 0

export function statorCooling(
  { net, body, sources, spread }: Pick<MachineHeat, 'net' | 'body' | 'sources' | 'spread'>,
  windAt: (speed: number) => number,
): StatorCooling {
  const count = body.nodes.length
  return {
    spread,
    resistance: (speed) => {
      const motion: AirMotion = { speed: Math.max(speed, 0), wind: windAt(Math.max(speed, 0)) }
      const rises = typicalRises(net, count, motion)
      const one = sources({ copper: 1, metal: 0 })
      net.round({ ...motion, sources: one }, rises)
      return rises[copperNode]!
    },
  }
}
