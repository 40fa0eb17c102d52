/** Checks of bridges with single diodes open or shorted: against lines as valves, closed forms, and what must hold. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { diagonal, machine, phases, wave } from '../../../test/sample-rectifier.ts'
import type { Refusal } from '../../refusal/require.ts'
import { type DiodeFault, type RectifierInput, rectifierPoint } from './bridge-rectifier.ts'
import { diodeCircuit } from './diode-circuit.ts'
import { periodicSteadyState } from './periodic-steady-state.ts'
import { rectifierCircuit } from './rectifier-circuit.ts'

const fault = (
  kind: DiodeFault['kind'],
  line: number,
  side: DiodeFault['side'],
  end?: 'start' | 'finish',
): DiodeFault => ({ kind, line, side, ...(end === undefined ? {} : { end }) })
/** Next to nothing but the EMF, on a resistor, with ideal diodes: every closed form of a text book. */
const ideal = (change: Partial<RectifierInput>): RectifierInput =>
  machine({
    resistance: [1e-6, 1e-6, 1e-6],
    inductance: diagonal(3, 0),
    diode: { threshold: 0, slope: 0 },
    load: { kind: 'resistor', resistance: 1 },
    ...change,
  })
const idealSingle: Partial<RectifierInput> = {
  connection: 'single',
  emf: [wave([1], 0)],
  resistance: [1e-6],
  inductance: [[0]],
}

describe('source: mohan2003, chapter 5 — half-wave and full-wave means, 1/π and 2/π of the peak (from memory, not opened)', () => {
  const mean = (...diodeFaults: DiodeFault[]) =>
    rectifierPoint(ideal({ ...idealSingle, diodeFaults })).dcCurrent
  test('a bridge of one phase with a diode open is a half-wave rectifier', () => {
    expect(mean()).toBeCloseTo(2 / Math.PI, 5)
    for (const end of ['start', 'finish'] as const)
      for (const side of ['positive', 'negative'] as const)
        expect(mean(fault('open', 0, side, end))).toBeCloseTo(1 / Math.PI, 5)
  })
})

describe('agrees: closed form of an ideal three-phase bridge on a resistor', () => {
  const healthy = rectifierPoint(ideal({})).dcCurrent
  test('3√3/π of the peak when sound', () =>
    expect(healthy / 12).toBeCloseTo((3 * Math.sqrt(3)) / Math.PI, 4))
  // Over the third of the period in which the open diode's line is highest, the other two lines alone feed the load:
  // √3/(2π) in place of √3/π.
  for (const side of ['positive', 'negative'] as const)
    test(`five sixths of it with a ${side} diode open`, () => {
      const point = rectifierPoint(ideal({ diodeFaults: [fault('open', 1, side)] }))
      expect(point.dcCurrent / healthy).toBeCloseTo(5 / 6, 4)
    })
  test('both diodes of a line open leave a bridge of two lines, 2√3/π', () => {
    const point = rectifierPoint(
      ideal({ diodeFaults: [fault('open', 2, 'positive'), fault('open', 2, 'negative')] }),
    )
    expect(point.dcCurrent / 12).toBeCloseTo((2 * Math.sqrt(3)) / Math.PI, 4)
    expect(point.phaseCurrentRms[2]!).toBeLessThan(1e-9)
  })
})

describe('agrees: a phase shorted by one diode and its neighbour, resistive, in closed form', () => {
  // Each half period in which the EMF drives current against the shorted diode's direction it meets R and a diode alone.
  test('loss of a bridge of one phase on next to no load', () => {
    const [E, R] = [10, 0.5]
    const point = rectifierPoint(
      machine({
        connection: 'single',
        emf: [wave([E], 0)],
        resistance: [R],
        inductance: [[0]],
        diode: { threshold: 0, slope: 0 },
        load: { kind: 'resistor', resistance: 1e6 },
        diodeFaults: [fault('shorted', 0, 'positive', 'start')],
      }),
    )
    expect(point.power.winding).toBeCloseTo(E ** 2 / (4 * R), 3)
    expect(point.phaseCurrentMean[0]!).toBeCloseTo(-E / (Math.PI * R), 4)
  })
})

