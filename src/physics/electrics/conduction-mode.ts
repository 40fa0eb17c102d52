/** One pattern of conducting diodes: the linear circuit it leaves, solved exactly in time. */
import { choleskyFactor, choleskySolve } from '../../numerics/cholesky.ts'
import { symmetricEigen } from '../../numerics/symmetric-eigen.ts'
import { refuse } from '../../refusal/require.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'

/**
 * In a mode x = W y, and each coordinate obeys ν y' + (1 − ν) y = f(θ): ν = 1 is a pure inductance, ν = 0 a pure
 * resistance. Matrices are row by row.
 */
export interface ConductionMode {
  /** +1 upper diode, −1 lower diode, 0 blocked, per line; of single diodes 1 or 0. */
  readonly signs: Int8Array
  /** Coordinates left. */
  readonly free: number
  /** d × free. */
  readonly W: Float64Array
  readonly ν: Float64Array
  /** free × d: Wᵀ X. */
  readonly WX: Float64Array
  /** free × n: Wᵀ Pᵀ. */
  readonly WP: Float64Array
  /** Constant forcing −Wᵀ Cᵀ σ·barrier, with the battery's where the valves are diodes. */
  readonly push: Float64Array
  /** Constant forcing with the mean of the EMF. */
  readonly steady: Float64Array
  /** Amplitudes of the response to the harmonics, free × (orders + 1). */
  readonly cos: Float64Array
  readonly sin: Float64Array
  /** Valve currents from coordinates, valves × free. */
  readonly CW: Float64Array
  /** Valves whose voltage is watched. Of a group of diodes or lines without current the last is the reference, at 0. */
  readonly blocked: Int8Array
  /** Groups (one, of lines) in which only differences of the watched voltages have a meaning. */
  readonly floating: readonly number[]
  /** v_blocked = QP e − q0 − QX x' − QK y. */
  readonly QP: Float64Array
  readonly q0: Float64Array
  readonly QX: Float64Array
  readonly QK: Float64Array
}

/** Below this share of inductance in a coordinate its current follows the voltage at once. */
export const INSTANT_SHARE = 1e-12

const norm = (v: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < v.length; i++) sum += v[i]! * v[i]!
  return Math.sqrt(sum)
}

/** Orthonormal basis (as columns) of the vectors of length d at right angles to all `rows`. */
function complement(rows: readonly Float64Array[], d: number): Float64Array[] {
  const basis: Float64Array[] = []
  const add = (v: Float64Array, into: Float64Array[]) => {
    const length = norm(v)
    for (let pass = 0; pass < 2; pass++)
      for (const u of into) {
        let dot = 0
        for (let i = 0; i < d; i++) dot += u[i]! * v[i]!
        for (let i = 0; i < d; i++) v[i] = v[i]! - dot * u[i]!
      }
    const left = norm(v)
    if (!(left > 1e-9 * length)) return
    for (let i = 0; i < d; i++) v[i] = v[i]! / left
    into.push(v)
  }
  for (const row of rows) add(Float64Array.from(row), basis)
  const rank = basis.length
  for (let i = 0; i < d && basis.length < d; i++) {
    const unit = new Float64Array(d)
    unit[i] = 1
    add(unit, basis)
  }
  return basis.slice(rank)
}

