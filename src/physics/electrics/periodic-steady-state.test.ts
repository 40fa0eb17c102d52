/** Checks modes, their sequence and the periodic solution against the circuit equations. */
import { describe, expect, test } from 'vitest'
import { conductionMode } from './conduction-mode.ts'
import { CONSTANT_VOLTAGE_RATIO_MOST } from './constant-voltage-bridge.ts'
import { modeResponse } from './mode-response.ts'
import { modeSequence } from './mode-sequence.ts'
import { periodicSteadyState } from './periodic-steady-state.ts'
import { type RectifierInput, rectifierCircuit } from './rectifier-circuit.ts'

const sine = (E: number, lag: number) => ({
  cos: Float64Array.of(0, -E * Math.sin(lag)),
  sin: Float64Array.of(0, E * Math.cos(lag)),
})
const three = (E: number, low = 1) => [0, 1, 2].map((k) => sine(k === 2 ? E * low : E, (2 * Math.PI * k) / 3))
const input = (change: Partial<RectifierInput> = {}): RectifierInput => ({
  connection: 'star',
  emf: three(20),
  frequency: 50,
  resistance: [0.5, 0.6, 0.7],
  inductance: [
    [2e-3, -3e-4, -2e-4],
    [-3e-4, 2e-3, -1e-4],
    [-2e-4, -1e-4, 1e-3],
  ],
  lineResistance: 0.05,
  diode: { threshold: 0.7, slope: 0.02 },
  dcResistance: 0.1,
  load: { kind: 'battery', voltage: 12, resistance: 0.05 },
  ...change,
})

describe('agrees: two conducting lines as one loop of phasors', () => {
  const circuit = rectifierCircuit(input())
  const mode = conductionMode(circuit, Int8Array.of(1, -1, 0))
  const R = 0.5 + 0.6 + 2 * 0.05 + 2 * 0.02 + 0.1 + 0.05
  const X = 2 * Math.PI * 50 * (4e-3 + 6e-4)
  test('loop resistance and reactance', () => {
    const w = mode.CW[0]!
    expect(mode.free).toBe(1)
    expect(mode.ν[0]! / w ** 2).toBeCloseTo(X, 9)
    expect((1 - mode.ν[0]!) / w ** 2).toBeCloseTo(R, 9)
    expect(-mode.push[0]! / w).toBeCloseTo(12 + 1.4, 9)
  })
  test('response to the line voltage', () => {
    const response = modeResponse(circuit)
    response.turn(0.4)
    response.respond(mode)
    const i = (response.p[0]! * mode.CW[0]!).valueOf()
    // e_a − e_b = √3 E sin(θ + 30°)
    const peak = (20 * Math.sqrt(3)) / Math.hypot(R, X)
    expect(i).toBeCloseTo(peak * Math.sin(0.4 + Math.PI / 6 - Math.atan2(X, R)), 9)
  })
})

describe('law: the equations hold at every angle of the solution', () => {
  for (const [title, change] of [
    ['star', {}],
    ['delta', { connection: 'delta', emf: three(20, 0.9) }],
    ['separate', { connection: 'separate', load: { kind: 'resistor', resistance: 3 } }],
    ['star, barely conducting', { emf: three(7.9) }],
  ] as const)
    test(title, () => {
      const circuit = rectifierCircuit(input(change as Partial<RectifierInput>))
      const { unknowns: d, phases: n, X, K, C, P } = circuit
      const steady = periodicSteadyState(circuit)
      expect(steady.stretches[0]!.from).toBe(0)
      expect(steady.stretches[steady.stretches.length - 1]!.to).toBeCloseTo(steady.span, 12)
      steady.stretches.forEach(({ from, to, mode }, index) => {
        for (const share of [0.1, 0.5, 0.9]) {
          const { x, rate, line, emf } = steady.state(index, from + share * (to - from))
          const total = line.reduce((sum, c) => sum + Math.abs(c), 0)
          const limit = circuit.barrier + circuit.dcCoupling * total
          // Power of what is left over for the bridge: v·c with |v| = limit in conducting lines.
          let work = 0
          for (let i = 0; i < d; i++) {
            let r = 0
            for (let k = 0; k < n; k++) r += P[k * d + i]! * emf[k]!
            for (let l = 0; l < d; l++) r -= X[i * d + l]! * rate[l]! + K[i * d + l]! * x[l]!
            work += r * x[i]!
          }
          expect(work).toBeCloseTo(limit * total, 7)
          for (let k = 0; k < n; k++) {
            let c = 0
            for (let i = 0; i < d; i++) c += C[k * d + i]! * x[i]!
            expect(line[k]!).toBeCloseTo(c, 9)
            expect(mode.signs[k]! * line[k]!).toBeGreaterThanOrEqual(-1e-9)
          }
        }
        const next = steady.stretches[index + 1]
        if (next === undefined) return
        const end = Float64Array.from(steady.state(index, to).x)
        const start = steady.state(index + 1, next.from).x
        for (let i = 0; i < d; i++) expect(start[i]!).toBeCloseTo(end[i]!, 3)
      })
      expect(steady.seam).toBeLessThan(1e-8)
      expect(steady.rounds).toBeLessThan(20)
    })
})