describe('agrees: valves that are diodes and valves that are lines, bridges all sound', () => {
  const sample: RectifierInput = machine({
    emf: [wave([20, 0, 2], 0), wave([18, 1, 1], 2), wave([21], 4.3)],
    resistance: [0.5, 0.6, 0.7],
    inductance: diagonal(3, 1.5e-3, -2e-4),
    lineResistance: 0.05,
    dcResistance: 0.1,
  })
  for (const connection of ['star', 'delta', 'separate', 'single'] as const)
    for (const load of [
      { kind: 'battery', voltage: 24, resistance: 0.05 },
      { kind: 'resistor', resistance: 3 },
    ] as const)
      test(`${connection} with a ${load.kind}: currents at every angle`, () => {
        const one = { emf: [wave([30, 2], 0)], resistance: [0.5], inductance: [[1.5e-3]] }
        const input = { ...sample, connection, load, ...(connection === 'single' ? one : {}) }
        const currents = (circuit: ReturnType<typeof rectifierCircuit>) => {
          const steady = periodicSteadyState(circuit)
          return (θ: number) => {
            const index = steady.stretches.findIndex(({ to }) => θ <= to)
            const { x } = steady.state(index, θ)
            return Array.from({ length: circuit.phases }, (_, k) =>
              x.reduce((sum, value, i) => sum + circuit.P[k * circuit.unknowns + i]! * value, 0),
            )
          }
        }
        const [lines, diodes] = [currents(rectifierCircuit(input)), currents(diodeCircuit(input))]
        for (let q = 0; q < 40; q++) {
          const θ = (Math.PI * (q + 0.5)) / 20
          if (θ > 2 * Math.PI) break
          const wanted = lines(θ)
          diodes(θ).forEach((i, k) => {
            expect(i).toBeCloseTo(wanted[k]!, 6)
          })
        }
      })
})

