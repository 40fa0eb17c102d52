/** The sequence of conducting patterns over an arc: which mode follows which, and when. */
import { refuse } from '../../refusal/require.ts'
import { type ConductionMode, conductionMode } from './conduction-mode.ts'
import { modeResponse, SLACK, type Stretch } from './mode-response.ts'
import type { DiodeValves, RectifierCircuit } from './rectifier-circuit.ts'

/** First step behind a switching instant; there the next mode is found by an implicit step [rad]. */
const FIRST_STEP = 1e-6
/** Up to this many patterns are all tried when mending one valve after the other does not lead to the mode. */
const MOST_PATTERNS = 4096

export interface ModeSequence {
  /**
   * Carries the currents x0 from angle 0 over the arc; `derivative` (d × d, row by row) is carried along, from what
   * it holds at the start to the end of the arc.
   */
  readonly march: (x0: Float64Array, span: number, steps: number, derivative: Float64Array) => Stretch[]
  readonly response: ReturnType<typeof modeResponse>
}

/** Diodes that must conduct or cannot, put right; groups that current would enter and not leave are blocked. */
function withoutDeadEnds(signs: Int8Array, { state, group }: DiodeValves): Int8Array {
  const next = Int8Array.from(signs, (sign, k) =>
    state[k] === 'shorted' ? 1 : state[k] === 'open' ? 0 : sign > 0 ? 1 : 0,
  )
  for (const own of new Set(group)) {
    let ways = 0
    for (let k = 0; k < next.length; k++)
      if (group[k] === own && next[k] === 1) ways |= state[k] === 'shorted' ? 3 : 1 << (k % 2)
    if (ways !== 3) for (let k = 0; k < next.length; k++) if (group[k] === own) next[k] = 0
  }
  return next
}

const possibleDiodes = (signs: Int8Array, diodes: DiodeValves): boolean => {
  const mended = withoutDeadEnds(signs, diodes)
  return signs.every((sign, k) => sign === mended[k])
}

/**
 * The modes of a circuit one after the other.
 *
 *   bound(θs) = 0 at each switching instant θs; the mode behind it is the one whose implicit step keeps all bounds
 *
 * Holds: any circuit; the step is a convex problem and so has one answer. Accuracy: instants to 1e-12 rad; of two
 * arcs shorter than one of the steps that look for them one may be missed.
 *
 * @param circuit  from rectifierCircuit                                  [V, Ω]
 * @returns        the marching function and the evaluation of its arcs   [A, V]
 * @throws RangeError  when marching: no-convergence, more switching than any bridge can do
 * @source derived, complementarity of current and voltage room in each diode
 * @example modeSequence(rectifierCircuit({ connection: 'single', emf: [{ cos: Float64Array.of(0, 8), sin: Float64Array.of(0, 0) }], frequency: 50, resistance: [2], inductance: [[0]], lineResistance: 0, diode: { threshold: 0, slope: 0 }, dcResistance: 0, load: { kind: 'resistor', resistance: 2 } })).march(Float64Array.of(0), Math.PI, 90, Float64Array.of(1))[0].to // 1.570796
 */
