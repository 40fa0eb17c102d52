/** Checks of circulating currents in parallel branches and in a delta. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import type { FourierSeries } from '../../numerics/fourier.ts'
import { harmonicAmplitude, seriesDelayed, seriesRms, seriesScaled } from '../../numerics/fourier.ts'
import { branchCirculation, deltaCirculation, openCornerEmf } from './circulation.ts'

const pure: FourierSeries = { cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }
const withThird: FourierSeries = { cos: Float64Array.of(0, 1, 0, 0.1), sin: new Float64Array(4) }
const three = (f: FourierSeries) => [0, 1, 2].map((k) => seriesDelayed(f, (2 * Math.PI * k) / 3))
const none = (n: number) => Array.from({ length: n }, () => new Array<number>(n).fill(0))

describe('law: delta with third harmonic, E₃ = 0.1 E gives I = 3E₃/3R = 0.1 E/R', () => {
  const found = deltaCirculation({
    emf: three(withThird),
    resistance: [1, 1, 1],
    inductance: none(3),
    angularFrequency: 100,
  })
  check('amplitude of order 3', harmonicAmplitude(found.current[0], 3), '0.1')
})

describe('law: open corner of a delta', () => {
  test('nothing for three pure phases, three times the third harmonic else', () => {
    expect(seriesRms(openCornerEmf(three(pure)))).toBeLessThan(1e-15)
    expect(harmonicAmplitude(openCornerEmf(three(withThird)), 3)).toBeCloseTo(0.3, 12)
  })
  test('twice the phase with one phase reversed', () => {
    const [a, b, c] = three(pure)
    expect(harmonicAmplitude(openCornerEmf([a, seriesScaled(b, -1), c]), 1)).toBeCloseTo(2, 12)
  })
})

describe('law: closed delta', () => {
  const phases = {
    emf: three(withThird),
    resistance: [1, 1, 1],
    inductance: [
      [0.004, -0.001, -0.001],
      [-0.001, 0.004, -0.001],
      [-0.001, -0.001, 0.004],
    ],
    angularFrequency: 200,
  }
  const found = deltaCirculation(phases)
  test('I₃ = E₃/|Z₃| with the inductance of the whole loop', () => {
    // loop of 3 × (4 − 1 − 1) mH = 6 mH, a third of it per phase at 3 × 200 rad/s
    expect(harmonicAmplitude(found.current[0], 3)).toBeCloseTo(0.1 / Math.hypot(1, 3 * 200 * 0.002), 12)
  })
  test('alike phases lose their third harmonic wholly and keep the fundamental; the three volts sum to zero', () => {
    for (const u of found.terminal) {
      expect(harmonicAmplitude(u, 3)).toBeLessThan(1e-12)
      expect(harmonicAmplitude(u, 1)).toBeCloseTo(1, 12)
    }
    expect(seriesRms(openCornerEmf(found.terminal))).toBeLessThan(1e-12)
  })
  test('the loop may be seen as one branch shorted: volts sum to zero with unlike phases too', () => {
    const odd = deltaCirculation({
      ...phases,
      emf: [withThird, ...three(pure).slice(1)],
      resistance: [1, 2, 0.5],
    })
    expect(seriesRms(openCornerEmf(odd.terminal))).toBeLessThan(1e-12)
    expect(odd.loss).toBeCloseTo(odd.currentRms[0] ** 2 * 3.5, 12)
  })
})

describe('law: parallel branches', () => {
  test('alike branches carry nothing', () => {
    const found = branchCirculation({
      emf: [withThird, withThird],
      resistance: [1, 2],
      inductance: none(2),
      angularFrequency: 10,
    })
    expect(found.currentRms[0]).toBeLessThan(1e-14)
    expect(found.terminal[0].cos[3]).toBeCloseTo(0.1, 12)
  })
  test('two branches: ΔE/(Σ R), with reactance ΔE/|Σ Z|, coupling included', () => {
    const run = (inductance: number[][]) =>
      branchCirculation({
        emf: [pure, seriesScaled(pure, 0.9)],
        resistance: [0.3, 0.2],
        inductance,
        angularFrequency: 50,
      })
    expect(harmonicAmplitude(run(none(2)).current[0], 1)).toBeCloseTo(0.1 / 0.5, 12)
    const coupled = run([
      [0.01, 0.004],
      [0.004, 0.01],
    ])
    expect(harmonicAmplitude(coupled.current[0], 1)).toBeCloseTo(0.1 / Math.hypot(0.5, 50 * 0.012), 12)
  })
  test('currents sum to zero and every branch shows the same volts', () => {
    const emf = [pure, seriesDelayed(pure, 0.3), seriesScaled(withThird, 1.1), seriesDelayed(withThird, -0.2)]
    const found = branchCirculation({
      emf,
      resistance: [1, 0.5, 2, 0.1],
      inductance: none(4).map((row, i) => row.map((_, k) => (i === k ? 0.01 : 0.001))),
      angularFrequency: 100,
    })
    for (const h of [1, 3]) {
      expect(Math.abs(found.current.reduce((sum, i) => sum + i.cos[h], 0))).toBeLessThan(1e-12)
      expect(Math.abs(found.current.reduce((sum, i) => sum + i.sin[h], 0))).toBeLessThan(1e-12)
    }
    // power balance at open terminals: what the EMFs give is the copper loss
    let given = 0
    emf.forEach((e, b) => {
      for (let h = 1; h < e.cos.length; h++)
        given += (e.cos[h] * found.current[b].cos[h] + e.sin[h] * found.current[b].sin[h]) / 2
    })
    expect(given).toBeCloseTo(found.loss, 12)
  })
  test('agrees: two branches and a delta of two phases are the same loop', () => {
    const emf = [seriesDelayed(withThird, 0.7), seriesDelayed(pure, -0.4)]
    const rest = {
      resistance: [0.3, 0.2],
      inductance: [
        [0.01, 0.004],
        [0.004, 0.02],
      ],
      angularFrequency: 50,
    }
    const parallel = branchCirculation({ ...rest, emf })
    // in a delta both phases point round the loop: the second branch is turned over
    const loop = deltaCirculation({
      ...rest,
      emf: [emf[0], seriesScaled(emf[1], -1)],
      inductance: [
        [0.01, -0.004],
        [-0.004, 0.02],
      ],
    })
    for (const h of [1, 3]) {
      expect(loop.current[0].cos[h]).toBeCloseTo(parallel.current[0].cos[h], 12)
      expect(loop.current[0].sin[h]).toBeCloseTo(parallel.current[0].sin[h], 12)
    }
  })
  test('broken branches are refused', () => {
    const good = { emf: [pure, pure], resistance: [1, 1], inductance: none(2), angularFrequency: 1 }
    expect(() => branchCirculation({ ...good, emf: [] })).toThrow(/wrong-length/)
    expect(() => branchCirculation({ ...good, resistance: [1, 0] })).toThrow(/below-minimum/)
    expect(() => deltaCirculation({ ...good, inductance: none(3) })).toThrow(/wrong-length/)
    expect(() => deltaCirculation({ ...good, angularFrequency: Number.NaN })).toThrow(/not-finite/)
  })
})
