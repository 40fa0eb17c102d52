/** Checks of coils joined to phases: phasor sums, sharing, inductance. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import type { FourierSeries } from '../../numerics/fourier.ts'
import { harmonicAmplitude, seriesDelayed, seriesRms } from '../../numerics/fourier.ts'
import type { CoilInSeries, WoundCoils } from './connection.ts'
import { connectPhases, inStepRatio } from './connection.ts'
import { phaseBelts, starOfSlots } from './star-of-slots.ts'

/** Fundamental 10, third 2, fifth 1 as cosines. */
const shape: FourierSeries = { cos: Float64Array.of(0, 10, 0, 2, 0, 1), sin: new Float64Array(6) }
const alike = (emf: readonly FourierSeries[], mutual = 0): WoundCoils => ({
  emf,
  resistance: emf.map(() => 2),
  inductance: emf.map((_, i) => emf.map((__, k) => (i === k ? 1 : mutual))),
})
const string = (senses: readonly (1 | -1)[]): CoilInSeries[] => senses.map((sense, coil) => ({ coil, sense }))

describe('law: one of n coils in series reversed leaves (n − 2)/n', () => {
  const rows = [
    [2, '0.00'],
    [3, '0.33'],
    [4, '0.50'],
    [6, '0.67'],
  ] as const
  for (const [n, printed] of rows) {
    const senses = Array.from({ length: n }, (_, k) => (k === 1 ? (-1 as const) : (1 as const)))
    const { emf } = connectPhases(alike(senses.map(() => shape)), [{ branches: [string(senses)] }])
    check(`n = ${n}`, seriesRms(emf[0]) / (n * seriesRms(shape)), printed)
  }
})

describe('agrees: series strings by star of slots and by waveforms summed', () => {
  for (const [coils, polePairs] of [
    [9, 4],
    [12, 5],
    [9, 6],
  ])
    test(`${coils} coils on ${2 * polePairs} poles`, () => {
      const belts = phaseBelts({ coilCount: coils, polePairs, phaseCount: 3 })
      const emf = belts.map((belt) => seriesDelayed(shape, belt.electricalAngle))
      const phases = [0, 1, 2].map((phase) => ({
        branches: [
          belts.flatMap((belt, coil) => (belt.phase === phase ? [{ coil, sense: belt.sense }] : [])),
        ],
      }))
      const made = connectPhases(alike(emf), phases)
      const star = starOfSlots({ coils, polePairs })
      const distribution = star.windingFactor / star.pitchFactor
      for (let k = 0; k < 3; k++) {
        expect(harmonicAmplitude(made.emf[k], 1)).toBeCloseTo((distribution * 10 * coils) / 3, 10)
        expect(made.branches[k][0].inStepRatio[1]).toBeCloseTo(distribution, 12)
        expect(made.resistance[k]).toBeCloseTo((2 * coils) / 3, 12)
      }
    })
})

describe('law: series and parallel', () => {
  test('three in series in step: three times volts and resistance, nine times a common flux', () => {
    const { emf, resistance, inductance, branches } = connectPhases(alike([shape, shape, shape], 1), [
      { branches: [string([1, 1, 1])] },
    ])
    expect(emf[0].cos[1]).toBeCloseTo(30, 12)
    expect(resistance[0]).toBeCloseTo(6, 12)
    expect(inductance[0][0]).toBeCloseTo(9, 12)
    expect(branches[0][0].inStepRatio[3]).toBeCloseTo(1, 12)
  })
  test('coils 120° apart in series cancel order 1 and keep order 3 whole', () => {
    const apart = [0, 1, 2].map((k) => seriesDelayed(shape, (2 * Math.PI * k) / 3))
    const ratio = inStepRatio(apart)
    expect(ratio[1]).toBeLessThan(1e-12)
    expect(ratio[3]).toBeCloseTo(1, 12)
    expect(ratio[2]).toBe(1)
  })
  test('alike branches in parallel: same volts, resistance and inductance divided by their number', () => {
    const { emf, resistance, inductance, branches } = connectPhases(alike([shape, shape, shape, shape]), [
      {
        branches: [
          [
            { coil: 0, sense: 1 },
            { coil: 1, sense: 1 },
          ],
          [
            { coil: 2, sense: 1 },
            { coil: 3, sense: 1 },
          ],
        ],
      },
    ])
    expect(emf[0].cos[1]).toBeCloseTo(20, 12)
    expect(resistance[0]).toBeCloseTo(2, 12)
    expect(inductance[0][0]).toBeCloseTo(1, 12)
    expect(branches[0].map((branch) => branch.share)).toEqual([0.5, 0.5])
  })
  test('unlike branches share by conductance (Millman)', () => {
    const coils: WoundCoils = {
      ...alike([shape, { ...shape, cos: shape.cos.map((a) => 2 * a) }]),
      resistance: [1, 3],
    }
    const { emf, resistance } = connectPhases(coils, [
      { branches: [[{ coil: 0, sense: 1 }], [{ coil: 1, sense: 1 }]] },
    ])
    expect(emf[0].cos[1]).toBeCloseTo((10 / 1 + 20 / 3) / (1 + 1 / 3), 12)
    expect(resistance[0]).toBeCloseTo(0.75, 12)
  })
  test('a reversed coil turns the sign of its mutual inductances; the matrix stays symmetric', () => {
    const coils = alike([shape, shape, shape], 0.25)
    const { inductance } = connectPhases(coils, [
      { branches: [string([1, -1])] },
      { branches: [[{ coil: 2, sense: -1 }]] },
    ])
    expect(inductance[0][0]).toBeCloseTo(2 - 0.5, 12)
    expect(inductance[0][1]).toBeCloseTo(0, 12)
    expect(inductance[1][0]).toBe(inductance[0][1])
  })
  test('series of unlike length are taken as zero beyond their end', () => {
    const short: FourierSeries = { cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }
    expect(connectPhases(alike([short, shape]), [{ branches: [string([1, 1])] }]).emf[0].cos[5]).toBe(1)
  })
  test('wiring that makes no sense is refused', () => {
    const coils = alike([shape, shape])
    expect(() => connectPhases(coils, [{ branches: [string([1, 1]), string([1])] }])).toThrow(/conflict/)
    expect(() => connectPhases(coils, [{ branches: [[{ coil: 2, sense: 1 }]] }])).toThrow(/not-a-choice/)
    expect(() => connectPhases(coils, [{ branches: [] }])).toThrow(/wrong-length/)
    expect(() => connectPhases({ ...coils, resistance: [1, 0] }, [{ branches: [string([1])] }])).toThrow(
      /below-minimum/,
    )
    expect(() => connectPhases({ ...coils, inductance: [[1]] }, [{ branches: [string([1])] }])).toThrow(
      /wrong-length/,
    )
  })
})
