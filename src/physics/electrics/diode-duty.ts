/** What each diode of a bridge carries, loses and holds back over a period. */
import type { ConductionMode } from './conduction-mode.ts'
import type { DiodeFault, RectifierCircuit } from './rectifier-circuit.ts'

export interface DiodeDuty {
  /** Line of star and delta, phase of `separate` and `single`; from 0. */
  readonly line: number
  /** Only where each phase has a bridge of its own. */
  readonly end?: 'start' | 'finish'
  readonly side: DiodeFault['side']
  readonly state: 'sound' | DiodeFault['kind']
  /** In its own direction [A]; of a shorted one also below zero. */
  readonly current: number
  readonly currentRms: number
  /** [W] */
  readonly loss: number
}

interface Means {
  readonly mean: Float64Array
  readonly square: Float64Array
}

export interface DiodeTally {
  /** Adds what the valves carry at an instant. */
  readonly take: (line: Float64Array, weight: number) => void
  /** Both diodes of a leg side by side, the positive one first. */
  readonly duties: (diode: { readonly threshold: number; readonly slope: number }) => DiodeDuty[]
}

/** Evens out what the symmetry of the arc leaves to the other parts of the period. */
function evened({ mean, square }: Means, parts: 1 | 2 | 6): Means {
  if (parts === 1) return { mean, square }
  const even = (list: Float64Array) => {
    const all = list.reduce((sum, x) => sum + x, 0) / list.length
    return list.map((_, at) => (parts === 6 ? all : (list[at]! + list[at ^ 1]!) / 2))
  }
  return { mean: even(mean), square: even(square) }
}

function dutiesOf(
  circuit: RectifierCircuit,
  means: Means,
  diode: { readonly threshold: number; readonly slope: number },
): DiodeDuty[] {
  const { mean, square } = evened(means, circuit.symmetry.parts)
  const ends = circuit.closed ? 1 : 2
  return Array.from({ length: 2 * ends * circuit.phases }, (_, v) => {
    const leg = Math.floor(v / 2)
    const line = Math.floor(leg / ends)
    const finish = leg % ends === 1
    // What leaves by the start of a phase comes back by its finish, through the other side's diode.
    const at = circuit.diodes !== undefined ? v : 2 * line + ((v % 2) ^ (finish ? 1 : 0))
    const state = circuit.diodes?.state[v] ?? 'sound'
    return {
      line,
      ...(ends === 1 ? {} : { end: finish ? 'finish' : 'start' }),
      side: v % 2 === 0 ? 'positive' : 'negative',
      state,
      current: mean[at]!,
      currentRms: Math.sqrt(square[at]!),
      loss: (state === 'shorted' ? 0 : diode.threshold * mean[at]!) + diode.slope * square[at]!,
    }
  })
}

/**
 * Gathers mean and rms current and loss of every diode over a period.
 *
 *   P = threshold·⟨i⟩ + slope·⟨i²⟩
 *
 * Holds: weights that add up to one over the arc computed; a line's current is its upper diode's while above zero and
 * its lower one's below. Accuracy: exact; rounding.
 *
 * @param circuit  from rectifierCircuit or diodeCircuit   [V, Ω]
 * @returns        the function to add an instant with, and the one that gives the duties  [A, W]
 * @throws RangeError  never by itself
 * @source derived, mean of v(i)·i over the period
 * @example diodeTally(rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 1, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'open' } })).duties({ threshold: 1, slope: 0 }).length // 4
 * @internal
 */
export function diodeTally(circuit: RectifierCircuit): DiodeTally {
  const { valves, diodes } = circuit
  // Of lines the forward and the backward half each, of diodes each.
  const paired = diodes === undefined
  const mean = new Float64Array(paired ? 2 * valves : valves)
  const square = new Float64Array(mean.length)
  return {
    take: (line, weight) => {
      for (let k = 0; k < valves; k++) {
        const c = line[k]!
        const at = paired ? 2 * k + (c < 0 ? 1 : 0) : k
        mean[at] = mean[at]! + weight * (paired ? Math.abs(c) : c)
        square[at] = square[at]! + weight * c * c
      }
    },
    duties: (diode) => dutiesOf(circuit, { mean, square }, diode),
  }
}

/**
 * Greatest reverse voltage of the sound diodes of a faulty bridge at an instant.
 *
 *   u = max(−λ) over blocked diodes
 *
 * Holds: in a group of legs without current, whose potential is free, u is taken with a diode of the other side at its
 * threshold: an upper bound. Accuracy: exact elsewhere.
 *
 * @param circuit  from diodeCircuit                         [V, Ω]
 * @param mode     which diodes conduct                      [1]
 * @param voltage  λ, forward, of every blocked diode        [V]
 * @returns        u                                         [V]
 * @throws RangeError  never by itself
 * @source derived, Kirchhoff's voltage law
 * @example ((circuit) => reverseVoltage(circuit, conductionMode(circuit, Int8Array.of(1, 0, 0, 1)), Float64Array.of(0, -5, -4, 0)))(diodeCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 8), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 2 } })) // 5.00
 * @internal
 */
export function reverseVoltage(
  circuit: RectifierCircuit,
  mode: ConductionMode,
  voltage: Float64Array,
): number {
  const { state, group } = circuit.diodes!
  let most = 0
  for (let k = 0; k < circuit.valves; k++) {
    if (mode.signs[k] !== 0 || state[k] !== 'sound') continue
    let shift = 0
    if (mode.floating.includes(group[k]!)) {
      let other = Number.NEGATIVE_INFINITY
      for (let j = 1 - (k % 2); j < circuit.valves; j += 2)
        if (group[j] === group[k] && state[j] === 'sound') other = Math.max(other, voltage[j]!)
      shift = Number.isFinite(other) ? circuit.barrier - other : 0
    }
    most = Math.max(most, shift - voltage[k]!)
  }
  return most
}
