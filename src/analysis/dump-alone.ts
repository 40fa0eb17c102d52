/** The machine on its dump load alone, the battery gone: speed, volts and watts. */
import type { Chain } from './compute.ts'
import { mechanicalHolds } from './electric-duty.ts'
import { copperRatio } from './load-point.ts'
import { settledSpeed } from './match.ts'
import { limiterWind } from './power-curve.ts'

/** The copper is taken warm, as after a windy hour [K]. */
const copperTemperature = 333.15

/** Mean square of a rectified wave of p pulses in the turn, over the square of its peak: 1/2 + p sin(2π/p)/(4π). */
const meanSquare = (pulses: number): number =>
  0.5 + (pulses * Math.sin((2 * Math.PI) / pulses)) / (4 * Math.PI)

export interface ResistorPower {
  /** Taken by winding, line wires and resistor together, and by the resistor [W]. */
  readonly taken: number
  readonly resistor: number
}

/**
 * Watts with a resistance behind the bridge, by the fundamental: each phase sees a resistance that takes as much as
 * the rectified wave gives,
 *
 *   Rac = R/(2 m) in a star, n R/(2 m) in any other,  P = n E² Rac/((r + Rac)² + (ωL)²)
 *
 * m being the mean square of the wave. Diodes without drop, alike phases: within 7 % of the circuit in steps.
 */
export function resistorPower(
  { machine, voltage }: Pick<Chain, 'machine' | 'voltage'>,
  resistance: number,
): (speed: number) => ResistorPower {
  const { phases, inductance } = voltage
  const n = phases.length
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const E1 = mean(phases.map(({ fundamental }) => fundamental)) / Math.SQRT2
  const star = machine.stator.connection === 'star' && n > 1
  const delta = machine.stator.connection === 'delta' && n > 1
  const line =
    (machine.cable.place === 'before bridge' ? machine.cable.conductorResistance : 0) *
    (star ? 1 : delta ? 3 : 2)
  const r = mean(phases.map((phase) => phase.resistance)) * copperRatio(machine, copperTemperature) + line
  const mutuals = inductance.flatMap((row, i) => row.filter((_, k) => k !== i))
  const L = mean(inductance.map((row, i) => row[i]!)) - (mutuals.length > 0 && n > 2 ? mean(mutuals) : 0)
  const Rac = ((star ? 1 : n) * resistance) / (2 * meanSquare(n === 2 ? 4 : n === 1 ? 2 : 6))
  return (speed) => {
    const ωL = machine.rotor.polePairs * speed * L
    const square = (n * (E1 * speed) ** 2) / ((r + Rac) ** 2 + ωL ** 2)
    return { taken: square * (r + Rac), resistor: square * Rac }
  }
}

export interface DumpAlone {
  readonly wind: number
  /** [rad/s] */
  readonly speed: number
  /** Across the resistor, rms [V], and in it [W]. */
  readonly voltage: number
  readonly power: number
}

/** Where the rotor settles in the strongest wind that the mechanical limiter leaves, the dump load alone at work. */
export function dumpAlone(
  chain: Pick<Chain, 'machine' | 'voltage' | 'rows' | 'blades' | 'generator'>,
  resistance: number,
): DumpAlone {
  const { machine, blades, generator, rows } = chain
  const wind = mechanicalHolds(machine) ? limiterWind(machine) : machine.site.stormWind
  const on = resistorPower(chain, resistance)
  const speed = settledSpeed(
    (at) => blades.power(wind, at),
    (at) => on(at).taken + generator.idlePower(at),
    { from: rows.reduce((most, row) => Math.max(most, row.speed), 0), fastest: blades.fastest(wind) },
  )
  const power = on(speed).resistor
  return { wind, speed, voltage: Math.sqrt(power * resistance), power }
}