describe('law: any faults in any circuit', () => {
  const circuits = fc.record({
    connection: fc.constantFrom('star', 'delta', 'separate', 'single'),
    third: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    uneven: fc.array(fc.double({ min: 0.7, max: 1.3, noNaN: true }), { minLength: 3, maxLength: 3 }),
    XoverR: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 30, noNaN: true })),
    threshold: fc.double({ min: 0, max: 1, noNaN: true }),
    V: fc.double({ min: 0, max: 2, noNaN: true }),
    load: fc.constantFrom('battery', 'resistor', 'open'),
    faults: fc.array(
      fc.record({
        line: fc.nat(2),
        finish: fc.boolean(),
        side: fc.constantFrom('positive', 'negative'),
        kind: fc.constantFrom('open', 'open', 'shorted'),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  test('energy closes, sound diodes carry current forwards only, both rails carry the same', () => {
    fc.assert(
      fc.property(circuits, (c) => {
        const n = c.connection === 'single' ? 1 : 3
        const own = n === 1 || c.connection === 'separate'
        const E = 20
        const R = 0.7
        const seen = new Set<string>()
        const diodeFaults = c.faults.flatMap(({ line, finish, side, kind }): DiodeFault[] => {
          const one = fault(kind, line % n, side, own && finish ? 'finish' : undefined)
          const key = `${one.line} ${one.end} ${side}`
          if (seen.has(key)) return []
          seen.add(key)
          return [one]
        })
        const point = rectifierPoint({
          connection: c.connection as RectifierInput['connection'],
          emf: Array.from({ length: n }, (_, k) =>
            wave([E * c.uneven[k]!, 0, E * c.third], (2 * Math.PI * k) / n),
          ),
          frequency: 50,
          resistance: Array.from({ length: n }, (_, k) => R * c.uneven[k]!),
          inductance: diagonal(n, (R * c.XoverR) / (2 * Math.PI * 50)),
          lineResistance: 0.05,
          diode: { threshold: c.threshold, slope: 0.02 },
          dcResistance: 0.1,
          load:
            c.load === 'battery'
              ? { kind: 'battery', voltage: c.V * E, resistance: 0.05 }
              : c.load === 'resistor'
                ? { kind: 'resistor', resistance: 3 }
                : { kind: 'open' },
          diodeFaults,
        })
        for (const value of [
          point.dcCurrent,
          point.loadVoltage,
          point.torqueRipple,
          point.diodeReverseVoltagePeak,
          ...point.phaseCurrentRms,
          ...Object.values(point.power),
        ])
          expect(Number.isFinite(value)).toBe(true)
        const currentScale = E / R
        if (point.power.shaft > 1e-3 * E * currentScale) expect(point.residual).toBeLessThan(1e-3)
        const rail = { positive: 0, negative: 0 }
        for (const { current, currentRms, side, state, loss } of point.diodes) {
          rail[side] += current
          if (state === 'open') expect(currentRms).toBe(0)
          if (state === 'sound') expect(current).toBeGreaterThanOrEqual(-1e-6 * currentScale)
          expect(loss).toBeGreaterThanOrEqual(-1e-6 * currentScale)
        }
        expect(Math.abs(rail.positive - rail.negative)).toBeLessThan(1e-5 * currentScale)
        if (c.load !== 'open')
          expect(Math.abs(rail.positive - point.dcCurrent)).toBeLessThan(1e-5 * currentScale)
      }),
      { numRuns: 120, seed: 11 },
    )
  })
  test('mirror: a fault towards the other rail does the same, currents reversed', () => {
    for (const kind of ['open', 'shorted'] as const) {
      const [up, down] = (['positive', 'negative'] as const).map((side) =>
        rectifierPoint(machine({ emf: phases(3, [14]), diodeFaults: [fault(kind, 0, side)] })),
      )
      expect(down!.dcCurrent).toBeCloseTo(up!.dcCurrent, 6)
      expect(down!.power.shaft).toBeCloseTo(up!.power.shaft, 5)
      down!.phaseCurrentMean.forEach((mean, k) => {
        expect(mean).toBeCloseTo(-up!.phaseCurrentMean[k]!, 5)
      })
    }
  })
  test('one shorted diode does not discharge the battery; one on either side does', () => {
    const still = phases(3, [1e-3])
    const at = (...diodeFaults: DiodeFault[]) => rectifierPoint(machine({ emf: still, diodeFaults }))
    expect(Math.abs(at(fault('shorted', 0, 'positive')).dcCurrent)).toBeLessThan(1e-6)
    const both = at(fault('shorted', 0, 'positive'), fault('shorted', 1, 'negative'))
    expect(both.dcCurrent).toBeCloseTo(-12 / (0.6 + 0.6 + 0.02 + 0.02 + 0.02), 3)
  })
  test('a shorted diode brakes with the load disconnected; an open one does not', () => {
    const at = (kind: DiodeFault['kind']) =>
      rectifierPoint(machine({ load: { kind: 'open' }, diodeFaults: [fault(kind, 0, 'positive')] })).power
        .shaft
    expect(at('shorted')).toBeGreaterThan(10)
    expect(at('open')).toBeLessThan(0.01)
  })
})

describe('law: meaningless faults are refused', () => {
  const code = (...diodeFaults: unknown[]) => {
    try {
      rectifierPoint(machine({ diodeFaults: diodeFaults as DiodeFault[] }))
    } catch (error) {
      return (error as Refusal).code
    }
    return undefined
  }
  test('a line, side, kind or end that is not there, a diode named twice', () => {
    const sound = fault('open', 0, 'positive')
    expect(code(sound)).toBeUndefined()
    expect(code({ ...sound, line: 3 })).toBe('above-maximum')
    expect(code({ ...sound, line: 0.5 })).toBe('wrong-type')
    expect(code({ ...sound, side: 'left' })).toBe('not-a-choice')
    expect(code({ ...sound, kind: 'slow' })).toBe('not-a-choice')
    expect(code({ ...sound, end: 'finish' })).toBe('not-a-choice')
    expect(code(sound, { ...sound, kind: 'shorted' })).toBe('conflict')
  })
})
