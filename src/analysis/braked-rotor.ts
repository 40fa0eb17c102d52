/** What becomes of a turning rotor when its winding is shorted in a wind. */
import { monotoneCubic } from '../numerics/interpolate.ts'
import { root } from '../numerics/root.ts'
import type { Chain } from './compute.ts'
import { type ShortCircuit, type ShortPlace, shortCircuit } from './short-circuit.ts'

export interface BrakedState {
  /** Speed the shorted rotor settles at [rad/s]; where it started from when the brake cannot slow it. */
  readonly speed: number
  /** It came down well below the speed it had and below the speed that counts as parked. */
  readonly holds: boolean
}

/** A rotor is braked when the short brings it below this share of the speed it had: common practice, no source. */
export const brakedShare = 0.5

/** Speeds tried on the way down, evenly in their logarithm over two decades. */
const brakeSteps = 64
const slowest = 0.01

/**
 * The first speed at which the blades give what the brake takes [N·m], from `from` down. The rotor stops there even
 * if a stronger brake waits below.
 */
export function brakedState(
  driving: (speed: number) => number,
  braking: (speed: number) => number,
  { from, parked }: { readonly from: number; readonly parked: number },
): BrakedState {
  if (!(from > 0)) return { speed: 0, holds: true }
  const surplus = (speed: number) => driving(speed) - braking(speed)
  const verdict = (speed: number) => ({ speed, holds: speed <= brakedShare * from && speed <= parked })
  if (surplus(from) >= 0) return { speed: from, holds: false }
  let above = from
  for (let k = 1; k <= brakeSteps; k++) {
    const speed = from * slowest ** (k / brakeSteps)
    if (surplus(speed) >= 0) return verdict(root(surplus, [speed, above], from * 1e-6))
    above = speed
  }
  return verdict(surplus(0) >= 0 ? root(surplus, [0, above], from * 1e-6) : 0)
}

/**
 * Speed up to which a shorted rotor counts as parked [rad/s]: where current begins, for below it the machine turns
 * slower than it ever works. Without such a speed, the tip as fast as the wind: the blades are stalled.
 */
export function parkedSpeed(
  { generator, blades }: Pick<Chain, 'generator' | 'blades'>,
  wind: number,
): number {
  return Number.isFinite(generator.cutIn) ? generator.cutIn : wind / blades.radius
}

/** Speed the rotor reaches in a wind once its load is gone [rad/s]: the runaway of the storm, in proportion. */
export const unloadedSpeed = ({ runaway }: Pick<Chain, 'runaway'>, wind: number): number =>
  runaway.wind > 0 ? (runaway.speed * wind) / runaway.wind : 0

export interface Brake {
  readonly at: (speed: number) => ShortCircuit
  /** Torque against speed, from a table [N·m]. */
  readonly torque: (speed: number) => number
  readonly strongest: number
  /** What a short does in a wind to a rotor that turns at `from`. */
  readonly stop: (wind: number, from: number) => BrakedState
}

const tableSteps = 32

/** The shorted winding as a brake, its copper at one temperature [K], for speeds up to `fastest`. */
export function brake(
  chain: Pick<Chain, 'machine' | 'voltage' | 'generator' | 'blades'>,
  {
    place,
    copperTemperature,
    fastest,
  }: {
    readonly place: ShortPlace
    readonly copperTemperature: number
    readonly fastest: number
  },
): Brake {
  const short = shortCircuit(chain.machine, chain.voltage, place)
  const at = (speed: number) => short(speed, copperTemperature)
  // denser near rest, where the torque has its top
  const speeds = Float64Array.from({ length: tableSteps + 1 }, (_, k) => fastest * (k / tableSteps) ** 2)
  const torques = speeds.map((speed) => at(speed).torque)
  const torque = fastest > 0 ? monotoneCubic(speeds, torques) : () => 0
  return {
    at,
    torque,
    strongest: torques.reduce((most, each) => Math.max(most, each), 0),
    stop: (wind, from) =>
      brakedState((speed) => chain.blades.torque(wind, speed), torque, {
        from,
        parked: parkedSpeed(chain, wind),
      }),
  }
}
