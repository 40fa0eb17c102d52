/** A permanent-magnet machine feeding a diode bridge and its load, in the periodic steady state. */
import { alongArc } from './arc-quadrature.ts'
import type { ConductionMode } from './conduction-mode.ts'
import { diodeCircuit } from './diode-circuit.ts'
import { type DiodeDuty, reverseVoltage } from './diode-duty.ts'
import { dcCurrentOf, type FlowTally, flowTally, phaseCurrent } from './flow-tally.ts'
import { type CircuitSolution, linearSolution } from './linear-solution.ts'
import type { CircuitState } from './mode-response.ts'
import { periodicSteadyState } from './periodic-steady-state.ts'
import { type RectifierCircuit, type RectifierInput, rectifierCircuit } from './rectifier-circuit.ts'

export type { DiodeDuty } from './diode-duty.ts'
export type { DiodeFault, MachineConnection, RectifierInput, RectifierLoad } from './rectifier-circuit.ts'

export interface RectifierWaveforms {
  /** Of the period given, 0…2π (end left out) [rad]. */
  readonly angle: Float64Array
  readonly emf: readonly Float64Array[]
  readonly phaseCurrent: readonly Float64Array[]
  /** Between each terminal of a star and the next one, once where there are two; else across each phase [V]. */
  readonly lineVoltages: readonly Float64Array[]
  readonly dcCurrent: Float64Array
  /** At the load's terminals; with an open load, of the rectified terminal voltage [V]. */
  readonly loadVoltage: Float64Array
  /** Σ e i [W]. */
  readonly power: Float64Array
}

export interface RectifierMeans {
  /** Mean [A]. */
  readonly dcCurrent: number
  readonly dcCurrentRms: number
  /** Mean at the load's terminals; with an open load, of the rectified terminal voltage [V]. */
  readonly loadVoltage: number
  readonly phaseCurrentRms: readonly number[]
  readonly lineCurrentRms: readonly number[]
  /** Mean of each phase's current [A]: zero in a sound bridge, but for even harmonics. */
  readonly phaseCurrentMean: readonly number[]
  /** Both diodes of a leg side by side; none carries anything where the load is `open` or `shorted`. */
  readonly diodes: readonly DiodeDuty[]
  /** Means over the period [W]. */
  readonly power: {
    /** Σ e i: what the shaft gives up to the EMF. */
    readonly shaft: number
    readonly winding: number
    readonly line: number
    readonly diodes: number
    readonly dcCable: number
    readonly batteryResistance: number
    /** Into the ideal battery EMF or the resistor. */
    readonly load: number
  }
  /** |shaft − sum of the rest| / shaft: how well the energy closes. */
  readonly residual: number
}

export interface RectifierPoint extends RectifierMeans {
  /** Of the DC current: never flows, rests at zero for part of the period, or never rests. */
  readonly conduction: 'none' | 'discontinuous' | 'continuous'
  /** (max − min) / mean of Σ e i. */
  readonly torqueRipple: number
  /**
   * Largest reverse voltage of any diode [V]. Where nothing conducts the voltage shares itself by leakage and the
   * whole of it is given: an upper bound.
   */
  readonly diodeReverseVoltagePeak: number
  readonly waveforms?: RectifierWaveforms
}

/** Arc between samples of the integrals [rad of the fundamental]. */
const PIECE = (2 * Math.PI) / 180

/** Voltage of phase k at the machine's terminals: e − R i − L di/dt. */
function phaseVoltage(
  input: RectifierInput,
  circuit: RectifierCircuit,
  state: CircuitState,
  k: number,
): number {
  const ω = 2 * Math.PI * input.frequency * circuit.repeats
  let u = state.emf[k]! - input.resistance[k]! * phaseCurrent(circuit, state.x, k)
  for (let j = 0; j < circuit.phases; j++)
    u -= ω * input.inductance[k]![j]! * phaseCurrent(circuit, state.rate, j)
  return u
}

/** Highest less lowest terminal voltage; of separate machines the highest phase voltage. */
function openSwing(input: RectifierInput, circuit: RectifierCircuit, state: CircuitState): number {
  const { connection } = input
  let high = Number.NEGATIVE_INFINITY
  let low = Number.POSITIVE_INFINITY
  let potential = 0
  for (let k = 0; k < circuit.phases; k++) {
    const u = phaseVoltage(input, circuit, state, k)
    if (connection === 'delta') potential -= k === 0 ? 0 : phaseVoltage(input, circuit, state, k - 1)
    const v = connection === 'delta' ? potential : connection === 'star' ? u : Math.abs(u)
    high = Math.max(high, v)
    low = Math.min(low, v)
  }
  return circuit.closed ? high - low : high
}

