/** The periodic currents of a machine whose terminals are open, or all joined. */
import { type ConductionMode, conductionMode } from './conduction-mode.ts'
import type { CircuitState } from './mode-response.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'

/** The periodic currents of a circuit, arc by arc. */
export interface CircuitSolution {
  readonly span: number
  /** Arcs with one linear mode each. */
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly mode: ConductionMode }[]
  readonly state: (index: number, θ: number) => CircuitState
  /** The same without rates and voltages. */
  readonly flow: (index: number, θ: number) => CircuitState
}

/**
 * Open and shorted machines are one linear circuit for ever: the harmonics are the answer.
 *
 * @internal a step of bridge-rectifier: its only arc is the whole period
 */
export function linearSolution(circuit: RectifierCircuit, shorted: boolean): CircuitSolution {
  const mode = conductionMode(circuit, new Int8Array(circuit.phases), shorted)
  const { unknowns: d, phases: n, orders } = circuit
  const H = orders + 1
  const emf = new Float64Array(n)
  const x = new Float64Array(d)
  const rate = new Float64Array(d)
  const line = new Float64Array(n)
  const voltage = new Float64Array(n)
  const state = (_: number, θ: number): CircuitState => {
    emf.fill(0)
    x.fill(0)
    rate.fill(0)
    line.fill(0)
    for (let h = 0; h < H; h++) {
      const c = Math.cos(h * θ)
      const s = Math.sin(h * θ)
      for (let k = 0; k < n; k++)
        emf[k] = emf[k]! + circuit.emfCos[k * H + h]! * c + circuit.emfSin[k * H + h]! * s
      for (let j = 0; j < mode.free; j++) {
        const resistive = 1 - mode.ν[j]!
        const a = h > 0 ? mode.cos[j * H + h]! : resistive > 0 ? mode.steady[j]! / resistive : 0
        const b = h > 0 ? mode.sin[j * H + h]! : 0
        for (let i = 0; i < d; i++) {
          const w = mode.W[i * mode.free + j]!
          x[i] = x[i]! + w * (a * c + b * s)
          rate[i] = rate[i]! + w * h * (b * c - a * s)
        }
      }
    }
    for (let k = 0; k < n; k++) for (let i = 0; i < d; i++) line[k] = line[k]! + circuit.C[k * d + i]! * x[i]!
    return { emf, x, rate, line, voltage }
  }
  return { span: 2 * Math.PI, arcs: [{ from: 0, to: 2 * Math.PI, mode }], state, flow: state }
}
