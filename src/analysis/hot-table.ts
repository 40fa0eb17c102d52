/** Tables of an electrical quantity over speed at three copper temperatures, and the one of any temperature between. */
import type { Machine } from '../machine/machine.ts'
import { parabolaWeights } from '../numerics/parabola-weight.ts'
import { copperRatio } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

/** Copper temperatures of a table [K]; between them all quantities are parabolas in 1/(R + ωL). */
export const tableTemperatures = [253.15, 353.15, 523.15] as const
const bounds = [223.15, 723.15] as const

/**
 * Weights on four even nodes, `x` nodes from the first of them: inside the cubic whose slopes come from the neighbours,
 * in the end pieces the parabola through the three nodes there. Returns the first of the four; needs four nodes or more.
 */
export function cubicWeights(x: number, count: number, out: Float64Array): number {
  const inside = Math.min(Math.max(x, 0), count - 1)
  const low = Math.min(Math.floor(inside), count - 2)
  const ends = low === 0 || low === count - 2
  const first = Math.min(Math.max(low - 1, 0), count - 4)
  if (ends) {
    const from = low === 0 ? 0 : count - 3
    const u = inside - from
    const at = from - first
    out.fill(0)
    out[at] = ((u - 1) * (u - 2)) / 2
    out[at + 1] = -u * (u - 2)
    out[at + 2] = (u * (u - 1)) / 2
    return first
  }
  const t = inside - low
  const t2 = t * t
  const t3 = t2 * t
  out[0] = (-t + 2 * t2 - t3) / 2
  out[1] = (2 - 5 * t2 + 3 * t3) / 2
  out[2] = (t + 4 * t2 - 3 * t3) / 2
  out[3] = (-t2 + t3) / 2
  return first
}

/** Speeds evenly in Ω/(Ω + R/L): from where resistance alone holds the current to where reactance does. */
export interface SpeedNodes {
  readonly speeds: Float64Array
  /** Place of a speed among the nodes, counted from 0. */
  readonly place: (speed: number) => number
  /** Mixes the tables of the three temperatures into that of another [K], row by row of `width` values. */
  readonly mixed: (
    tables: readonly [Float64Array, Float64Array, Float64Array],
    width: number,
    copperTemperature: number,
  ) => Float64Array
}

export function speedNodes(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { slowest, fastest, count }: { readonly slowest: number; readonly fastest: number; readonly count: number },
): SpeedNodes {
  const { polePairs } = machine.rotor
  const resistance = Math.max(...voltage.phases.map((phase) => phase.resistance))
  const inductance = Math.max(...voltage.inductance.map((row, k) => row[k]!), 1e-12)
  // the copper warm; held within reach of the speeds, so that the nodes never crowd
  const warm = (1.25 * resistance) / (polePairs * inductance)
  const corner = Math.min(Math.max(warm, 0.1 * fastest), 4 * fastest)
  const along = (speed: number) => speed / (speed + corner)
  const [from, to] = [along(slowest), along(fastest)]
  const speeds = Float64Array.from({ length: count }, (_, i) => {
    const s = from + ((to - from) * i) / (count - 1)
    return (corner * s) / (1 - s)
  })
  const admittance = (temperature: number, i: number) =>
    1 / (resistance * copperRatio(machine, temperature) + polePairs * speeds[i]! * inductance)
  return {
    speeds,
    place: (speed) => ((along(speed) - from) / (to - from)) * (count - 1),
    mixed: ([cold, warmed, hot], width, copperTemperature) => {
      const temperature = Math.min(Math.max(copperTemperature, bounds[0]), bounds[1])
      const table = new Float64Array(cold.length)
      for (let i = 0; i < count; i++) {
        const x = admittance(temperature, i)
        const at3 = tableTemperatures.map((each) => admittance(each, i)) as [number, number, number]
        const [wa, wb, wc] = parabolaWeights(x, at3)
        for (let k = i * width; k < (i + 1) * width; k++)
          table[k] = wa * cold[k]! + wb * warmed[k]! + wc * hot[k]!
      }
      return table
    },
  }
}