/** Columns of `Z` recombined so that both X and X + K become diagonal, the sum unity. */
function normalModes(circuit: RectifierCircuit, Z: readonly Float64Array[], K: Float64Array) {
  const d = circuit.unknowns
  const f = Z.length
  const project = (M: Float64Array, columns: readonly Float64Array[]) => {
    const out = new Float64Array(f * f)
    const image = new Float64Array(d)
    for (let b = 0; b < f; b++) {
      const column = columns[b]!
      for (let i = 0; i < d; i++) {
        let sum = 0
        for (let j = 0; j < d; j++) sum += M[i * d + j]! * column[j]!
        image[i] = sum
      }
      for (let a = 0; a < f; a++) {
        let sum = 0
        for (let i = 0; i < d; i++) sum += columns[a]![i]! * image[i]!
        out[a * f + b] = sum
      }
    }
    return out
  }
  const combine = (columns: readonly Float64Array[], V: Float64Array, scale: (j: number) => number) =>
    columns.map((_, j) => {
      const column = new Float64Array(d)
      for (let a = 0; a < f; a++)
        for (let i = 0; i < d; i++) column[i] = column[i]! + columns[a]![i]! * V[a * f + j]! * scale(j)
      return column
    })
  const sum = circuit.X.map((value, i) => value + K[i]!)
  const both = symmetricEigen(project(sum, Z), f)
  const greatest = Math.max(...both.values)
  for (const value of both.values)
    if (!(value > 1e-15 * greatest))
      refuse({
        name: 'resistance and inductance of the conducting loops',
        condition: 'above zero together',
        value,
        unit: 'Ω',
        code: 'conflict',
      })
  const unit = combine(Z, both.vectors, (j) => 1 / Math.sqrt(both.values[j]!))
  const { values, vectors } = symmetricEigen(project(circuit.X, unit), f)
  return { W: combine(unit, vectors, () => 1), ν: values.map((ν) => Math.min(1, Math.max(0, ν))) }
}

/** Groups that carry no current at all: their potential against the rails is free. */
function floatingGroups({ closed, diodes, valves }: RectifierCircuit, blocked: readonly number[]): number[] {
  if (diodes === undefined) return closed && blocked.length === valves ? [0] : []
  return [...new Set(diodes.group)].filter((group) =>
    diodes.group.every((own, k) => own !== group || blocked.includes(k)),
  )
}

/** The last valve of each floating group serves as its reference. */
const withoutReferences = (
  { diodes, valves }: RectifierCircuit,
  blocked: readonly number[],
  floating: readonly number[],
): number[] => {
  const references = floating.map((group) => (diodes ? diodes.group.lastIndexOf(group) : valves - 1))
  return blocked.filter((k) => !references.includes(k))
}

/**
 * The linear circuit left by one pattern of conducting diodes, in normal coordinates.
 *
 *   ν y' + (1 − ν) y = f(θ)
 *
 * Holds: any pattern with Σ of line currents free to be zero. Accuracy: exact; rounding.
 *
 * @param circuit  from rectifierCircuit                        [V, Ω]
 * @param signs    +1, −1 or 0 per valve                        [1]
 * @param shorted  true joins all lines without any diode drop  [1]
 * @returns        the mode                                     [V, Ω]
 * @throws RangeError  a conducting loop with neither resistance nor inductance
 * @source derived, simultaneous diagonalisation of X and K on the currents left free
 * @example conductionMode(rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 2 } }), Int8Array.of(1)).W[0] // 0.5000
 */
