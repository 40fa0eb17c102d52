/** The load lost in a storm: how fast, how many volts, and how hard the magnets pull outward. */
import type { Machine } from '../machine/machine.ts'
import { centrifugalForce, pocketWallStress } from '../physics/mechanics/retention.ts'
import { type BladeMap, steadyStates } from './match.ts'
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

/** Long-term force that the wall in front of a magnet carries without glue [N]. */
function retentionHold({ rotor }: Machine): number {
  const { retention, magnet } = rotor
  if (retention.hold !== undefined) return retention.hold
  if (retention.kind === 'glue') return 0
  if (retention.kind === 'band') {
    // a band round the ring carries each magnet's force over 2 sin(π/n) of hoop tension
    const section = retention.wall * (rotor.arrangement === 'drum' ? magnet.length : magnet.thickness)
    return 2 * Math.sin(Math.PI / rotor.poleCount) * retention.allowableStress * section
  }
  const unit = pocketWallStress({
    force: 1,
    length: rotor.arrangement === 'drum' ? magnet.length : magnet.thickness,
    width: magnet.width,
    thickness: retention.wall,
    modulus: wallModulus,
  })
  return retention.allowableStress / unit.stress
}

/** Stiffness of the wall bears on its bending only, not on its stress [Pa]: plastics at hand lie near this. */
const wallModulus = 2e9

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
    magnetHold: retentionHold(machine),
  }
}
