/** What a shorted diode holds against a slow hand, by ohms alone: the phases drive each other through it. */
import type { Machine } from '../machine/machine.ts'
import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'

export interface SlowTurn {
  /** [rad/s] */
  readonly speed: number
  /** Of each phase over a whole turn, with nothing connected [V]. */
  readonly volts: readonly Float64Array[]
  /** Of each phase [Ω]. */
  readonly resistance: readonly number[]
}

/** Currents of the other lines into the shorted one, each through its diode: u = (r_k + r_a) i_k + r_a Σ i of the rest. */
function intoShorted(u: readonly number[], r: readonly number[], shared: number): number[] {
  // of two lines at most: both, or the one that alone is left
  const alone = (k: number) => u.map((volts, j) => (j === k ? Math.max(0, volts) / (r[k]! + shared) : 0))
  if (u.length === 1) return alone(0)
  const [a, b] = [r[0]! + shared, r[1]! + shared]
  const det = a * b - shared * shared
  const both = [(b * u[0]! - shared * u[1]!) / det, (a * u[1]! - shared * u[0]!) / det]
  if (both.every((i) => i >= 0)) return both
  return alone(u[0]! > u[1]! ? 0 : 1)
}

/** Potentials of the lines and the ohms behind each, a closed delta as the star that stands for it. */
function asStar({ stator }: Machine, { volts, resistance }: SlowTurn, at: number) {
  const e = volts.map((wave) => wave[at]!)
  if (stator.connection !== 'delta' || e.length !== 3) return { e, r: resistance }
  const third = resistance.reduce((sum, R) => sum + R, 0) / 9
  return { e: e.map((own, k) => (own - e[(k + 2) % 3]!) / 3), r: resistance.map(() => third) }
}

/** Mean torque over the turn, currents without inductance [N·m]. */
export function shortedDiodeTorque(
  machine: Machine,
  turn: SlowTurn,
  { line, side, end = 'start' }: Pick<DiodeFault, 'line' | 'side' | 'end'>,
): number {
  const { cable, diode, stator } = machine
  const wire = cable.place === 'before bridge' ? cable.conductorResistance : 0
  const own = stator.connection === 'separate' || stator.connection === 'single'
  const count = turn.volts[0]!.length
  let sum = 0
  for (let at = 0; at < count; at++) {
    const { e, r } = asStar(machine, turn, at)
    if (own) {
      const drive = ((side === 'negative') === (end === 'start') ? 1 : -1) * e[line]!
      const ohms = r[line]! + 2 * (wire + diode.slope)
      sum += (drive * Math.max(0, drive - diode.threshold)) / ohms
      continue
    }
    const sign = side === 'positive' ? 1 : -1
    const others = e.map((_, k) => k).filter((k) => k !== line)
    const drives = others.map((k) => sign * (e[k]! - e[line]!))
    const currents = intoShorted(
      drives.map((volts) => volts - diode.threshold),
      others.map((k) => r[k]! + wire + diode.slope),
      r[line]! + wire + diode.slope,
    )
    currents.forEach((i, k) => {
      sum += i * drives[k]!
    })
  }
  return sum / count / turn.speed
}