export function conductionMode(circuit: RectifierCircuit, signs: Int8Array, shorted = false): ConductionMode {
  const { unknowns: d, phases: n, valves: m, diodes, C, P, X, orders } = circuit
  const H = orders + 1
  const row = (k: number) => C.slice(k * d, (k + 1) * d)
  const zero: number[] = []
  if (!shorted) for (let k = 0; k < m; k++) if (signs[k] === 0) zero.push(k)
  const sum = new Float64Array(d)
  const wall = new Float64Array(d)
  for (let k = 0; k < m; k++) {
    const barrier = diodes?.state[k] === 'shorted' ? 0 : circuit.barrier
    for (let i = 0; i < d; i++) {
      sum[i] = sum[i]! + signs[k]! * C[k * d + i]!
      wall[i] = wall[i]! + signs[k]! * C[k * d + i]! * barrier
    }
  }
  if (diodes !== undefined) for (let i = 0; i < d; i++) wall[i] = wall[i]! - diodes.drive[i]!
  const K = Float64Array.from(circuit.K)
  for (let i = 0; i < d; i++)
    for (let j = 0; j < d; j++) K[i * d + j] = K[i * d + j]! + circuit.dcCoupling * sum[i]! * sum[j]!
  const Z = complement(zero.map(row), d)
  const f = Z.length
  const { W: columns, ν } = f === 0 ? { W: [], ν: new Float64Array(0) } : normalModes(circuit, Z, K)

  const W = new Float64Array(d * f)
  const WX = new Float64Array(f * d)
  const WP = new Float64Array(f * n)
  const CW = new Float64Array(m * f)
  const push = new Float64Array(f)
  for (let j = 0; j < f; j++) {
    const w = columns[j]!
    for (let i = 0; i < d; i++) {
      W[i * f + j] = w[i]!
      push[j] = push[j]! - w[i]! * wall[i]!
      for (let l = 0; l < d; l++) WX[j * d + l] = WX[j * d + l]! + w[i]! * X[i * d + l]!
      for (let k = 0; k < n; k++) WP[j * n + k] = WP[j * n + k]! + w[i]! * P[k * d + i]!
      for (let k = 0; k < m; k++) CW[k * f + j] = CW[k * f + j]! + C[k * d + i]! * w[i]!
    }
  }
  const steady = Float64Array.from(push)
  const cos = new Float64Array(f * H)
  const sin = new Float64Array(f * H)
  for (let j = 0; j < f; j++)
    for (let k = 0; k < n; k++) {
      const weight = WP[j * n + k]!
      steady[j] = steady[j]! + weight * circuit.emfCos[k * H]!
      for (let h = 1; h < H; h++) {
        const a = weight * circuit.emfCos[k * H + h]!
        const b = weight * circuit.emfSin[k * H + h]!
        const r = 1 - ν[j]!
        const s = h * ν[j]!
        cos[j * H + h] = cos[j * H + h]! + (a * r - b * s) / (r * r + s * s)
        sin[j * H + h] = sin[j * H + h]! + (b * r + a * s) / (r * r + s * s)
      }
    }

  const floating = floatingGroups(circuit, zero)
  const blocked = Int8Array.from(withoutReferences(circuit, zero, floating))
  const z = blocked.length
  const QP = new Float64Array(z * n)
  const q0 = new Float64Array(z)
  const QX = new Float64Array(z * d)
  const QK = new Float64Array(z * f)
  if (z > 0) {
    const KW = new Float64Array(d * f)
    for (let i = 0; i < d; i++)
      for (let l = 0; l < d; l++)
        for (let j = 0; j < f; j++) KW[i * f + j] = KW[i * f + j]! + K[i * d + l]! * W[l * f + j]!
    const gram = new Float64Array(z * z)
    for (let a = 0; a < z; a++)
      for (let b = 0; b < z; b++)
        for (let i = 0; i < d; i++)
          gram[a * z + b] = gram[a * z + b]! + C[blocked[a]! * d + i]! * C[blocked[b]! * d + i]!
    const L = choleskyFactor(gram, z)
    const Q = new Float64Array(z * d)
    const right = new Float64Array(z)
    for (let i = 0; i < d; i++) {
      for (let a = 0; a < z; a++) right[a] = C[blocked[a]! * d + i]!
      const column = choleskySolve(L, right)
      for (let a = 0; a < z; a++) Q[a * d + i] = column[a]!
    }
    for (let a = 0; a < z; a++)
      for (let i = 0; i < d; i++) {
        const q = Q[a * d + i]!
        q0[a] = q0[a]! + q * wall[i]!
        for (let k = 0; k < n; k++) QP[a * n + k] = QP[a * n + k]! + q * P[k * d + i]!
        for (let l = 0; l < d; l++) QX[a * d + l] = QX[a * d + l]! + q * X[i * d + l]!
        for (let j = 0; j < f; j++) QK[a * f + j] = QK[a * f + j]! + q * KW[i * f + j]!
      }
  }
  return {
    signs: Int8Array.from(signs),
    free: f,
    W,
    ν,
    WX,
    WP,
    push,
    steady,
    cos,
    sin,
    CW,
    blocked,
    floating,
    QP,
    q0,
    QX,
    QK,
  }
}
