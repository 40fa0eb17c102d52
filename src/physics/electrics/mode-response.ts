/** What a pattern of conducting diodes does at an instant: currents, their rates, room left to every bound. */
import { type ConductionMode, INSTANT_SHARE } from './conduction-mode.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'
import { tabledWaves } from './tabled-wave.ts'
import { type Arc, summedWaves } from './wave.ts'

/** The circuit at one instant. The arrays are shared: the next call overwrites them. */
export interface CircuitState {
  readonly emf: Float64Array
  /** Independent currents and their rate by angle. */
  readonly x: Float64Array
  readonly rate: Float64Array
  /** Currents of the valves. */
  readonly line: Float64Array
  /** Forward voltages of the blocked diodes; set where the valves are diodes. */
  readonly voltage: Float64Array
}

/** One arc of one mode. */
export interface Stretch {
  readonly from: number
  to: number
  readonly mode: ConductionMode
  /** Where the coordinates were y0; the harmonic response is p0 there. */
  readonly start: number
  readonly y0: Float64Array
  readonly p0: Float64Array
}

/** How far a voltage may lie on the wrong side of its bound, as a share of scale. */
export const SLACK = 1e-9
/** Waves of more orders than this are read from a table. */
const MOST_SUMMED = 40
/** Currents are held this much tighter: behind a switching instant they start from nothing. */
const CURRENT_WEIGHT = 1e3

/** Functions of the modes of one circuit; y, p, x, rate and voltage are shared and overwritten by every call. */
export interface ModeResponse {
  readonly y: Float64Array
  readonly p: Float64Array
  readonly x: Float64Array
  readonly rate: Float64Array
  /** Voltages of the blocked valves, set with every margin. */
  readonly voltage: Float64Array
  /** The valve with the least room; −1 where only the difference of two can tell. */
  readonly worst: () => number
  /** Those two, upper and lower, where their valves are diodes. */
  readonly pair: () => readonly [number, number]
  readonly flowing: (lineCurrent: number) => boolean
  /** Sets the angle. */
  readonly turn: (θ: number) => void
  /** Sets the EMF at the angle turned to. */
  readonly emfNow: () => void
  /** p: harmonic response of the mode at the angle turned to. */
  readonly respond: (mode: ConductionMode) => void
  /** What is left after τ of a deviation in coordinate j. */
  readonly decay: (mode: ConductionMode, j: number, τ: number) => number
  /** rate: of the currents y in the mode at the angle and EMF set. */
  readonly rates: (mode: ConductionMode) => void
  /** y and x of a stretch at the angle turned to. */
  readonly currents: (stretch: Stretch, θ: number) => void
  /** Least room to any bound, as a share of scale, negative when passed; turns to θ and sets y. */
  readonly marginAt: (stretch: Stretch, θ: number) => number
  /** The same at the step i of an arc, always the same arc of one circuit: what every march needs is kept. */
  readonly marginAtStep: (stretch: Stretch, i: number, arc: Arc) => number
  /** y after one implicit step δ from `before` to the angle and EMF set; returns the least room. */
  readonly step: (mode: ConductionMode, before: Float64Array, δ: number) => number
  readonly stateAt: (stretch: Stretch, θ: number) => CircuitState
  /** The same without rates and voltages. */
  readonly flowAt: (stretch: Stretch, θ: number) => CircuitState
}

/**
 * Evaluation of the modes of one circuit in time.
 *
 *   y(θ) = p(θ) + (y0 − p(θ0)) exp(−z) + F (1 − exp(−z))/(1−ν),  z = (1−ν)(θ−θ0)/ν
 *
 * Holds: between two switching instants; F is the constant forcing, p the response to the harmonics.
 * Accuracy: exact but for rounding; to 1e-10 of the voltage where the EMF has more than 40 orders.
 *
 * @param circuit  from rectifierCircuit                         [V, Ω]
 * @returns        functions of the angle, sharing their arrays  [A, V]
 * @throws RangeError  never by itself
 * @source derived, linear equation of first order in each normal coordinate
 * @example modeResponse(rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 8), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'open' } })).y.length // 1
 */
