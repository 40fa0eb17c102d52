/** The network of machine, bridge and load in which every diode switches by itself. */
import { refuse, requireBetween } from '../../refusal/require.ts'
import { type RectifierCircuit, type RectifierInput, rectifierCircuit } from './rectifier-circuit.ts'

/** Legs of the bridge: one per line, or one per end of a phase that has its own bridge. */
const legEnds = (input: RectifierInput): 1 | 2 =>
  input.connection === 'star' || input.connection === 'delta' ? 1 : 2

function requireFaults(input: RectifierInput): void {
  const faults = input.diodeFaults ?? []
  const seen = new Set<number>()
  faults.forEach((fault, j) => {
    const name = `diodeFaults[${j}]`
    const { line, side, end, kind } = fault
    requireBetween(`${name}.line`, line, [0, input.emf.length - 1])
    const words = (field: string, value: unknown, choices: readonly string[]) => {
      if (!choices.includes(value as string))
        refuse({ name: `${name}.${field}`, condition: choices.join(' or '), value, code: 'not-a-choice' })
    }
    if (!Number.isInteger(line))
      refuse({ name: `${name}.line`, condition: 'a whole number', value: line, code: 'wrong-type' })
    words('side', side, ['positive', 'negative'])
    words('kind', kind, ['open', 'shorted'])
    words('end', end ?? 'start', legEnds(input) === 2 ? ['start', 'finish'] : ['start'])
    const at = diodeIndex(input, fault)
    if (seen.has(at))
      refuse({ name, condition: 'another diode than those before it', value: j, code: 'conflict' })
    seen.add(at)
  })
}

/** Index of a diode's valve: both of a leg side by side, the positive one first. */
const diodeIndex = (
  input: RectifierInput,
  { line, end, side }: Pick<NonNullable<RectifierInput['diodeFaults']>[number], 'line' | 'end' | 'side'>,
): number => 2 * (legEnds(input) * line + (end === 'finish' ? 1 : 0)) + (side === 'negative' ? 1 : 0)

/**
 * Network of machine, bridge and load with every diode a valve of its own, in the currents of the machine and of a
 * loop through both diodes of each leg and the load.
 *
 *   X du/dθ + K u + Aᵀ λ = Pᵀ e(θ) − V s,  a = A u ≥ 0,  λ ≤ threshold,  u = (x, g)
 *
 * where of leg k with line current c the upper diode carries c + g_k, the lower one g_k, and the DC current is
 * s u = Σ g. An open diode has a = 0 and any λ, a shorted one any a and λ = 0.
 *
 * Holds: lumped R, L, M; diodes of threshold and slope, a shorted one with the slope alone; no inductance on the DC
 * side; also DC current that flows backwards through shorted diodes. Accuracy: exact; harmonics below 1e-9 of the
 * largest are dropped.
 *
 * @param input  machine, lines, bridge, faults and load; the load a battery or a resistor  [V, Ω, H, Hz]
 * @returns      matrices of the network, angle of the (shortest) period as time            [Ω, V]
 * @throws RangeError  what rectifierCircuit refuses; a fault of a diode that is not there or was named before
 * @source derived, Kirchhoff's laws with one loop through each leg and the load
 * @example diodeCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 1, diode: { threshold: 0, slope: 0.5 }, dcResistance: 0, load: { kind: 'resistor', resistance: 4 } }).K[0] // 4.000
 */
export function diodeCircuit(input: RectifierInput): RectifierCircuit {
  requireFaults(input)
  const { load, diode } = input
  // The machine with its lines alone; what the bridge and the load do is added diode by diode.
  const bare = rectifierCircuit({
    ...input,
    diode: { threshold: 0, slope: 0 },
    dcResistance: 0,
    load: { kind: 'open' },
  })
  const whole = rectifierCircuit(input)
  const { unknowns: own, phases: n } = bare
  const ends = legEnds(input)
  const legs = ends * n
  const d = own + legs
  const A = new Float64Array(2 * legs * d)
  for (let k = 0; k < legs; k++) {
    const line = Math.floor(k / ends)
    const sign = k % ends === 1 ? -1 : 1
    for (let i = 0; i < own; i++) A[2 * k * d + i] = sign * bare.C[line * own + i]!
    A[2 * k * d + own + k] = 1
    A[(2 * k + 1) * d + own + k] = 1
  }
  const widened = (M: Float64Array) => {
    const out = new Float64Array(d * d)
    for (let i = 0; i < own; i++) for (let j = 0; j < own; j++) out[i * d + j] = M[i * own + j]!
    return out
  }
  const P = new Float64Array(n * d)
  for (let k = 0; k < n; k++) for (let i = 0; i < own; i++) P[k * d + i] = bare.P[k * own + i]!
  const K = widened(bare.K)
  for (let v = 0; v < 2 * legs; v++)
    for (let i = 0; i < d; i++)
      for (let j = 0; j < d; j++) K[i * d + j] = K[i * d + j]! + diode.slope * A[v * d + i]! * A[v * d + j]!
  const loaded = load.kind === 'battery' || load.kind === 'resistor'
  const dcResistance = loaded ? input.dcResistance + load.resistance : 0
  const drive = new Float64Array(d)
  for (let i = own; i < d; i++) {
    drive[i] = load.kind === 'battery' ? -load.voltage : 0
    for (let j = own; j < d; j++) K[i * d + j] = K[i * d + j]! + dcResistance
  }
  const state = Array.from({ length: 2 * legs }, (): 'sound' | 'open' | 'shorted' => 'sound')
  for (const fault of input.diodeFaults ?? []) state[diodeIndex(input, fault)] = fault.kind
  // A shorted diode lets current flow that the load does not hold back.
  const scale = state.includes('shorted') ? bare.currentScale : whole.currentScale
  return {
    ...whole,
    valves: 2 * legs,
    diodes: {
      state,
      group: Array.from({ length: 2 * legs }, (_, v) => (bare.closed ? 0 : Math.floor(v / 4))),
      drive,
    },
    unknowns: d,
    P,
    C: A,
    X: widened(bare.X),
    K,
    barrier: diode.threshold,
    dcCoupling: 0,
    symmetry: { parts: 1, shift: 0 },
    currentScale: scale,
  }
}
