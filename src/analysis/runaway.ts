/** The load lost in a storm: how fast, how many volts, and how hard the magnets pull outward. */
import type { Machine } from '../machine/machine.ts'
import { centrifugalForce } from '../physics/mechanics/retention.ts'
import { type BladeMap, steadyStates } from './match.ts'
import { magnetHold } from './mechanics/magnet-hold.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

export interface Runaway {
  readonly wind: number
  /** [rad/s] */
  readonly speed: number
  readonly tipSpeed: number
  /** Largest between lines, rms [V]. */
  readonly lineVoltage: number
  /** After the bridge with nothing connected: the largest line peak [V]. */
  readonly directVoltage: number
  readonly magnetMass: number
  /** On one magnet [N]. */
  readonly magnetForce: number
  /** What holds one magnet without glue, long term [N]; 0 for glue alone. */
  readonly magnetHold: number
}

/** `idlePower` is what the turning rotor costs with nothing connected [W]. */
export function runaway(
  machine: Machine,
  blades: BladeMap,
  voltage: OpenCircuitVoltage,
  idlePower: (speed: number) => number,
): Runaway {
  const { rotor, site } = machine
  const wind = site.stormWind
  const states = steadyStates((speed) => blades.power(wind, speed), idlePower, blades.fastest(wind))
  const speed = states.filter(({ stable }) => stable).at(-1)?.speed ?? 0
  const { magnet } = rotor
  const magnetMass = magnet.density * magnet.volume
  return {
    wind,
    speed,
    tipSpeed: speed * blades.radius,
    lineVoltage: Math.max(...voltage.lines.map(({ rms }) => rms)) * speed,
    directVoltage: voltage.greatestLinePeak * speed,
    magnetMass,
    magnetForce: centrifugalForce({ mass: magnetMass, radius: rotor.pitchRadius, speed }),
    magnetHold: magnetHold(machine, speed).hold,
  }
}