export function modeResponse(circuit: RectifierCircuit): ModeResponse {
  const { unknowns: d, phases: n, valves: m, diodes, orders } = circuit
  const emf = new Float64Array(n)
  const y = new Float64Array(d)
  const p = new Float64Array(d)
  const line = new Float64Array(m)
  const x = new Float64Array(d)
  const rate = new Float64Array(d)
  const slope = new Float64Array(d)
  const voltage = new Float64Array(m)
  const state: CircuitState = { emf, x, rate, line, voltage }
  const perVolt = circuit.voltageScale > 0 ? 1 / circuit.voltageScale : 0
  const perAmp = circuit.currentScale > 0 ? CURRENT_WEIGHT / circuit.currentScale : 0
  let worst = -1
  let pair: readonly [number, number] = [0, 1]

  const { turn, emfNow, respond, respondAtStep, emfAtStep } = (
    orders > MOST_SUMMED ? tabledWaves : summedWaves
  )(circuit, emf, p)
  const decay = (mode: ConductionMode, j: number, τ: number) => {
    const ν = mode.ν[j]!
    return ν < INSTANT_SHARE ? 0 : Math.exp((-(1 - ν) * τ) / ν)
  }
  const expand = (mode: ConductionMode, from: Float64Array, into: Float64Array) => {
    const f = mode.free
    for (let i = 0; i < d; i++) {
      let sum = 0
      for (let j = 0; j < f; j++) sum += mode.W[i * f + j]! * from[j]!
      into[i] = sum
    }
  }
  /** y of a stretch, once p is that of its mode at θ. */
  const coordinates = (s: Stretch, θ: number) => {
    const { mode } = s
    const τ = Math.max(0, θ - s.start)
    for (let j = 0; j < mode.free; j++) {
      const ν = mode.ν[j]!
      if (ν < INSTANT_SHARE) {
        y[j] = p[j]! + mode.steady[j]! / (1 - ν)
        continue
      }
      const z = ((1 - ν) * τ) / ν
      const ramp = z < 1e-8 ? τ / ν : -Math.expm1(-z) / (1 - ν)
      y[j] = p[j]! + (s.y0[j]! - s.p0[j]!) * Math.exp(-z) + mode.steady[j]! * ramp
    }
  }
  const force = (mode: ConductionMode, j: number) => {
    let f = mode.push[j]!
    for (let k = 0; k < n; k++) f += mode.WP[j * n + k]! * emf[k]!
    return f
  }
  const rates = (mode: ConductionMode) => {
    for (let j = 0; j < mode.free; j++) {
      const ν = mode.ν[j]!
      slope[j] = ν < INSTANT_SHARE ? 0 : (force(mode, j) - (1 - ν) * y[j]!) / ν
    }
    expand(mode, slope, rate)
  }

  const blockedVoltage = (mode: ConductionMode, a: number): number => {
    let v = -mode.q0[a]!
    for (let k = 0; k < n; k++) v += mode.QP[a * n + k]! * emf[k]!
    for (let i = 0; i < d; i++) v -= mode.QX[a * d + i]! * rate[i]!
    for (let j = 0; j < mode.free; j++) v -= mode.QK[a * mode.free + j]! * y[j]!
    return v
  }

  const group = Int8Array.from(diodes?.group ?? [])
  const isOpen = Uint8Array.from(diodes?.state ?? [], (kind) => (kind === 'open' ? 1 : 0))
  const isShorted = Uint8Array.from(diodes?.state ?? [], (kind) => (kind === 'shorted' ? 1 : 0))
  const diodeMargin = (mode: ConductionMode): number => {
    const { free: f, signs, blocked, floating } = mode
    let least = Number.POSITIVE_INFINITY
    worst = -1
    for (let k = 0; k < m; k++) {
      voltage[k] = 0
      if (signs[k] === 0 || isShorted[k] === 1) continue
      let sum = 0
      for (let j = 0; j < f; j++) sum += mode.CW[k * f + j]! * y[j]!
      if (sum * perAmp < least) {
        least = sum * perAmp
        worst = k
      }
    }
    for (let a = 0; a < blocked.length; a++) {
      const k = blocked[a]!
      voltage[k] = blockedVoltage(mode, a)
      const room = (circuit.barrier - voltage[k]!) * perVolt
      if (room >= least || isOpen[k] === 1 || floating.includes(group[k]!)) continue
      least = room
      worst = k
    }
    for (const free of floating) {
      // Both sides of the group are blocked and its potential is free: the highest and the lowest leg open as a pair.
      let up = -1
      let down = -1
      for (let k = 0; k < m; k++) {
        if (group[k] !== free || isOpen[k] === 1) continue
        if (k % 2 === 0) up = up < 0 || voltage[k]! > voltage[up]! ? k : up
        else down = down < 0 || voltage[k]! > voltage[down]! ? k : down
      }
      if (up < 0 || down < 0) continue
      const room = (2 * circuit.barrier - voltage[up]! - voltage[down]!) * perVolt
      if (room >= least) continue
      least = room
      worst = -1
      pair = [up, down]
    }
    return least
  }

  const lineMargin = (mode: ConductionMode): number => {
    const { free: f, signs, blocked } = mode
    const floating = mode.floating.length > 0
    let least = Number.POSITIVE_INFINITY
    let total = 0
    worst = -1
    for (let k = 0; k < n; k++) {
      const sign = signs[k]!
      if (sign === 0) continue
      let sum = 0
      for (let j = 0; j < f; j++) sum += mode.CW[k * f + j]! * y[j]!
      total += Math.abs(sum)
      const room = sign * sum * perAmp
      if (room < least) {
        least = room
        worst = k
      }
    }
    const limit = circuit.barrier + circuit.dcCoupling * total
    let high = 0
    let low = 0
    for (let a = 0; a < blocked.length; a++) {
      const v = blockedVoltage(mode, a)
      voltage[blocked[a]!] = v
      if (floating) {
        high = Math.max(high, v)
        low = Math.min(low, v)
        continue
      }
      const room = (limit - Math.abs(v)) * perVolt
      if (room < least) {
        least = room
        worst = blocked[a]!
      }
    }
    if (!floating) return least
    voltage[n - 1] = 0
    return (2 * circuit.barrier - (high - low)) * perVolt
  }
  const margin = (mode: ConductionMode): number =>
    diodes === undefined ? lineMargin(mode) : diodeMargin(mode)

  const marginAt = (s: Stretch, θ: number): number => {
    turn(θ)
    respond(s.mode)
    coordinates(s, θ)
    if (s.mode.blocked.length > 0) {
      emfNow()
      rates(s.mode)
    }
    return margin(s.mode)
  }

  const marginAtStep = (s: Stretch, i: number, arc: Arc): number => {
    respondAtStep(s.mode, i, arc)
    coordinates(s, arc.span * (i / arc.steps))
    if (s.mode.blocked.length > 0) {
      emfAtStep(i, arc)
      rates(s.mode)
    }
    return margin(s.mode)
  }

  const step = (mode: ConductionMode, before: Float64Array, δ: number): number => {
    for (let j = 0; j < mode.free; j++) {
      let stored = 0
      for (let i = 0; i < d; i++) stored += mode.WX[j * d + i]! * before[i]!
      const ν = mode.ν[j]!
      y[j] = (stored / δ + force(mode, j)) / (ν / δ + 1 - ν)
    }
    expand(mode, y, x)
    for (let i = 0; i < d; i++) rate[i] = (x[i]! - before[i]!) / δ
    return margin(mode)
  }

  const currents = (s: Stretch, θ: number) => {
    respond(s.mode)
    coordinates(s, θ)
    expand(s.mode, y, x)
  }

  const flowAt = (s: Stretch, θ: number): CircuitState => {
    const { signs, free, CW } = s.mode
    turn(θ)
    emfNow()
    currents(s, θ)
    for (let k = 0; k < m; k++) {
      let sum = 0
      if (signs[k] !== 0) for (let j = 0; j < free; j++) sum += CW[k * free + j]! * y[j]!
      line[k] = sum
    }
    return state
  }
  const stateAt = (s: Stretch, θ: number): CircuitState => {
    flowAt(s, θ)
    rates(s.mode)
    if (diodes !== undefined) diodeMargin(s.mode)
    return state
  }

  return {
    y,
    p,
    x,
    rate,
    voltage,
    worst: () => worst,
    pair: () => pair,
    flowing: (lineCurrent) => Math.abs(lineCurrent) * perAmp > 1e-6,
    turn,
    emfNow,
    respond,
    decay,
    rates,
    currents,
    marginAt,
    marginAtStep,
    step,
    stateAt,
    flowAt,
  }
}
