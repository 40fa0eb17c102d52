/** The winding with its lines joined: current, heat and braking torque against speed. */
import type { Machine } from '../machine/machine.ts'
import { linearSolve } from '../numerics/linear-solve.ts'
import { copperRatio } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

export interface ShortCircuit {
  /** Largest of the phases, rms [A]. */
  readonly phaseCurrent: number
  /** In the copper of the winding [W]. */
  readonly loss: number
  /** Against the shaft, loss in the line wires included [N·m]. */
  readonly torque: number
}

/**
 * Steady short circuit at a speed [rad/s] and copper temperature [K], by the fundamental and every coupling:
 *
 *   E_k = Σ_l Z_kl I_l + V,  Z = r + j ω L;  V = 0 for closed phases, Σ I = 0 for a star
 *
 * The short lies at the far end of the line wires where the cable carries alternating current: the weaker brake.
 * Harmonics are left out; they add heat and a little torque at low speed.
 */
export function shortCircuit(
  machine: Machine,
  { phases, inductance, order }: OpenCircuitVoltage,
): (speed: number, copperTemperature: number) => ShortCircuit {
  const { connection } = machine.stator
  const n = phases.length
  const star = connection === 'star' && n > 1
  const { place, conductorResistance } = machine.cable
  // the wires of a delta run outside its loop and are left out
  const line = place === 'after bridge' || connection === 'delta' ? 0 : conductorResistance * (star ? 1 : 2)
  const m = 2 * n + (star ? 2 : 0)
  return (speed, copperTemperature) => {
    if (!(speed > 0)) return { phaseCurrent: 0, loss: 0, torque: 0 }
    const ω = machine.rotor.polePairs * speed
    const ratio = copperRatio(machine, copperTemperature)
    const r = phases.map(({ resistance }) => resistance * ratio)
    // the rows of the star point in the size of the impedances, so that pivots stay comparable
    const size = Math.max(...r, ...inductance.map((row) => ω * Math.max(...row.map(Math.abs))))
    const A = new Float64Array(m * m)
    const b = new Float64Array(m)
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) {
        const X = ω * inductance[i]![k]!
        const R = i === k ? r[i]! + line : 0
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
      b[2 * i] = (phases[i]!.emf.cos[order] ?? 0) * speed
      b[2 * i + 1] = -(phases[i]!.emf.sin[order] ?? 0) * speed
    }
    const x = linearSolve(A, b)
    let phaseCurrent = 0
    let loss = 0
    let taken = 0
    for (let i = 0; i < n; i++) {
      const square = (x[2 * i]! ** 2 + x[2 * i + 1]! ** 2) / 2
      phaseCurrent = Math.max(phaseCurrent, Math.sqrt(square))
      loss += square * r[i]!
      taken += square * (r[i]! + line)
    }
    return { phaseCurrent, loss, torque: taken / speed }
  }
}

export interface BrakedState {
  /** Speed the shorted rotor settles at [rad/s]; where it started from when the brake cannot slow it. */
  readonly speed: number
  /** The short takes more torque than the blades give, from the first speed down to well below it. */
  readonly holds: boolean
}

const brakeSteps = 30

/** A rotor is braked when the short brings it below this share of the speed it had. */
export const brakedShare = 0.5

/** What becomes of a rotor turning at `from` when its winding is shorted: torques against speed [N·m]. */
export function brakedState(
  driving: (speed: number) => number,
  braking: (speed: number) => number,
  from: number,
): BrakedState {
  if (!(from > 0)) return { speed: 0, holds: true }
  for (let k = 0; k < brakeSteps; k++) {
    const speed = from * (1 - k / brakeSteps)
    if (driving(speed) >= braking(speed)) return { speed, holds: speed <= brakedShare * from }
  }
  return { speed: from / brakeSteps, holds: true }
}
