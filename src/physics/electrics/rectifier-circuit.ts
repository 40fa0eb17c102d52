/** The electrical network of machine, lines, diode bridge and load in the form the solver works on. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { symmetricEigen } from '../../numerics/symmetric-eigen.ts'
import {
  refuse,
  requireFinite,
  requireLength,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'

/** `separate`: one full bridge per phase, outputs in parallel. `single`: one phase, one full bridge. */
export type MachineConnection = 'star' | 'delta' | 'separate' | 'single'

export type RectifierLoad =
  | { readonly kind: 'battery'; readonly voltage: number; readonly resistance: number }
  | { readonly kind: 'resistor'; readonly resistance: number }
  | { readonly kind: 'open' }
  /** All terminals of the machine joined at the machine: the brake. */
  | { readonly kind: 'shorted' }

/** One diode that does not do its work: `open` never conducts, `shorted` conducts both ways without a threshold. */
export interface DiodeFault {
  /** Of star and delta the line, of `separate` and `single` the phase, whose leg it is in; from 0. */
  readonly line: number
  /** Where each phase has a bridge of its own: the leg at this end of the phase; the start unless given. */
  readonly end?: 'start' | 'finish'
  /** Rail of the DC side that it leads to. */
  readonly side: 'positive' | 'negative'
  readonly kind: 'open' | 'shorted'
}

export interface RectifierInput {
  readonly connection: MachineConnection
  /** Per phase, volts, over one period x = 0…2π; any orders, unequal amplitudes and phases. */
  readonly emf: readonly FourierSeries[]
  /** Of that period [Hz]. */
  readonly frequency: number
  /** Per phase [Ω]. */
  readonly resistance: readonly number[]
  /** Self and mutual, phase × phase [H]. */
  readonly inductance: readonly (readonly number[])[]
  /** Per line conductor; for `separate` and `single` of the whole go-and-return loop [Ω]. */
  readonly lineResistance: number
  /** Each diode drops threshold + slope × current [V], [Ω]. */
  readonly diode: { readonly threshold: number; readonly slope: number }
  /** Cable and joints between bridge and load, go and return together [Ω]. */
  readonly dcResistance: number
  readonly load: RectifierLoad
  /** None in a sound bridge. */
  readonly diodeFaults?: readonly DiodeFault[]
}

/** Valves that are single diodes, each conducting in one direction only; both diodes of a leg stand side by side. */
export interface DiodeValves {
  /** Per valve. */
  readonly state: readonly ('sound' | 'open' | 'shorted')[]
  /** Winding that hangs on the legs of this valve by itself: 0 throughout a star or delta, else the phase. */
  readonly group: readonly number[]
  /** Constant voltage in the loop of each unknown: the battery's. */
  readonly drive: Float64Array
}

/**
 * A valve is what switches: a whole line, that conducts in either direction, or a single diode.
 * Unknowns x are independent currents: phase currents P x, currents of the valves C x.
 * X dx/dθ + K x + Cᵀ v = Pᵀ e(θ), where v_k = sign(c_k)·(barrier + dcCoupling·Σ|c|) while line k conducts
 * and |v_k| does not exceed that while it is blocked; of single diodes see diodeCircuit. Matrices are row by row.
 */
export interface RectifierCircuit {
  readonly phases: number
  readonly valves: number
  /** Undefined where the valves are lines. */
  readonly diodes: DiodeValves | undefined
  readonly unknowns: number
  /** Line currents sum to zero (star, delta). */
  readonly closed: boolean
  readonly P: Float64Array
  readonly C: Float64Array
  readonly X: Float64Array
  readonly K: Float64Array
  readonly barrier: number
  readonly dcCoupling: number
  /** DC current = dcShare·Σ|c|. */
  readonly dcShare: number
  /** Diodes that one line current passes through. */
  readonly diodesInPath: number
  /** Number of the highest order kept; order h of phase k at [k·(orders+1) + h]. */
  readonly orders: number
  readonly emfCos: Float64Array
  readonly emfSin: Float64Array
  /** The waveforms repeat this often in the period given. */
  readonly repeats: number
  /** The smallest arc after which the solution repeats up to sign −1 and a shift of the phases. */
  readonly symmetry: { readonly parts: 1 | 2 | 6; readonly shift: number }
  /** Volts and amps against which small differences are judged. */
  readonly voltageScale: number
  readonly currentScale: number
}

/** Most phases accepted: above, the search for the conducting lines is no longer cheap. */
export const RECTIFIER_MOST_PHASES = 12

/** Harmonics below this share of the largest are dropped; also how exactly symmetry must hold. */
const NEGLIGIBLE = 1e-9

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))

