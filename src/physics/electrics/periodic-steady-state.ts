/** The periodic currents of machine and bridge, closed by shooting. */
import { linearSolve } from '../../numerics/linear-solve.ts'
import { refuse } from '../../refusal/require.ts'
import type { CircuitState, Stretch } from './mode-response.ts'
import { modeSequence } from './mode-sequence.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'

export interface PeriodicSteadyState {
  /** Arc computed; the rest of the period follows by symmetry [rad]. */
  readonly span: number
  /** Joined arcs of one mode each, covering 0…span. */
  readonly stretches: readonly Stretch[]
  /** State at angle θ inside stretch number `index`. */
  readonly state: (index: number, θ: number) => CircuitState
  /** The same without rates and voltages. */
  readonly flow: (index: number, θ: number) => CircuitState
  /** How often the arc was marched. */
  readonly rounds: number
  /** Largest current left over at the seam [A]. */
  readonly seam: number
}

/** Largest seam accepted, as a share of the largest current at the seam. */
const SEAM = 1e-9
/** After PATIENCE marches this share of the largest current anywhere in the arc will do. */
const SEAM_LATE = 1e-5
const PATIENCE = 30
/** Most marches over the arc. */
const MOST_ROUNDS = 400
/** Steps that look for switching instants in one period, at least, and per order of the EMF. */
const STEPS = { least: 180, perOrder: 16 } as const

/** From x at the end of the arc to x at its start, seen from the phases that take over. */
function seamMap(circuit: RectifierCircuit): Float64Array {
  const { unknowns: d, phases: n, P, symmetry } = circuit
  const S = new Float64Array(d * d)
  if (symmetry.parts === 1) {
    for (let i = 0; i < d; i++) S[i * d + i] = 1
    return S
  }
  for (let k = 0; k < n; k++) {
    const to = (k + symmetry.shift) % n
    if (to >= d) continue
    for (let j = 0; j < d; j++) S[to * d + j] = S[to * d + j]! - P[k * d + j]!
  }
  return S
}

/** A B, both d × d. */
function product(A: Float64Array, B: Float64Array, d: number): Float64Array {
  const out = new Float64Array(d * d)
  for (let i = 0; i < d; i++)
    for (let j = 0; j < d; j++)
      for (let q = 0; q < d; q++) out[i * d + q] = out[i * d + q]! + A[i * d + j]! * B[j * d + q]!
  return out
}

/**
 * The periodic currents of a machine behind a diode bridge.
 *
 *   Φ(x0) − x0 = 0,  Φ(x0) = S x(span),  by Newton's rule with dΦ/dx0 carried along
 *
 * Holds: any L ≥ 0, R ≥ 0 with one of them in every conducting loop. Accuracy: exact between switching instants,
 * which are located to 1e-12 rad; seam closed to 1e-9 of the current (1e-5 at the
 * edge of a change of conduction); pulses far shorter than a search step (2 degrees
 * of the fundamental) may be missed at the very onset of conduction.
 *
 * @param circuit  from rectifierCircuit  [V, Ω]
 * @returns        stretches of one mode each and the state at any angle in them  [A, V]
 * @throws RangeError  no closed seam after 400 marches (no-convergence), says how far it got
 * @source aprille1972, shooting with the derivative of the end state by the start (from memory, not opened)
 * @example periodicSteadyState(rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 8), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 2 } })).state(0, 0.5).x[0] // 1.7552
 */
export function periodicSteadyState(circuit: RectifierCircuit): PeriodicSteadyState {
  const { unknowns: d, symmetry, orders } = circuit
  const { march, response } = modeSequence(circuit)
  const span = (2 * Math.PI) / symmetry.parts
  const steps = Math.ceil(Math.max(STEPS.least, STEPS.perOrder * orders) / symmetry.parts)
  const S = seamMap(circuit)
  let x: Float64Array = new Float64Array(d)
  let best = Number.POSITIVE_INFINITY
  let bestImage = x
  // Plain rounds before the next Newton step; more after each step undone.
  let plain = 1
  let plainLeft = plain
  for (let rounds = 1; ; rounds++) {
    const D = new Float64Array(d * d)
    for (let i = 0; i < d; i++) D[i * d + i] = 1
    const stretches = march(x, span, steps, D)
    const end = response.stateAt(stretches[stretches.length - 1]!, span).x
    const image = new Float64Array(d)
    let largest = 1e-6 * circuit.currentScale
    let seam = 0
    for (let i = 0; i < d; i++) {
      for (let j = 0; j < d; j++) image[i] = image[i]! + S[i * d + j]! * end[j]!
      seam = Math.max(seam, Math.abs(image[i]! - x[i]!))
      largest = Math.max(largest, Math.abs(image[i]!), Math.abs(x[i]!))
    }
    // Where a current all but touches zero a switching instant may be seen in one march and missed in the next; the
    // seam then stays open by that little.
    if (seam <= SEAM * largest || (rounds > PATIENCE && seam <= SEAM_LATE * largestOf(stretches, d)))
      return {
        span,
        stretches,
        state: (index, θ) => response.stateAt(stretches[index]!, θ),
        flow: (index, θ) => response.flowAt(stretches[index]!, θ),
        rounds,
        seam,
      }
    if (rounds >= MOST_ROUNDS || !Number.isFinite(seam))
      refuse({
        name: 'seam of the periodic solution',
        condition: `closed to ${SEAM * largest} A in ${rounds} rounds`,
        value: seam,
        unit: 'A',
        code: 'no-convergence',
      })
    if (seam > 2 * best) {
      // A Newton step that made things worse is undone by plain rounds from the best point: they never do.
      x = bestImage
      best = Number.POSITIVE_INFINITY
      plain *= 2
      plainLeft = plain
      continue
    }
    best = seam
    bestImage = image
    x = plainLeft-- > 0 ? image : newtonStep(product(S, D, d), image, x)
  }
}

/** Largest current at the beginning of any stretch. */
function largestOf(stretches: readonly Stretch[], d: number): number {
  let largest = 0
  for (const { mode, y0 } of stretches)
    for (let i = 0; i < d; i++) {
      let sum = 0
      for (let j = 0; j < mode.free; j++) sum += mode.W[i * mode.free + j]! * y0[j]!
      largest = Math.max(largest, Math.abs(sum))
    }
  return largest
}

/** x + (1 − J)⁻¹ (Φ(x) − x); without any damping 1 − J is singular and Φ(x) itself is taken. */
function newtonStep(J: Float64Array, image: Float64Array, x: Float64Array): Float64Array {
  const d = x.length
  const A = J.map((value, i) => (i % (d + 1) === 0 ? 1 : 0) - value)
  const b = image.map((value, i) => value - x[i]!)
  try {
    const move = linearSolve(A, b)
    return x.map((value, i) => value + move[i]!)
  } catch {
    return image
  }
}