/** An open load behind a faulty bridge is seen by a voltmeter of this many times the machine's impedance. */
const VOLTMETER = 1e5

function withVoltmeter(input: RectifierInput): RectifierInput {
  const ω = 2 * Math.PI * input.frequency
  const impedance = Math.max(...input.resistance.map((R, k) => Math.hypot(R, ω * input.inductance[k]![k]!)))
  return { ...input, load: { kind: 'resistor', resistance: VOLTMETER * (impedance > 0 ? impedance : 1) } }
}

/** The machine with its bridge, ready to be solved. */
function circuitOf(input: RectifierInput): RectifierCircuit {
  // Joined terminals leave the bridge without any voltage.
  const faulty = (input.diodeFaults?.length ?? 0) > 0 && input.load.kind !== 'shorted'
  return faulty ? diodeCircuit(input) : rectifierCircuit(input)
}

/**
 * A permanent-magnet machine behind a diode bridge and its load: mean values of the periodic steady state.
 *
 *   L di/dt + R i + v(i) = e(t),  |v| ≤ barrier where i = 0
 *
 * Holds: lumped constant R, L, M; diodes of threshold and slope without capacitance or recovery, any of them open or
 * shorted; no inductance or capacitance on the DC side. Accuracy: mean and rms currents within 0.02 % of a circuit
 * simulator on 30 circuits, half of them with bad diodes, torque ripple within 0.05 %; 1e-7 of the closed form where
 * there is one; energy closes to 0.1 % down to a millionth of the current the machine could drive, typically to 1e-7.
 * Straight-line diodes against exponential ones: 0.4 % of the current.
 *
 * @param input            machine, lines, bridge and load                   [V, Ω, H, Hz]
 * @param options.samples  number of waveform samples over the period given  [1]
 * @returns                mean and rms currents, powers, ripple, waveforms  [A, V, W]
 * @throws RangeError      meaningless input; no-convergence with the seam reached
 * @source derived, Kirchhoff's laws; bridge as a monotone piecewise-linear element
 * @example rectifierPoint({ connection: 'single', emf: [{ cos: Float64Array.of(0, 0), sin: Float64Array.of(0, 10) }], frequency: 50, resistance: [1], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 1 } }).dcCurrent // 3.18310
 */
export function rectifierPoint(
  input: RectifierInput,
  options: { readonly samples?: number } = {},
): RectifierPoint {
  const metered = input.load.kind === 'open' && (input.diodeFaults?.length ?? 0) > 0
  return metered
    ? { ...solvedPoint(withVoltmeter(input), options), dcCurrent: 0, dcCurrentRms: 0, conduction: 'none' }
    : solvedPoint(input, options)
}

/**
 * The means alone: of the same periodic steady state, by Gauss's rule between the switching instants, which takes a
 * fraction of the points that extremes ask for.
 *
 *   ⟨f⟩ = Σ w_q f(θ_q)
 *
 * Holds: as `rectifierPoint`. Accuracy: within 1e-7 of the means of `rectifierPoint`, 1e-5 where time constants are below
 * a degree of the period.
 *
 * @param input  machine, lines, bridge and load            [V, Ω, H, Hz]
 * @returns      mean and rms currents, powers              [A, V, W]
 * @throws RangeError  meaningless input; no-convergence with the seam reached
 * @source derived, Kirchhoff's laws; bridge as a monotone piecewise-linear element
 * @example rectifierMeans({ connection: 'single', emf: [{ cos: Float64Array.of(0, 0), sin: Float64Array.of(0, 10) }], frequency: 50, resistance: [1], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 1 } }).dcCurrent // 3.18310
 */
export function rectifierMeans(input: RectifierInput): RectifierMeans {
  // open and shorted machines are one arc without switching, told by even samples
  if (input.load.kind === 'open' || input.load.kind === 'shorted') return rectifierPoint(input)
  const circuit = circuitOf(input)
  const { span, stretches, flow } = periodicSteadyState(circuit)
  const flows = flowTally(circuit, false)
  stretches.forEach((stretch, index) => {
    alongArc(stretch, circuit.orders, (θ, weight) => flows.take(weight / span, flow(index, θ)))
  })
  return meansOf(input, circuit, flows)
}