function requireInput(input: RectifierInput): void {
  const { connection, emf, resistance, inductance, diode, load } = input
  const n = emf.length
  if (!['star', 'delta', 'separate', 'single'].includes(connection))
    refuse({
      name: 'connection',
      condition: 'star, delta, separate or single',
      value: connection,
      code: 'not-a-choice',
    })
  if (!['battery', 'resistor', 'open', 'shorted'].includes(load.kind))
    refuse({
      name: 'load.kind',
      condition: 'battery, resistor, open or shorted',
      value: load.kind,
      code: 'not-a-choice',
    })
  const least = connection === 'star' ? 2 : connection === 'delta' ? 3 : 1
  const most = connection === 'single' ? 1 : RECTIFIER_MOST_PHASES
  if (n < least || n > most)
    refuse({ name: 'emf', condition: `${least} to ${most} phases long`, value: n, code: 'wrong-length' })
  requireLength('resistance', resistance, n)
  requireLength('inductance', inductance, n)
  requirePositive('frequency', input.frequency, 'Hz')
  requireNotNegative('lineResistance', input.lineResistance, 'Ω')
  requireNotNegative('dcResistance', input.dcResistance, 'Ω')
  requireNotNegative('diode.threshold', diode.threshold, 'V')
  requireNotNegative('diode.slope', diode.slope, 'Ω')
  if (load.kind === 'battery') requireNotNegative('load.voltage', load.voltage, 'V')
  if (load.kind === 'battery' || load.kind === 'resistor')
    requireNotNegative('load.resistance', load.resistance, 'Ω')
  for (let k = 0; k < n; k++) {
    requireNotNegative(`resistance[${k}]`, resistance[k]!, 'Ω')
    requireLength(`inductance[${k}]`, inductance[k]!, n)
    requireLength(`emf[${k}].sin`, emf[k]!.sin, emf[k]!.cos.length)
    for (const value of emf[k]!.cos) requireFinite(`emf[${k}]`, value, 'V')
    for (const value of emf[k]!.sin) requireFinite(`emf[${k}]`, value, 'V')
    for (let j = 0; j < n; j++) {
      const L = inductance[k]![j]!
      requireFinite(`inductance[${k}][${j}]`, L, 'H')
      const size = Math.abs(inductance[k]![k]!) + Math.abs(inductance[j]![j]!)
      if (Math.abs(L - inductance[j]![k]!) > 1e-9 * size)
        refuse({ name: 'inductance', condition: 'a symmetric matrix', value: L, unit: 'H', code: 'conflict' })
    }
  }
  const { values } = symmetricEigen(inductance.flat(), n)
  if (Math.min(...values) < -1e-9 * Math.max(...values.map(Math.abs)))
    refuse({
      name: 'inductance',
      condition: 'a matrix that stores no negative energy',
      value: Math.min(...values),
      unit: 'H',
      code: 'conflict',
    })
}

/** aᵀ diag-or-full b, small dense: out[i][j] = Σ_kl A[k][i] M[k][l] A[l][j]. */
function congruence(A: Float64Array, M: (k: number, l: number) => number, rows: number, columns: number) {
  const out = new Float64Array(columns * columns)
  for (let k = 0; k < rows; k++)
    for (let l = 0; l < rows; l++) {
      const m = M(k, l)
      if (m === 0) continue
      for (let i = 0; i < columns; i++)
        for (let j = 0; j < columns; j++)
          out[i * columns + j] = out[i * columns + j]! + A[k * columns + i]! * m * A[l * columns + j]!
    }
  return out
}

interface Spectrum {
  readonly orders: number
  readonly repeats: number
  readonly cos: Float64Array
  readonly sin: Float64Array
  readonly peak: number
}

function spectrum(emf: readonly FourierSeries[]): Spectrum {
  let largest = 0
  let peak = 0
  for (const f of emf) {
    let sum = 0
    for (let h = 0; h < f.cos.length; h++) {
      const a = Math.hypot(f.cos[h]!, f.sin[h]!)
      sum += a
      largest = Math.max(largest, a)
    }
    peak = Math.max(peak, sum)
  }
  const kept = new Set<number>()
  for (const f of emf)
    for (let h = 1; h < f.cos.length; h++)
      if (Math.hypot(f.cos[h]!, f.sin[h]!) > NEGLIGIBLE * largest) kept.add(h)
  let repeats = 0
  for (const h of kept) repeats = gcd(h, repeats)
  repeats = Math.max(repeats, 1)
  const orders = kept.size === 0 ? 0 : Math.max(...kept) / repeats
  const cos = new Float64Array(emf.length * (orders + 1))
  const sin = new Float64Array(emf.length * (orders + 1))
  emf.forEach((f, k) => {
    cos[k * (orders + 1)] = f.cos[0] ?? 0
    for (const h of kept)
      if (h < f.cos.length) {
        cos[k * (orders + 1) + h / repeats] = f.cos[h]!
        sin[k * (orders + 1) + h / repeats] = f.sin[h]!
      }
  })
  return { orders, repeats, cos, sin, peak }
}

/** Largest difference between phase b and phase a delayed by `lag`, over all orders. */
function delayDifference(s: Spectrum, a: number, b: number, lag: number): number {
  let worst = 0
  for (let h = 0; h <= s.orders; h++) {
    const ca = s.cos[a * (s.orders + 1) + h]!
    const sa = s.sin[a * (s.orders + 1) + h]!
    const c = Math.cos(h * lag)
    const n = Math.sin(h * lag)
    worst = Math.max(
      worst,
      Math.abs(ca * c - sa * n - s.cos[b * (s.orders + 1) + h]!),
      Math.abs(sa * c + ca * n - s.sin[b * (s.orders + 1) + h]!),
    )
  }
  return worst
}

