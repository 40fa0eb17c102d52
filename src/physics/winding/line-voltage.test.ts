/** Checks of line volts in star and delta. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import type { FourierSeries } from '../../numerics/fourier.ts'
import { harmonicAmplitude, seriesDelayed, seriesScaled } from '../../numerics/fourier.ts'
import { deltaLineVoltage, starLineVoltage, starOfDelta } from './line-voltage.ts'

const pure: FourierSeries = { cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }
const rich: FourierSeries = {
  cos: Float64Array.of(0, 1, 0, 0.2, 0, 0.1),
  sin: Float64Array.of(0, 0.3, 0, 0, 0, 0),
}
const three = (f: FourierSeries) => [0, 1, 2].map((k) => seriesDelayed(f, (2 * Math.PI * k) / 3))

describe('law: star line volts are √3 of the phase; peak 14 V from 14/√6 V rms', () => {
  const phase = three(seriesScaled(pure, (14 / Math.sqrt(6)) * Math.SQRT2))
  check('peak between lines', starLineVoltage(phase).peak[0], '14.00')
  check('rms between lines', starLineVoltage(phase).rms[1], '9.899')
})

describe('law: star', () => {
  test('one phase reversed: two line volts equal the phase, one is √3 of it', () => {
    const [a, b, c] = three(pure)
    const { peak } = starLineVoltage([a, seriesScaled(b, -1), c])
    const sorted = [...peak].sort((x, y) => x - y)
    expect(sorted[0]).toBeCloseTo(1, 5)
    expect(sorted[1]).toBeCloseTo(1, 5)
    expect(sorted[2]).toBeCloseTo(Math.sqrt(3), 5)
  })
  test('order 3 is gone between the lines, order 5 grows by √3', () => {
    const { emf } = starLineVoltage(three(rich))
    for (const u of emf) {
      expect(harmonicAmplitude(u, 3)).toBeLessThan(1e-14)
      expect(harmonicAmplitude(u, 5)).toBeCloseTo(Math.sqrt(3) * 0.1, 12)
    }
  })
  test('the three line volts sum to zero', () => {
    const { emf } = starLineVoltage([pure, rich, seriesDelayed(rich, 1)])
    for (let h = 0; h < 6; h++)
      expect(Math.abs(emf.reduce((sum, u) => sum + (u.cos[h] ?? 0), 0))).toBeLessThan(1e-15)
  })
})

describe('law: delta and the star that stands for it', () => {
  const delta = {
    emf: three(pure),
    resistance: [3, 3, 3],
    inductance: [
      [6, -1.5, -1.5],
      [-1.5, 6, -1.5],
      [-1.5, -1.5, 6],
    ],
  }
  test('same line volts, a third of resistance and of L − M', () => {
    const star = starOfDelta(delta)
    const lines = starLineVoltage(star.emf)
    for (let k = 0; k < 3; k++) {
      expect(lines.emf[k].cos[1]).toBeCloseTo(delta.emf[k].cos[1], 12)
      expect(lines.emf[k].sin[1]).toBeCloseTo(delta.emf[k].sin[1], 12)
      expect(star.resistance[k]).toBeCloseTo(1, 12)
      for (let l = 0; l < 3; l++) expect(star.inductance[k][l]).toBeCloseTo(k === l ? 2.5 : 0, 12)
    }
    expect(deltaLineVoltage(delta.emf).rms[0]).toBeCloseTo(Math.SQRT1_2, 12)
  })
  test('agrees: unlike resistances, the same between every two lines in star and in delta', () => {
    const r = [1, 2, 5]
    const star = starOfDelta({ ...delta, resistance: r }).resistance
    for (let k = 0; k < 3; k++) {
      const direct = r[k]
      const round = r[(k + 1) % 3] + r[(k + 2) % 3]
      expect(star[k] + star[(k + 1) % 3]).toBeCloseTo((direct * round) / (direct + round), 12)
    }
  })
  test('lists that are not three long are refused', () => {
    expect(() => starLineVoltage([pure])).toThrow(/wrong-length/)
    expect(() => deltaLineVoltage([pure, pure])).toThrow(/wrong-length/)
    expect(() => starOfDelta({ ...delta, resistance: [0, 0, 0] })).toThrow(/below-minimum/)
  })
})
