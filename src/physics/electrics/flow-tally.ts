/** Sums over a period of what flows through machine and bridge. */
import { type DiodeTally, diodeTally } from './diode-duty.ts'
import type { CircuitState } from './mode-response.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'

export interface FlowTally {
  /** Adds an instant. */
  readonly take: (weight: number, state: CircuitState) => void
  /** What was added last: Σ e i [W], DC current and the largest line current [A]. */
  readonly now: { power: number; dc: number; line: number }
  readonly phaseMean: Float64Array
  readonly phaseSquare: Float64Array
  readonly lineSquare: Float64Array
  readonly sum: { shaft: number; dc: number; dcSquare: number }
  readonly diodes: DiodeTally
}

/**
 * Current of phase k from the independent ones.
 *
 * @internal a step of bridge-rectifier
 */
export function phaseCurrent({ P, unknowns: d }: RectifierCircuit, x: Float64Array, k: number): number {
  let sum = 0
  for (let i = 0; i < d; i++) sum += P[k * d + i]! * x[i]!
  return sum
}

/**
 * DC current from the currents of the valves.
 *
 * @internal a step of bridge-rectifier
 */
export function dcCurrentOf({ diodes, valves, dcShare }: RectifierCircuit, line: Float64Array): number {
  let sum = 0
  if (diodes === undefined) for (let k = 0; k < valves; k++) sum += Math.abs(line[k]!)
  else for (let k = 1; k < valves; k += 2) sum += line[k]!
  return diodes === undefined ? dcShare * sum : sum
}

/**
 * Gathers currents, their squares and the power of the EMF over the arc that was computed.
 *
 * @internal a step of bridge-rectifier: `linear` where no current passes the bridge
 */
export function flowTally(circuit: RectifierCircuit, linear: boolean): FlowTally {
  const { phases: n, diodes: single, closed } = circuit
  const phaseMean = new Float64Array(n)
  const phaseSquare = new Float64Array(n)
  const lineSquare = new Float64Array(n)
  const diodes = diodeTally(circuit)
  const now = { power: 0, dc: 0, line: 0 }
  const sum = { shaft: 0, dc: 0, dcSquare: 0 }
  return {
    now,
    phaseMean,
    phaseSquare,
    lineSquare,
    sum,
    diodes,
    take: (weight, { emf, x, line }) => {
      let power = 0
      let highest = 0
      for (let k = 0; k < n; k++) {
        const i = phaseCurrent(circuit, x, k)
        const c = single === undefined ? line[k]! : closed ? line[2 * k]! - line[2 * k + 1]! : i
        power += emf[k]! * i
        highest = Math.max(highest, Math.abs(c))
        phaseMean[k] = phaseMean[k]! + weight * i
        phaseSquare[k] = phaseSquare[k]! + weight * i * i
        lineSquare[k] = lineSquare[k]! + weight * c * c
      }
      const dc = linear ? 0 : dcCurrentOf(circuit, line)
      if (!linear) diodes.take(line, weight)
      now.power = power
      now.dc = dc
      now.line = highest
      sum.shaft += weight * power
      sum.dc += weight * dc
      sum.dcSquare += weight * dc * dc
    },
  }
}