function symmetryOf(input: RectifierInput, s: Spectrum): { parts: 1 | 2 | 6; shift: number } {
  const n = input.emf.length
  const small = NEGLIGIBLE * s.peak
  for (let k = 0; k < n; k++)
    for (let h = 0; h <= s.orders; h += 2) {
      const i = k * (s.orders + 1) + h
      if (Math.abs(s.cos[i]!) > small || Math.abs(s.sin[i]!) > small) return { parts: 1, shift: 0 }
    }
  if (n !== 3) return { parts: 2, shift: 0 }
  const { resistance: R, inductance: L } = input
  const same = (x: number, y: number) => Math.abs(x - y) <= NEGLIGIBLE * Math.abs(L[0]![0]!)
  const alike =
    R.every((r) => Math.abs(r - R[0]!) <= NEGLIGIBLE * R[0]!) &&
    same(L[0]![0]!, L[1]![1]!) &&
    same(L[0]![0]!, L[2]![2]!) &&
    same(L[0]![1]!, L[1]![2]!) &&
    same(L[0]![1]!, L[0]![2]!)
  if (!alike) return { parts: 2, shift: 0 }
  for (const shift of [1, 2]) {
    const lag = shift === 1 ? (2 * Math.PI) / 3 : (-2 * Math.PI) / 3
    if (delayDifference(s, 0, 1, lag) <= small && delayDifference(s, 1, 2, lag) <= small)
      return { parts: 6, shift }
  }
  return { parts: 2, shift: 0 }
}

/**
 * Network of machine, lines, bridge and load, reduced to independent currents.
 *
 *   X dx/dθ + K x + Cᵀ v = Pᵀ e(θ)
 *
 * Holds: lumped R, L, M; diodes of threshold and slope; no inductance on the DC side. Accuracy: exact; harmonics
 * below 1e-9 of the largest are dropped.
 *
 * @param input  machine, lines, bridge and load  [V, Ω, H, Hz]
 * @returns      matrices of the reduced network, angle of the (shortest) period as time  [Ω, V]
 * @throws RangeError  values not finite, negative, lists of wrong length, an inductance matrix that is not symmetric
 *                     or would store negative energy
 * @source derived, Kirchhoff's laws with the spanning tree of each connection
 * @example rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 1, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'open' } }).K[0] // 3.000
 */
export function rectifierCircuit(input: RectifierInput): RectifierCircuit {
  requireInput(input)
  const { connection, resistance, inductance, diode, load } = input
  const n = input.emf.length
  const s = spectrum(input.emf)
  const closed = connection === 'star' || connection === 'delta'
  const d = connection === 'star' ? n - 1 : n
  const P = new Float64Array(n * d)
  const C = new Float64Array(n * d)
  for (let k = 0; k < n; k++)
    for (let j = 0; j < d; j++) {
      P[k * d + j] = k === j ? 1 : k === d ? -1 : 0
      // Delta: phase k runs from node k + 1 to node k, so line k carries phase k less phase k − 1.
      const before = (k + n - 1) % n
      C[k * d + j] = connection === 'delta' ? (k === j ? 1 : before === j ? -1 : 0) : P[k * d + j]!
    }
  const dcShare = closed ? 0.5 : 1
  const diodesInPath = closed ? 1 : 2
  const shorted = load.kind === 'shorted'
  const perLine = shorted ? 0 : input.lineResistance + diodesInPath * diode.slope
  const loaded = load.kind === 'battery' || load.kind === 'resistor'
  const dcResistance = loaded ? input.dcResistance + load.resistance : 0
  const V = load.kind === 'battery' ? load.voltage : 0
  const ω = 2 * Math.PI * input.frequency * s.repeats
  const X = congruence(P, (k, l) => ω * inductance[k]![l]!, n, d)
  const K = congruence(P, (k, l) => (k === l ? resistance[k]! : 0), n, d)
  const lines = congruence(C, (k, l) => (k === l ? perLine : 0), n, d)
  let largest = 0
  for (let i = 0; i < d * d; i++) {
    K[i] = K[i]! + lines[i]!
    largest = Math.max(largest, Math.abs(K[i]!) + Math.abs(X[i]!))
  }
  const barrier = dcShare * V + diodesInPath * diode.threshold
  const dcCoupling = dcResistance * dcShare ** 2
  const voltageScale = Math.max(s.peak, barrier)
  return {
    phases: n,
    valves: n,
    diodes: undefined,
    unknowns: d,
    closed,
    P,
    C,
    X,
    K,
    barrier,
    dcCoupling,
    dcShare,
    diodesInPath,
    orders: s.orders,
    emfCos: s.cos,
    emfSin: s.sin,
    repeats: s.repeats,
    symmetry: symmetryOf(input, s),
    voltageScale,
    currentScale: largest + dcCoupling > 0 ? voltageScale / (largest + dcCoupling) : 0,
  }
}