export function modeSequence(circuit: RectifierCircuit): ModeSequence {
  const { unknowns: d, valves: n, closed, diodes } = circuit
  // A line has three states, a diode two.
  const states = diodes === undefined ? 3 : 2
  const response = modeResponse(circuit)
  const { y, p, x, rate, voltage, marginAt, marginAtStep } = response
  const modes = new Map<number, ConductionMode>()
  const none = diodes === undefined ? new Int8Array(n) : withoutDeadEnds(new Int8Array(n), diodes)

  const keyOf = (signs: Int8Array) => {
    let key = 0
    for (let k = 0; k < n; k++) key = states * key + signs[k]! + states - 2
    return key
  }
  const modeOf = (signs: Int8Array) => {
    const key = keyOf(signs)
    let mode = modes.get(key)
    if (mode === undefined) {
      mode = conductionMode(circuit, signs)
      modes.set(key, mode)
    }
    return mode
  }
  const possible = (signs: Int8Array) =>
    diodes === undefined
      ? !closed || (signs.includes(1) && signs.includes(-1))
      : possibleDiodes(signs, diodes)

  /** The pattern with its worst valve put right, after a margin was taken. */
  const mended = (signs: Int8Array): Int8Array => {
    const next = Int8Array.from(signs)
    const worst = response.worst()
    if (diodes !== undefined) {
      if (worst >= 0) next[worst] = 1 - signs[worst]!
      else for (const k of response.pair()) next[k] = 1
      return withoutDeadEnds(next, diodes)
    }
    if (worst >= 0) next[worst] = signs[worst] !== 0 ? 0 : voltage[worst]! > 0 ? 1 : -1
    else {
      let top = 0
      let bottom = 0
      for (let k = 0; k < n; k++) {
        if (voltage[k]! > voltage[top]!) top = k
        if (voltage[k]! < voltage[bottom]!) bottom = k
      }
      next[top] = 1
      next[bottom] = -1
    }
    return possible(next) ? next : next.fill(0)
  }

  const choose = (first: Int8Array, before: Float64Array, δ: number): ConductionMode => {
    let signs = possible(first) ? first : none
    const seen = new Set<number>()
    let best = modeOf(signs)
    let most = Number.NEGATIVE_INFINITY
    const keepsBounds = (): boolean => {
      seen.add(keyOf(signs))
      const mode = modeOf(signs)
      const room = response.step(mode, before, δ)
      if (room > most) {
        most = room
        best = mode
      }
      return room >= -SLACK
    }
    for (let trial = 0; trial < 6 * n && !seen.has(keyOf(signs)); trial++) {
      if (keepsBounds()) return best
      signs = mended(signs)
    }
    if (states ** n <= MOST_PATTERNS)
      for (let code = 0; code < states ** n; code++) {
        signs = new Int8Array(n)
        for (let k = 0, rest = code; k < n; k++, rest = Math.floor(rest / states))
          signs[k] = (rest % states) + 2 - states
        if (possible(signs) && !seen.has(keyOf(signs)) && keepsBounds()) return best
      }
    // Rounding hides the answer: the pattern nearest to it is left again at once if it was wrong.
    response.step(best, before, δ)
    return best
  }

  /** Whether the current of valve k goes straight on in the other direction, through the other diode. */
  const swaps = (before: Int8Array, after: Int8Array, k: number): boolean =>
    diodes === undefined
      ? before[k]! * after[k]! === -1
      : before[k]! > before[k ^ 1]! && after[k]! < after[k ^ 1]!

  /** First instant in a…b at which a bound is reached, given that one is passed at b. */
  const crossing = (s: Stretch, from: number, to: number): number => {
    let a = from
    let b = to
    let fa = marginAt(s, a)
    if (fa <= 0) return a
    let fb = marginAt(s, b)
    let side = 0
    for (let k = 0; k < 80 && b - a > 1e-12; k++) {
      // Illinois rule; every fourth step halves, so that the bracket shrinks whatever the shape.
      const θ = k % 4 === 3 ? (a + b) / 2 : Math.min(b, Math.max(a, (a * fb - b * fa) / (fb - fa)))
      const f = marginAt(s, θ)
      if (Math.abs(f) < SLACK * 1e-3) return θ
      if (f > 0) {
        a = θ
        fa = f
        if (side === 1) fb /= 2
        side = 1
      } else {
        b = θ
        fb = f
        if (side === -1) fa /= 2
        side = -1
      }
    }
    return b
  }

  const march = (x0: Float64Array, span: number, steps: number, D: Float64Array): Stretch[] => {
    const stretches: Stretch[] = []
    const before = Float64Array.from(x0)
    const Dy = new Float64Array(d * d)
    const fore = new Float64Array(d)
    const mostTurns = 2 * n * (steps + 300)
    let δ = FIRST_STEP

    /** The rate jumps where a line passes from one diode straight to the other (saltation matrix). */
    const jump = (k: number, mode: ConductionMode) => {
      response.rates(mode)
      let along = 0
      for (let i = 0; i < d; i++) along += circuit.C[k * d + i]! * fore[i]!
      if (!response.flowing(along)) return
      for (let q = 0; q < d; q++) {
        let shift = 0
        for (let i = 0; i < d; i++) shift += circuit.C[k * d + i]! * D[i * d + q]!
        for (let i = 0; i < d; i++) D[i * d + q] = D[i * d + q]! - ((fore[i]! - rate[i]!) * shift) / along
      }
    }
    const enter = (from: number, first: Int8Array, leaving?: ConductionMode): Stretch => {
      if (stretches.length > mostTurns)
        refuse({
          name: 'switching of the bridge',
          condition: `done within ${mostTurns} instants of one arc, still going on at angle`,
          value: from,
          unit: 'rad',
          code: 'no-convergence',
        })
      response.turn(from + δ)
      response.emfNow()
      const mode = choose(first, before, δ)
      const y0 = y.slice(0, mode.free)
      if (leaving !== undefined)
        for (let k = 0; k < n; k++) if (swaps(leaving.signs, mode.signs, k)) jump(k, mode)
      for (let j = 0; j < mode.free; j++)
        for (let q = 0; q < d; q++) {
          let sum = 0
          for (let i = 0; i < d; i++) sum += mode.WX[j * d + i]! * D[i * d + q]!
          Dy[j * d + q] = sum / (mode.ν[j]! + δ * (1 - mode.ν[j]!))
        }
      response.respond(mode)
      const s = { from, to: from, mode, start: from + δ, y0, p0: p.slice(0, mode.free) }
      stretches.push(s)
      return s
    }
    const leave = (s: Stretch, θ: number) => {
      const { mode } = s
      s.to = θ
      response.turn(θ)
      response.emfNow()
      response.currents(s, θ)
      before.set(x)
      response.rates(mode)
      fore.set(rate)
      const τ = Math.max(0, θ - s.start)
      D.fill(0)
      for (let j = 0; j < mode.free; j++) {
        const left = response.decay(mode, j, τ)
        for (let i = 0; i < d; i++)
          for (let q = 0; q < d; q++)
            D[i * d + q] = D[i * d + q]! + mode.W[i * mode.free + j]! * left * Dy[j * d + q]!
      }
    }

    const guess = new Int8Array(n)
    for (let k = 0; k < n; k++) {
      let sum = 0
      for (let i = 0; i < d; i++) sum += circuit.C[k * d + i]! * before[i]!
      guess[k] = response.flowing(sum) ? Math.sign(sum) : 0
    }
    let s = enter(0, diodes === undefined ? guess : withoutDeadEnds(guess, diodes))
    const h = span / steps
    const arc = { span, steps }
    // The last two angles looked at in this stretch, with the room found there.
    let a = s.start
    let fa = Number.NEGATIVE_INFINITY
    let b = s.start
    let fb = Number.NEGATIVE_INFINITY
    const turnAt = (instant: number) => {
      // Switching again at once means rounding decides: take longer implicit steps until it does not.
      δ = instant - s.start < 10 * δ ? 2 * δ : FIRST_STEP
      marginAt(s, instant)
      const first = mended(s.mode.signs)
      leave(s, instant)
      s = enter(instant, first, s.mode)
      a = s.start
      b = s.start
      fa = Number.NEGATIVE_INFINITY
      fb = Number.NEGATIVE_INFINITY
    }
    for (let i = 1; i <= steps; ) {
      const high = span * (i / steps)
      if (high <= s.start) {
        i++
        continue
      }
      const f = marginAtStep(s, i, arc)
      if (f < -SLACK) {
        turnAt(crossing(s, b, high))
        continue
      }
      if (fb < fa && fb < f) {
        // Room was least between the looks: the parabola through three of them says where it may have been passed.
        const bottom = b + ((h / 2) * (fa - f)) / (fa - 2 * fb + f)
        if (marginAt(s, bottom) < -SLACK) {
          turnAt(crossing(s, a, bottom))
          i = Math.max(1, Math.floor(s.start / h))
          continue
        }
      }
      a = b
      fa = fb
      b = high
      fb = f
      i++
    }
    leave(s, span)
    return stretches
  }

  return { march, response }
}
