/** Currents that unlike EMFs drive round inside a machine: between parallel branches, and round a delta. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { seriesRms, seriesSum, zeroSeries } from '../../numerics/fourier.ts'
import { linearSolve } from '../../numerics/linear-solve.ts'
import { refuse, requireNotNegative } from '../../refusal/require.ts'
import { type EmfCircuit, requireEmfCircuit } from './emf-circuit.ts'

export interface Circulation {
  /** Current of each branch at open terminals, out of the positive end; for a delta of each phase [A]. */
  readonly current: readonly FourierSeries[]
  /** Root mean square of each [A]. */
  readonly currentRms: readonly number[]
  /** Copper loss of all of them [W]. */
  readonly loss: number
  /** Volts left at the terminals: of the parallel group, or of each phase of the delta [V]. */
  readonly terminal: readonly FourierSeries[]
}

/** Branches (or phases) at one actual speed. */
export interface EmfBranches extends EmfCircuit {
  /** Of order 1 of the series: speed for series over a turn, p times that for electrical ones [rad/s]. */
  readonly angularFrequency: number
}

function requireBranches(branches: EmfBranches): number {
  const n = branches.emf.length
  if (n === 0) refuse({ name: 'emf', condition: 'of at least one branch', value: n, code: 'wrong-length' })
  requireEmfCircuit(branches)
  requireNotNegative('angularFrequency', branches.angularFrequency, 'rad/s')
  return n
}

function report(
  current: FourierSeries[],
  resistance: readonly number[],
  terminal: FourierSeries[],
): Circulation {
  const currentRms = current.map(seriesRms)
  return {
    current,
    currentRms,
    loss: currentRms.reduce((sum, I, k) => sum + I * I * resistance[k], 0),
    terminal,
  }
}

/**
 * Current round parallel branches whose EMFs differ, at open terminals.
 *
 *   E_b − Σ_k Z_bk I_k = V for every branch,  Σ I_b = 0,  Z = r + j h ω L
 *
 * Holds: linear branches, all harmonics, coupling included, periodic state. Accuracy: rounding of an elimination
 * of twice the number of branches.
 *
 * @param branches   E, r, L, ω  see `EmfBranches`               [V], [Ω], [H], [rad/s]
 * @returns          branch currents, rms, loss, terminal volts  [A], [W], [V]
 * @throws RangeError  lists of unlike length; resistance not above zero; no branch
 * @source derived, from Kirchhoff's laws
 * @example branchCirculation({ emf: [{ cos: Float64Array.of(0, 12), sin: Float64Array.of(0, 0) }, { cos: Float64Array.of(0, 10), sin: Float64Array.of(0, 0) }], resistance: [0.5, 0.5], inductance: [[0, 0], [0, 0]], angularFrequency: 100 }).current[0].cos[1] // 2
 */
export function branchCirculation(branches: EmfBranches): Circulation {
  const n = requireBranches(branches)
  const { emf, resistance, inductance, angularFrequency } = branches
  const orders = Math.max(...emf.map((f) => f.cos.length - 1))
  const current = emf.map(() => zeroSeries(orders))
  const terminal = zeroSeries(orders)
  const m = 2 * (n + 1)
  const size = Math.max(...resistance)
  for (let h = 0; h <= orders; h++) {
    // unknowns: re I, im I of each branch, then re V/size, im V/size; phasor E = cos − j sin
    const A = new Float64Array(m * m)
    const b = new Float64Array(m)
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) {
        const X = h * angularFrequency * inductance[i][k]
        const R = i === k ? resistance[i] : 0
        A[2 * i * m + 2 * k] = R
        A[2 * i * m + 2 * k + 1] = -X
        A[(2 * i + 1) * m + 2 * k] = X
        A[(2 * i + 1) * m + 2 * k + 1] = R
      }
      A[2 * i * m + 2 * n] = size
      A[(2 * i + 1) * m + 2 * n + 1] = size
      A[2 * n * m + 2 * i] = size
      A[(2 * n + 1) * m + 2 * i + 1] = size
      b[2 * i] = emf[i].cos[h] ?? 0
      b[2 * i + 1] = -(emf[i].sin[h] ?? 0)
    }
    const x = linearSolve(A, b)
    for (let i = 0; i < n; i++) {
      current[i].cos[h] = x[2 * i]
      current[i].sin[h] = -x[2 * i + 1]
    }
    terminal.cos[h] = size * x[2 * n]
    terminal.sin[h] = -size * x[2 * n + 1]
  }
  return report(current, resistance, [terminal])
}

/**
 * Volts across the open corner of a delta before it is closed.
 *
 *   e = Σ e_k
 *
 * Holds: phases in series, any waveforms; about 0 plus three times the third harmonic when all is well, twice
 * the phase when one is reversed. Accuracy: exact.
 *
 * @param emf     e_k  of the phases      [V]
 * @returns       e                       [V]
 * @throws RangeError never by itself
 * @source derived, from Kirchhoff's voltage law
 * @example openCornerEmf([{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }]).cos[1] // 1
 */
export const openCornerEmf = (emf: readonly FourierSeries[]): FourierSeries => seriesSum(emf)

/**
 * Current round a closed delta without load.
 *
 *   I_h = Σ E_k,h / Σ_k Σ_l Z_kl,  Z = r + j h ω L
 *
 * Holds: linear phases, all harmonics, periodic state; for three alike phases order 3 gives 3E₃/(3Z₃).
 * Accuracy: exact.
 *
 * @param phases     E, r, L, ω  see `EmfBranches`                [V], [Ω], [H], [rad/s]
 * @returns          the one current (listed for each phase), rms, loss, volts of each phase [A], [W], [V]
 * @throws RangeError  lists of unlike length; resistance not above zero; no phase
 * @source derived, from Kirchhoff's voltage law
 * @example deltaCirculation({ emf: [0, 1, 2].map(() => ({ cos: Float64Array.of(0, 0, 0, 1), sin: new Float64Array(4) })), resistance: [10, 10, 10], inductance: [[0, 0, 0], [0, 0, 0], [0, 0, 0]], angularFrequency: 1 }).currentRms[0] // 0.0707
 */
export function deltaCirculation(phases: EmfBranches): Circulation {
  const n = requireBranches(phases)
  const { emf, resistance, inductance, angularFrequency } = phases
  const corner = openCornerEmf(emf)
  const R = resistance.reduce((sum, r) => sum + r, 0)
  const L = inductance.reduce((sum, row) => sum + row.reduce((part, l) => part + l, 0), 0)
  const loop = zeroSeries(corner.cos.length - 1)
  for (let h = 0; h < corner.cos.length; h++) {
    const X = h * angularFrequency * L
    const size = R * R + X * X
    // phasor cos − j sin over R + jX
    loop.cos[h] = (corner.cos[h] * R - corner.sin[h] * X) / size
    loop.sin[h] = (corner.sin[h] * R + corner.cos[h] * X) / size
  }
  const terminal = emf.map((f, k) => {
    const linked = inductance[k].reduce((part, l) => part + l, 0)
    const drop = zeroSeries(corner.cos.length - 1)
    for (let h = 0; h < corner.cos.length; h++) {
      const X = h * angularFrequency * linked
      drop.cos[h] = -(resistance[k] * loop.cos[h] + X * loop.sin[h])
      drop.sin[h] = -(resistance[k] * loop.sin[h] - X * loop.cos[h])
    }
    return seriesSum([f, drop])
  })
  return report(
    Array.from({ length: n }, () => loop),
    resistance,
    terminal,
  )
}