describe('agrees: derivative carried along and finite differences', () => {
  test('unbalanced star over a period', () => {
    const circuit = rectifierCircuit(input({ emf: three(20, 0.8) }))
    const { march, response } = modeSequence(circuit)
    const image = (x0: readonly number[], D = new Float64Array(4)) => {
      const arcs = march(Float64Array.from(x0), 2 * Math.PI, 180, D)
      return Float64Array.from(response.stateAt(arcs[arcs.length - 1]!, 2 * Math.PI).x)
    }
    const x0 = [-1, -6]
    const D = Float64Array.of(1, 0, 0, 1)
    image(x0, D)
    const h = 1e-4
    for (let q = 0; q < 2; q++) {
      const up = image(x0.map((v, i) => (i === q ? v + h : v)))
      const down = image(x0.map((v, i) => (i === q ? v - h : v)))
      for (let i = 0; i < 2; i++) expect(D[i * 2 + q]!).toBeCloseTo((up[i]! - down[i]!) / (2 * h), 3)
    }
  })
})

describe('agrees: small implicit steps over many periods', () => {
  test('single phase into a battery', () => {
    const one = input({
      connection: 'single',
      emf: [sine(25, 0)],
      resistance: [0.5],
      inductance: [[1.5e-3]],
    })
    const circuit = rectifierCircuit(one)
    const steady = periodicSteadyState(circuit)
    const steps = 100_000
    const h = 1 / 50 / steps
    const R = 0.5 + 0.05 + 2 * 0.02 + 0.15
    let i = 0
    for (let k = 1; k <= 3 * steps; k++) {
      const drive = (1.5e-3 * i) / h + 25 * Math.sin((2 * Math.PI * k) / steps)
      i = (Math.sign(drive) * Math.max(0, Math.abs(drive) - 13.4)) / (1.5e-3 / h + R)
      const θ = (2 * Math.PI * (k - 2 * steps)) / steps
      if (k <= 2 * steps || k > 2.5 * steps || k % 5000 !== 0) continue
      const index = steady.stretches.findIndex((arc) => θ <= arc.to)
      expect(steady.state(index, θ).x[0]!).toBeCloseTo(i, 2)
    }
  })
})

describe('agrees: end of conduction by all three lines, found in the modes and in closed form', () => {
  const all = (Vo: number) =>
    periodicSteadyState(
      rectifierCircuit({
        ...input(),
        emf: three(1),
        frequency: 1 / (2 * Math.PI),
        resistance: [0, 0, 0],
        inductance: [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1 : 0))),
        lineResistance: 0,
        diode: { threshold: 0, slope: 0 },
        dcResistance: 0,
        load: { kind: 'battery', voltage: Vo, resistance: 0 },
      }),
    ).stretches.every(({ mode }) => mode.blocked.length === 0)
  test('9/√(4π² + 9) to 1e-4', () => {
    expect(all(CONSTANT_VOLTAGE_RATIO_MOST - 1e-4)).toBe(true)
    expect(all(CONSTANT_VOLTAGE_RATIO_MOST + 1e-4)).toBe(false)
  })
})

describe('law: reduction of the network', () => {
  test('symmetry is found where it is and nowhere else', () => {
    const even = {
      resistance: [1, 1, 1],
      inductance: [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1e-3 : 0))),
    }
    expect(rectifierCircuit(input(even)).symmetry).toEqual({ parts: 6, shift: 1 })
    expect(rectifierCircuit(input()).symmetry).toEqual({ parts: 2, shift: 0 })
    expect(rectifierCircuit(input({ ...even, emf: three(20, 0.999999) })).symmetry.parts).toBe(2)
    const second = { cos: Float64Array.of(0, 0, 1), sin: Float64Array.of(0, 5, 0) }
    expect(rectifierCircuit(input({ ...even, emf: [second, ...three(5).slice(1)] })).symmetry.parts).toBe(1)
  })
  test('star currents sum to zero, delta lines too', () => {
    for (const connection of ['star', 'delta'] as const) {
      const { C, phases, unknowns } = rectifierCircuit(input({ connection }))
      for (let j = 0; j < unknowns; j++) {
        let sum = 0
        for (let k = 0; k < phases; k++) sum += C[k * unknowns + j]!
        expect(sum).toBe(0)
      }
    }
  })
})