function solvedPoint(input: RectifierInput, options: { readonly samples?: number }): RectifierPoint {
  const circuit = circuitOf(input)
  const { load, diode } = input
  const linear = isLinear(input)
  const steady = linear ? undefined : periodicSteadyState(circuit)
  const solution: CircuitSolution =
    steady === undefined
      ? linearSolution(circuit, load.kind === 'shorted')
      : { ...steady, arcs: steady.stretches }

  const V = load.kind === 'battery' ? load.voltage : 0
  const dcResistance = loadResistanceOf(input) + input.dcResistance
  const piece = circuit.orders > 11 ? PIECE * (11 / circuit.orders) : PIECE

  const flows = flowTally(circuit, linear)
  const { now } = flows
  let swing = 0
  let most = Number.NEGATIVE_INFINITY
  let least = Number.POSITIVE_INFINITY
  let dcLeast = Number.POSITIVE_INFINITY
  let reverse = 0

  const take = (weight: number, state: CircuitState, mode: ConductionMode) => {
    flows.take(weight, state)
    const { power, dc, line } = now
    most = Math.max(most, power)
    least = Math.min(least, power)
    dcLeast = Math.min(dcLeast, dc)
    if (load.kind === 'open') {
      const open = openSwing(input, circuit, state)
      swing += weight * Math.max(0, open - 2 * diode.threshold)
      reverse = Math.max(reverse, open)
    } else if (circuit.diodes !== undefined)
      reverse = Math.max(reverse, reverseVoltage(circuit, mode, state.voltage))
    else if (load.kind !== 'shorted') {
      const rail = V + dcResistance * dc
      reverse = Math.max(reverse, line > 0 ? rail + diode.threshold + diode.slope * line : rail)
    }
  }
  solution.arcs.forEach(({ from, to, mode }, index) => {
    const pieces = Math.max(1, Math.ceil((to - from) / piece - 1e-9))
    const h = (to - from) / pieces
    if (!(h > 0)) return
    // Simpson's rule on 2·pieces intervals.
    const weight = h / (6 * solution.span)
    for (let q = 0; q <= 2 * pieces; q++) {
      const share = q === 0 || q === 2 * pieces ? 1 : q % 2 === 1 ? 4 : 2
      take(share * weight, solution.state(index, from + (q * h) / 2), mode)
    }
  })
  const means = meansOf(input, circuit, flows)
  const { dcCurrent: dcMean } = means
  const { shaft } = means.power
  const flowing = Math.abs(dcMean) > 1e-9 * circuit.currentScale
  const point: RectifierPoint = {
    ...means,
    conduction: !flowing ? 'none' : dcLeast > 1e-6 * dcMean ? 'continuous' : 'discontinuous',
    loadVoltage: load.kind === 'open' ? swing : means.loadVoltage,
    torqueRipple: shaft > noiseOf(circuit) ? (most - least) / shaft : 0,
    diodeReverseVoltagePeak: reverse,
  }
  return options.samples === undefined
    ? point
    : { ...point, waveforms: waveformsOf(input, circuit, solution, options.samples) }
}

const isLinear = ({ load }: RectifierInput): boolean => load.kind === 'open' || load.kind === 'shorted'

const loadResistanceOf = ({ load }: RectifierInput): number =>
  load.kind === 'battery' || load.kind === 'resistor' ? load.resistance : 0

/** Rounding alone makes this much power; a ratio to it would have no meaning [W]. */
const noiseOf = ({ voltageScale, currentScale }: RectifierCircuit): number =>
  1e-12 * voltageScale * currentScale

