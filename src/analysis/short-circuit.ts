/** The winding with its lines joined: current, heat and braking torque against speed. */
import type { Machine } from '../machine/machine.ts'
import { zeroSeries } from '../numerics/fourier.ts'
import { linearSolve } from '../numerics/linear-solve.ts'
import { copperRatio } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import { loopLosses, seenCircuit } from './turn-loop.ts'

export interface ShortCircuit {
  /** Largest of the phases, rms [A]. */
  readonly phaseCurrent: number
  /** In the copper of the winding [W]. */
  readonly loss: number
  /** Against the shaft, loss in the line wires included [N·m]. */
  readonly torque: number
}

/** Where the lines are joined: at the machine's own leads, or at the far end of wires that carry alternating current. */
export type ShortPlace = 'leads' | 'far end'

/**
 * Resistance of the line wires as the phases meet it, phase × phase [Ω]: V_k = Σ R_kl I_l.
 *
 * A star's wire is in series with its phase, a single phase has two. Round a delta phase k feeds line k forward and
 * line k+1 back, so V_k = R (2 I_k − I_(k−1) − I_(k+1)): for balanced currents three wires R act as 3R in each
 * phase (star-delta), and a current round the loop meets none.
 */
function lineResistance({ cable, stator }: Machine, place: ShortPlace, n: number): number[][] {
  const R = place === 'far end' && cable.place === 'before bridge' ? cable.conductorResistance : 0
  const delta = stator.connection === 'delta' && n > 1
  const own = R * (stator.connection === 'star' && n > 1 ? 1 : 2)
  const matrix = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (__, k) => (i === k ? own : 0)),
  )
  if (delta)
    for (let i = 0; i < n; i++) {
      matrix[i]![(i + 1) % n]! -= R
      matrix[i]![(i + n - 1) % n]! -= R
    }
  return matrix
}

/**
 * Steady short circuit at a speed [rad/s] and copper temperature [K], by the fundamental and every coupling:
 *
 *   E_k = Σ_l (Z_kl + R_kl) I_l + V,  Z = r + j ω L;  V = 0 for closed phases, Σ I = 0 for a star
 *
 * At the far end of a line the brake is weaker, at the leads the current is greater. Harmonics are left out; they
 * add heat and a little torque at low speed.
 */
export function shortCircuit(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  place: ShortPlace,
): (speed: number, copperTemperature: number) => ShortCircuit {
  const { phases, order } = voltage
  const n = phases.length
  const star = machine.stator.connection === 'star' && n > 1
  const line = lineResistance(machine, place, n)
  const m = 2 * n + (star ? 2 : 0)
  return (speed, copperTemperature) => {
    if (!(speed > 0)) return { phaseCurrent: 0, loss: 0, torque: 0 }
    const ω = machine.rotor.polePairs * speed
    const ratio = copperRatio(machine, copperTemperature)
    const state = { speed, copperRatio: ratio }
    const { emf, resistance: r, reflected, inductance } = seenCircuit(voltage, state)
    // the rows of the star point in the size of the impedances, so that pivots stay comparable
    const size = Math.max(...r, ...inductance.map((row) => ω * Math.max(...row.map(Math.abs))))
    const A = new Float64Array(m * m)
    const b = new Float64Array(m)
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) {
        const X = ω * inductance[i]![k]!
        const R = (i === k ? r[i]! : 0) + line[i]![k]!
        A[2 * i * m + 2 * k] = R
        A[2 * i * m + 2 * k + 1] = -X
        A[(2 * i + 1) * m + 2 * k] = X
        A[(2 * i + 1) * m + 2 * k + 1] = R
      }
      if (star) {
        A[2 * i * m + 2 * n] = size
        A[(2 * i + 1) * m + 2 * n + 1] = size
        A[2 * n * m + 2 * i] = size
        A[(2 * n + 1) * m + 2 * i + 1] = size
      }
      // phasor cos − j sin, amplitudes
      b[2 * i] = emf[i]!.cos[order] ?? 0
      b[2 * i + 1] = -(emf[i]!.sin[order] ?? 0)
    }
    const x = linearSolve(A, b)
    let phaseCurrent = 0
    let loss = 0
    let taken = 0
    for (let i = 0; i < n; i++) {
      const square = (x[2 * i]! ** 2 + x[2 * i + 1]! ** 2) / 2
      // a bare wire in the place of a phase has no copper to warm
      if (r[i]! > 0) phaseCurrent = Math.max(phaseCurrent, Math.sqrt(square))
      loss += square * (r[i]! - reflected[i]!)
      for (let k = 0; k < n; k++)
        taken += (line[i]![k]! * (x[2 * i]! * x[2 * k]! + x[2 * i + 1]! * x[2 * k + 1]!)) / 2
    }
    if (voltage.loops.length > 0) {
      const current = phases.map((_, i) => {
        const series = zeroSeries(order)
        series.cos[order] = x[2 * i]!
        series.sin[order] = -x[2 * i + 1]!
        return series
      })
      for (const heat of loopLosses(voltage, state, current)) loss += heat
    }
    return { phaseCurrent, loss, torque: (loss + taken) / speed }
  }
}
