/** Checks what any bridge rectifier must obey: energy, scaling, equivalence, order, refusals. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { diagonal, machine, phases, wave } from '../../../test/sample-rectifier.ts'
import { seriesScaled, seriesValue } from '../../numerics/fourier.ts'
import type { Refusal } from '../../refusal/require.ts'
import { type RectifierInput, rectifierPoint } from './bridge-rectifier.ts'
import { cutInPhaseVoltage } from './dc-voltage.ts'

describe('law: energy closes in random circuits', () => {
  const size = (least: number, most: number) =>
    fc.double({ min: 0, max: 1, noNaN: true }).map((u) => least * (most / least) ** u)
  const circuits = fc.record({
    connection: fc.constantFrom('star', 'delta', 'separate', 'single'),
    amplitudes: fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 0, maxLength: 6 }),
    uneven: fc.array(fc.double({ min: 0.7, max: 1.3, noNaN: true }), { minLength: 3, maxLength: 3 }),
    balanced: fc.boolean(),
    frequency: size(1, 300),
    R: size(1e-3, 30),
    XoverR: fc.oneof(fc.constant(0), size(1e-3, 1e3)),
    coupling: fc.double({ min: -0.45, max: 0.9, noNaN: true }),
    line: fc.oneof(fc.constant(0), size(1e-3, 1)),
    threshold: fc.double({ min: 0, max: 1, noNaN: true }),
    slope: fc.oneof(fc.constant(0), size(1e-4, 0.1)),
    dc: fc.oneof(fc.constant(0), size(1e-3, 1)),
    V: size(0.05, 1.6),
    battery: fc.boolean(),
    rload: size(1e-2, 1e3),
  })
  test('every number finite, residual below 0.1 % wherever current flows', () => {
    fc.assert(
      fc.property(circuits, (c) => {
        const n = c.connection === 'single' ? 1 : 3
        const E = 20
        const L = (c.R * c.XoverR) / (2 * Math.PI * c.frequency)
        const emf = Array.from({ length: n }, (_, k) =>
          seriesScaled(wave([1, ...c.amplitudes], (2 * Math.PI * k) / n), c.balanced ? E : E * c.uneven[k]!),
        )
        const point = rectifierPoint({
          connection: c.connection as RectifierInput['connection'],
          emf,
          frequency: c.frequency,
          resistance: Array.from({ length: n }, (_, k) => (c.balanced ? c.R : c.R * c.uneven[k]!)),
          inductance: diagonal(n, L, c.coupling * L),
          lineResistance: c.line * c.R,
          diode: { threshold: c.threshold, slope: c.slope },
          dcResistance: c.dc * c.R,
          load: c.battery
            ? { kind: 'battery', voltage: c.V * E, resistance: 0 }
            : { kind: 'resistor', resistance: c.rload * c.R },
        })
        for (const value of [
          point.dcCurrent,
          point.dcCurrentRms,
          point.loadVoltage,
          point.torqueRipple,
          point.diodeReverseVoltagePeak,
          ...point.phaseCurrentRms,
          ...point.lineCurrentRms,
          ...Object.values(point.power),
        ])
          expect(Number.isFinite(value)).toBe(true)
        // A current of a millionth of what the machine could drive is made of what large terms leave over.
        if (point.dcCurrent > (1e-6 * E) / (c.R * (1 + c.XoverR))) expect(point.residual).toBeLessThan(1e-3)
        expect(point.dcCurrentRms).toBeGreaterThanOrEqual(point.dcCurrent * (1 - 1e-9))
      }),
      { numRuns: 250 },
    )
  })
})

describe('law: scaling, equivalence, order', () => {
  test('k times the turns, k² the ohms and henries: the same watts at k times the volts', () => {
    const one = rectifierPoint(machine())
    for (const k of [0.1, 3, 1000]) {
      const many = rectifierPoint(
        machine({
          emf: phases(3, [12 * k]),
          resistance: [0.6 * k * k, 0.6 * k * k, 0.6 * k * k],
          inductance: diagonal(3, 1.5e-3 * k * k),
          diode: { threshold: 0.7 * k, slope: 0.02 * k * k },
          load: { kind: 'battery', voltage: 12 * k, resistance: 0.02 * k * k },
        }),
      )
      expect(many.power.load / one.power.load).toBeCloseTo(1, 8)
      expect((many.dcCurrent * k) / one.dcCurrent).toBeCloseTo(1, 8)
    }
  })
  test('a delta is a star of a third of the impedance and 1/√3 of the EMF', () => {
    const delta = rectifierPoint(
      machine({
        connection: 'delta',
        emf: phases(3, [12 * Math.sqrt(3)]),
        resistance: [1.8, 1.8, 1.8],
        inductance: diagonal(3, 4.5e-3),
        lineResistance: 0.1,
      }),
    )
    const star = rectifierPoint(machine({ lineResistance: 0.1 }))
    expect(delta.dcCurrent / star.dcCurrent).toBeCloseTo(1, 7)
    expect(delta.power.shaft / star.power.shaft).toBeCloseTo(1, 7)
    expect(delta.lineCurrentRms[0]! / star.lineCurrentRms[0]!).toBeCloseTo(1, 7)
  })
  test('balanced coupling M acts as L − M in a star', () => {
    const coupled = rectifierPoint(machine({ inductance: diagonal(3, 1.1e-3, -0.4e-3) }))
    expect(coupled.dcCurrent / rectifierPoint(machine()).dcCurrent).toBeCloseTo(1, 9)
  })
  test('a third harmonic in step leaves a star alone', () => {
    const third = rectifierPoint(machine({ emf: phases(3, [12, 0, 3]) }))
    expect(third.dcCurrent / rectifierPoint(machine()).dcCurrent).toBeCloseTo(1, 8)
  })
  test('the other phase sequence, shifted phases and the long way without symmetry give the same', () => {
    const wanted = rectifierPoint(machine()).dcCurrent
    const lags = (angles: readonly number[]) => angles.map((a) => wave([12], (a * Math.PI) / 180))
    for (const emf of [lags([0, 240, 120]), lags([17, 137, 257]), lags([0, 120, 240 + 1e-6])])
      expect(rectifierPoint(machine({ emf })).dcCurrent / wanted).toBeCloseTo(1, 6)
  })
  test('eight periods in the period given are the same as one', () => {
    const emf = [0, 1, 2].map((k) => {
      const amplitudes = new Array(8).fill(0)
      amplitudes[7] = 12
      return wave(amplitudes, (2 * Math.PI * k) / 24)
    })
    const point = rectifierPoint(machine({ emf, frequency: 45 / 8 }))
    expect(point.dcCurrent / rectifierPoint(machine()).dcCurrent).toBeCloseTo(1, 9)
  })
  test('DC current rises with speed', () => {
    for (const connection of ['star', 'delta', 'separate'] as const) {
      let last = 0
      for (let k = 0; k <= 30; k++) {
        const speed = 0.5 + k / 10
        const { dcCurrent } = rectifierPoint(
          machine({ connection, emf: phases(3, [12 * speed, 0, 0.8 * speed]), frequency: 45 * speed }),
        )
        expect(dcCurrent).toBeGreaterThanOrEqual(last)
        last = dcCurrent
      }
      expect(last).toBeGreaterThan(0)
    }
  })
  test('nothing flows below the cut-in voltage, something above', () => {
    for (const connection of ['star', 'delta', 'separate', 'single'] as const)
      fc.assert(
        fc.property(
          fc.double({ min: 0.1, max: 100, noNaN: true }),
          fc.double({ min: 0, max: 2, noNaN: true }),
          (voltage, threshold) => {
            const n = connection === 'single' ? 1 : 3
            const E = Math.SQRT2 * cutInPhaseVoltage({ connection, voltage: voltage + 2 * threshold })
            const at = (share: number) =>
              rectifierPoint(
                machine({
                  connection,
                  emf: phases(n, [E * share]),
                  resistance: new Array(n).fill(0.6),
                  inductance: diagonal(n, 1e-3),
                  diode: { threshold, slope: 0.01 },
                  load: { kind: 'battery', voltage, resistance: 0 },
                }),
              )
            expect(at(0.9999).dcCurrent).toBe(0)
            expect(at(0.9999).conduction).toBe('none')
            expect(at(1.01).dcCurrent).toBeGreaterThan(0)
            expect(at(1.01).conduction).not.toBe('none')
          },
        ),
        { numRuns: 20 },
      )
  })
})

describe('law: waveforms carry the same means', () => {
  for (const [title, input] of [
    ['balanced star', machine()],
    ['unbalanced star', machine({ emf: [wave([12], 0), wave([12, 1], 2.1), wave([10.8], 4.2)] })],
    ['delta', machine({ connection: 'delta', emf: phases(3, [24, 0, 2]) })],
    ['into a resistor', machine({ load: { kind: 'resistor', resistance: 3 } })],
    ['nothing connected', machine({ load: { kind: 'open' } })],
  ] as const)
    test(title, () => {
      const point = rectifierPoint(input, { samples: 3600 })
      const w = point.waveforms!
      const mean = (f: (k: number) => number) => w.angle.reduce((sum, _, k) => sum + f(k), 0) / 3600
      const { kind } = input.load
      expect(mean((k) => w.loadVoltage[k]!) / point.loadVoltage).toBeCloseTo(1, 5)
      if (kind !== 'open') {
        expect(mean((k) => w.dcCurrent[k]!) / point.dcCurrent).toBeCloseTo(1, 5)
        expect(mean((k) => w.power[k]!) / point.power.shaft).toBeCloseTo(1, 5)
        expect(mean((k) => w.phaseCurrent[1]![k]! ** 2) / point.phaseCurrentRms[1]! ** 2).toBeCloseTo(1, 5)
      }
      for (const k of [0, 700, 2500]) {
        expect(w.emf[2]![k]!).toBeCloseTo(seriesValue(input.emf[2]!, w.angle[k]!), 9)
        expect(w.lineVoltages).toHaveLength(3)
        // No line voltage exceeds the rails by more than two diodes.
        for (const line of kind === 'battery' ? w.lineVoltages : [])
          expect(Math.abs(line[k]!)).toBeLessThan(12 + 2 * 0.7 + 0.06 * w.dcCurrent[k]! + 1e-6)
        // Once round the terminals of a star is back at the first.
        if (input.connection === 'star')
          expect(w.lineVoltages.reduce((sum, line) => sum + line[k]!, 0)).toBeCloseTo(0, 8)
      }
      if (input.connection === 'star')
        for (const k of [3, 999, 2001])
          expect(w.phaseCurrent.reduce((sum, i) => sum + i[k]!, 0)).toBeCloseTo(0, 9)
    })
})

describe('law: far ends of the range stay finite', () => {
  for (const [title, change] of [
    ['R/X = 0.001', { resistance: [4e-4, 4e-4, 4e-4], diode: { threshold: 0, slope: 0 } }],
    ['R/X = 1000', { resistance: [400, 400, 400], emf: phases(3, [120]) }],
    ['microvolts', { emf: phases(3, [1e-6]), load: { kind: 'resistor', resistance: 1 } }],
    ['megavolts', { emf: phases(3, [1e6]) }],
    ['no EMF', { emf: phases(3, [0]) }],
    ['no load resistance', { load: { kind: 'resistor', resistance: 0 } }],
    ['0.01 Hz', { frequency: 0.01 }],
    ['100 kHz', { frequency: 1e5 }],
    ['one phase dead', { emf: [wave([12], 0), wave([12], 2), wave([0], 0)] }],
    ['one phase without inductance', { inductance: [[0, 0, 0], ...diagonal(3, 1e-3).slice(1)] }],
  ] as const)
    test(title, () => {
      const point = rectifierPoint(machine(change as Partial<RectifierInput>))
      for (const value of [point.dcCurrent, point.torqueRipple, ...Object.values(point.power)])
        expect(Number.isFinite(value)).toBe(true)
      expect(point.residual).toBeLessThan(1e-3)
    })
})

describe('law: meaningless input is refused', () => {
  const codeOf = (change: Partial<RectifierInput>) => {
    try {
      rectifierPoint(machine(change))
    } catch (error) {
      return (error as Refusal).code
    }
    return 'accepted'
  }
  for (const [change, code] of [
    [{ connection: 'zigzag' as 'star' }, 'not-a-choice'],
    [{ load: { kind: 'nothing' } as unknown as RectifierInput['load'] }, 'not-a-choice'],
    [{ emf: phases(1, [12]) }, 'wrong-length'],
    [{ resistance: [1, 1] }, 'wrong-length'],
    [{ resistance: [1, 1, -1] }, 'below-minimum'],
    [{ resistance: [1, 1, Number.NaN] }, 'not-finite'],
    [{ emf: phases(3, [Number.POSITIVE_INFINITY]) }, 'not-finite'],
    [{ frequency: 0 }, 'below-minimum'],
    [{ inductance: diagonal(3, 1e-3, 2e-3) }, 'conflict'],
    [
      {
        inductance: [
          [1, 0.5, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
      },
      'conflict',
    ],
    [{ load: { kind: 'battery', voltage: -12, resistance: 0 } }, 'below-minimum'],
    [{ resistance: [0, 0, 0], inductance: diagonal(3, 0), diode: { threshold: 0, slope: 0 } }, 'conflict'],
  ] as const)
    test(`${JSON.stringify(change).slice(0, 60)} → ${code}`, () =>
      expect(codeOf(change as Partial<RectifierInput>)).toBe(code))
})
