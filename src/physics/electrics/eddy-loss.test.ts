/** Checks eddy loss in strands against the diffusion equation. */
import { describe, expect, test } from 'vitest'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { EDDY_LOSS_DIAMETER_MOST, skinDepth, strandEddyLoss, strandEddyLossOfSeries } from './eddy-loss.ts'

const ρ = 1 / 58e6
const ω = 2 * Math.PI * 30

/** Σ (jq)^m / (m! (m + s)!) · s!: real and imaginary part; Bessel's J0 (s = 0) and J1 (s = 1) without the factor. */
function bessel(q: number, s: 0 | 1): readonly [number, number] {
  let term = 1
  let re = 0
  let im = 0
  for (let m = 0; m < 60; m++) {
    const turn = m % 4
    if (turn === 0) re += term
    if (turn === 1) im += term
    if (turn === 2) re -= term
    if (turn === 3) im -= term
    term *= q / ((m + 1) * (m + 1 + s))
  }
  return [re, im]
}

/** Loss of a round conductor in a field across it, all frequencies, over the low-frequency formula. */
function exactShare(diameterOverDepth: number): number {
  const qa = diameterOverDepth ** 2 / 8
  const [re, im] = bessel(qa, 0)
  const { nodes, weights } = gaussLegendreOn(40, 0, 1)
  const sum = nodes.reduce((total, r, k) => {
    const [a, b] = bessel(qa * r * r, 1)
    return total + weights[k]! * r ** 3 * (a * a + b * b)
  }, 0)
  return (4 * sum) / (re * re + im * im)
}

describe('agrees: diffusion equation in a round conductor, Bessel functions', () => {
  const depth = skinDepth({ resistivity: ρ, angularFrequency: ω })
  test('thin strand', () => expect(exactShare((0.1e-3 * 1) / depth)).toBeCloseTo(1, 8))
  test('within 1 % at the end of the range stated, outside beyond twice that', () => {
    expect(exactShare(EDDY_LOSS_DIAMETER_MOST)).toBeGreaterThan(0.99)
    expect(exactShare(EDDY_LOSS_DIAMETER_MOST)).toBeLessThan(1)
    expect(exactShare(2 * EDDY_LOSS_DIAMETER_MOST)).toBeLessThan(0.95)
  })
})

describe('agrees: J = ω B x/ρ squared and added over the section', () => {
  test('1.6 mm at 0.6 T, 30 Hz', () => {
    const a = 0.8e-3
    const { nodes, weights } = gaussLegendreOn(60, -Math.PI / 2, Math.PI / 2)
    // x = a sin φ, strip of height 2 a cos φ; mean of sin² in time is one half.
    const perLength = nodes.reduce((sum, φ, k) => {
      const J = (ω * 0.6 * a * Math.sin(φ)) / ρ
      return sum + weights[k]! * ((ρ * J * J) / 2) * 2 * (a * Math.cos(φ)) ** 2
    }, 0)
    const p = strandEddyLoss({ angularFrequency: ω, fluxDensity: 0.6, diameter: 2 * a, resistivity: ρ })
    expect(p / (perLength / (Math.PI * a * a))).toBeCloseTo(1, 10)
  })
})

describe('law: eddy loss', () => {
  const strand = { angularFrequency: ω, fluxDensity: 0.6, diameter: 0.8e-3, resistivity: ρ }
  test('0.6 T peak at 30 Hz: 14.8 kW/m³ in 0.8 mm, 59.4 kW/m³ in 1.6 mm', () => {
    expect(strandEddyLoss(strand) / 1000).toBeCloseTo(14.8, 1)
    expect(strandEddyLoss({ ...strand, diameter: 1.6e-3 }) / 1000).toBeCloseTo(59.4, 1)
  })
  test('harmonics and directions add as squares; a steady field costs nothing', () => {
    const series = { cos: Float64Array.of(5, 0.3, 0, 0.05), sin: Float64Array.of(0, 0.4, 0, 0) }
    const { diameter, resistivity, angularFrequency } = strand
    const each = (fluxDensity: number, h: number) =>
      strandEddyLoss({ ...strand, fluxDensity, angularFrequency: h * ω })
    const both = strandEddyLossOfSeries({
      components: [series, series],
      diameter,
      resistivity,
      angularFrequency,
    })
    expect(both / (2 * (each(0.5, 1) + each(0.05, 3)))).toBeCloseTo(1, 12)
  })
  test('depth falls with the root of frequency; refuses nothing to compute with', () => {
    const at = (angularFrequency: number) => skinDepth({ resistivity: ρ, angularFrequency })
    expect(at(4 * ω)).toBeCloseTo(at(ω) / 2, 12)
    expect(() => at(0)).toThrow('below-minimum')
    expect(() => strandEddyLoss({ ...strand, resistivity: 0 })).toThrow('below-minimum')
  })
})

describe('agrees: skin depth from the wave number of the diffusion equation', () => {
  test('|k|² = ω μ0/ρ, decay constant its root over √2', () => {
    const k = Math.sqrt((ω * 4e-7 * Math.PI) / ρ)
    expect(skinDepth({ resistivity: ρ, angularFrequency: ω }) * (k / Math.SQRT2)).toBeCloseTo(1, 12)
  })
})