/** Currents and powers from their sums over the arc; what an open load shows is left at zero. */
function meansOf(input: RectifierInput, circuit: RectifierCircuit, flows: FlowTally): RectifierMeans {
  const { load } = input
  const { phaseMean, phaseSquare, lineSquare, sum } = flows
  const { symmetry } = circuit
  const linear = isLinear(input)
  const V = load.kind === 'battery' ? load.voltage : 0
  const loadResistance = loadResistanceOf(input)
  if (symmetry.parts === 6 && !linear) {
    phaseSquare.fill((phaseSquare[0]! + phaseSquare[1]! + phaseSquare[2]!) / 3)
    lineSquare.fill((lineSquare[0]! + lineSquare[1]! + lineSquare[2]!) / 3)
  }
  // The second half of the period is the first one reversed.
  if (symmetry.parts > 1 && !linear) phaseMean.fill(0)

  const duties = flows.diodes.duties(input.diode)
  const lineCurrentRms = Array.from(lineSquare, (s) => Math.sqrt(s))
  const lineSum = lineSquare.reduce((a, b) => a + b, 0)
  const inLine = load.kind === 'shorted' ? 0 : 1
  const { shaft, dc: dcMean, dcSquare } = sum
  const power = {
    shaft,
    winding: phaseSquare.reduce((whole, square, k) => whole + square * input.resistance[k]!, 0),
    line: inLine * input.lineResistance * lineSum,
    diodes: duties.reduce((whole, { loss }) => whole + loss, 0),
    dcCable: input.dcResistance * dcSquare,
    batteryResistance: load.kind === 'battery' ? loadResistance * dcSquare : 0,
    load: load.kind === 'battery' ? V * dcMean : load.kind === 'resistor' ? loadResistance * dcSquare : 0,
  }
  const heat = power.winding + power.line + power.diodes + power.dcCable + power.batteryResistance
  const spent = heat + power.load
  // A battery that discharges through shorted diodes heats what the shaft does not.
  const turned = Math.max(shaft, heat)
  return {
    dcCurrent: dcMean,
    dcCurrentRms: Math.sqrt(dcSquare),
    loadVoltage: V + loadResistance * dcMean,
    phaseCurrentRms: Array.from(phaseSquare, (s) => Math.sqrt(s)),
    phaseCurrentMean: Array.from(phaseMean),
    lineCurrentRms: load.kind === 'open' ? lineCurrentRms.map(() => 0) : lineCurrentRms,
    diodes: duties,
    power,
    residual: turned > noiseOf(circuit) ? Math.abs(shaft - spent) / turned : 0,
  }
}

function waveformsOf(
  input: RectifierInput,
  circuit: RectifierCircuit,
  solution: CircuitSolution,
  samples: number,
): RectifierWaveforms {
  const { phases: n, symmetry } = circuit
  const parts = Math.round((2 * Math.PI) / solution.span)
  const linear = isLinear(input)
  const angle = new Float64Array(samples)
  const emf = Array.from({ length: n }, () => new Float64Array(samples))
  const current = Array.from({ length: n }, () => new Float64Array(samples))
  const star = input.connection === 'star'
  const lineVoltages = Array.from({ length: star && n === 2 ? 1 : n }, () => new Float64Array(samples))
  const loadVoltage = new Float64Array(samples)
  const dcCurrent = new Float64Array(samples)
  const power = new Float64Array(samples)
  for (let q = 0; q < samples; q++) {
    angle[q] = (2 * Math.PI * q) / samples
    const θ = (angle[q]! * circuit.repeats) % (2 * Math.PI)
    const part = Math.min(parts - 1, Math.floor(θ / solution.span + 1e-12))
    const within = Math.max(0, θ - part * solution.span)
    let index = solution.arcs.findIndex((arc) => within <= arc.to)
    if (index < 0) index = solution.arcs.length - 1
    const state = solution.state(index, within)
    // In part j, phase k does what phase k + j·shift does in the first part, with sign (−1)^j.
    const sign = part % 2 === 0 ? 1 : -1
    const from = (k: number) => (k + part * symmetry.shift) % n
    for (let k = 0; k < n; k++) {
      emf[k]![q] = sign * state.emf[from(k)]!
      current[k]![q] = sign * phaseCurrent(circuit, state.x, from(k))
      power[q] = power[q]! + emf[k]![q]! * current[k]![q]!
    }
    if (!linear) dcCurrent[q] = dcCurrentOf(circuit, state.line)
    loadVoltage[q] = loadVoltageOf(input, circuit, state, dcCurrent[q]!)
    const u = (k: number) => phaseVoltage(input, circuit, state, from(k))
    for (const [k, line] of lineVoltages.entries()) line[q] = sign * (star ? u(k) - u((k + 1) % n) : u(k))
  }
  return { angle, emf, phaseCurrent: current, lineVoltages, dcCurrent, loadVoltage, power }
}

/** At the load's terminals while that current flows into it. */
function loadVoltageOf(
  input: RectifierInput,
  circuit: RectifierCircuit,
  state: CircuitState,
  current: number,
): number {
  const { load, diode } = input
  switch (load.kind) {
    case 'battery':
      return load.voltage + load.resistance * current
    case 'resistor':
      return load.resistance * current
    case 'open':
      return Math.max(0, openSwing(input, circuit, state) - 2 * diode.threshold)
    case 'shorted':
      return 0
  }
}
