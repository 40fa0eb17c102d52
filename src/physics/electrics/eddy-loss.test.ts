/** Checks eddy loss in strands and strips against the diffusion equation, finite elements and printed formulas. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import finite from '../../../test/reference/eddy/eddy.json' with { type: 'json' }
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import {
  EDDY_LOSS_DIAMETER_MOST,
  EDDY_LOSS_STRIP_MOST,
  eddyLossOfRate,
  skinDepth,
  strandEddyLoss,
  strandSkinShare,
} from './eddy-loss.ts'
import { roundSection, stripSection } from './strand-section.ts'

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

describe('source: sullivan2001, P = π l d⁴ ⟨(dB/dt)²⟩/(64 ρ) — kilowatts per cubic metre at 0.6 T peak, 30 Hz', () => {
  const printed = (d: number) =>
    (Math.PI * d ** 4 * ((ω * 0.6) ** 2 / 2)) / (64 * ρ) / ((Math.PI * d * d) / 4)
  for (const [d, loss] of [
    [0.8e-3, '14.8'],
    [1.6e-3, '59.4'],
  ] as const) {
    const strand = { angularFrequency: ω, fluxDensity: 0.6, diameter: d, resistivity: ρ }
    check(`${1000 * d} mm, the formula as printed`, printed(d) / 1000, loss)
    check(`${1000 * d} mm, ours`, strandEddyLoss(strand) / 1000, loss)
    test(`${1000 * d} mm, both alike`, () => expect(strandEddyLoss(strand) / printed(d)).toBeCloseTo(1, 12))
  }
})

describe('agrees: diffusion equation in a round conductor, Bessel functions', () => {
  const depth = skinDepth({ resistivity: ρ, angularFrequency: ω })
  test('thin strand', () => expect(exactShare((0.1e-3 * 1) / depth)).toBeCloseTo(1, 8))
  test('the closed form of the share is the integral of the current', () => {
    for (const x of [0.005, 0.3, 1, 2, 3.5, 5]) expect(strandSkinShare(x)).toBeCloseTo(exactShare(x), 8)
  })
  test('within 1 % at the end of the range stated, outside beyond twice that', () => {
    expect(exactShare(EDDY_LOSS_DIAMETER_MOST)).toBeGreaterThan(0.99)
    expect(exactShare(EDDY_LOSS_DIAMETER_MOST)).toBeLessThan(1)
    expect(exactShare(2 * EDDY_LOSS_DIAMETER_MOST)).toBeLessThan(0.95)
  })
})

describe('agrees: finite elements, conductors in a uniform alternating field', () => {
  const section = stripSection({ width: 4e-3, thickness: 1.5e-3, cornerRadius: 0.5e-3 })
  for (const { name, frequency_Hz, lossPerVolume_W_per_m3 } of finite.strands) {
    const angularFrequency = 2 * Math.PI * frequency_Hz
    const depth = skinDepth({ resistivity: ρ, angularFrequency })
    const rate = angularFrequency ** 2 / 2
    const { fine } = lossPerVolume_W_per_m3
    if (name.startsWith('round'))
      test(`${name}, d/δ = ${(2e-3 / depth).toFixed(1)}, with the skin effect`, () => {
        const strand = { angularFrequency, fluxDensity: 1, diameter: 2e-3, resistivity: ρ }
        expect((strandEddyLoss(strand) * strandSkinShare(2e-3 / depth)) / fine).toBeCloseTo(1, 2.5)
      })
    else {
      const across = name.includes('across')
      const ours = eddyLossOfRate({
        section,
        rateThickness: across ? rate : 0,
        rateWidth: across ? 0 : rate,
        resistivity: ρ,
      })
      const side = across ? 4e-3 : 1.5e-3
      test(`${name}, side over δ = ${(side / depth).toFixed(1)}: an upper bound, close up to the stated range`, () => {
        expect(ours / fine).toBeGreaterThan(0.999)
        if (side / depth <= EDDY_LOSS_STRIP_MOST * 1.01) expect(ours / fine).toBeLessThan(1.01)
      })
    }
  }
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
  test('goes with the squares of field, frequency and diameter', () => {
    const one = strandEddyLoss(strand)
    expect(strandEddyLoss({ ...strand, fluxDensity: 1.2 }) / one).toBeCloseTo(4, 12)
    expect(strandEddyLoss({ ...strand, angularFrequency: 3 * ω }) / one).toBeCloseTo(9, 12)
    expect(strandEddyLoss({ ...strand, diameter: 1.6e-3 }) / one).toBeCloseTo(4, 12)
  })
  test('four strands of half the diameter have the copper of one and a quarter of its loss', () => {
    const of = (d: number, n: number) => n * d * d * strandEddyLoss({ ...strand, diameter: d })
    expect(of(0.4e-3, 4) / of(0.8e-3, 1)).toBeCloseTo(0.25, 12)
  })
  test('directions add; a round section is alike in both; a steady field costs nothing', () => {
    const section = stripSection({ width: 4e-3, thickness: 1e-3, cornerRadius: 0 })
    const of = (rateThickness: number, rateWidth: number) =>
      eddyLossOfRate({ section, rateThickness, rateWidth, resistivity: ρ })
    expect(of(3, 5)).toBeCloseTo(of(3, 0) + of(0, 5), 12)
    // w²/t² apart
    expect(of(1, 0) / of(0, 1)).toBeCloseTo(16, 10)
    expect(of(0, 0)).toBe(0)
    const round = { section: roundSection(1e-3), resistivity: ρ }
    expect(eddyLossOfRate({ ...round, rateThickness: 2, rateWidth: 0 })).toBe(
      eddyLossOfRate({ ...round, rateThickness: 0, rateWidth: 2 }),
    )
  })
  test('the skin effect only takes away, more and more', () => {
    let before = 1
    for (let x = 0.05; x < 1e4; x *= 1.2) {
      const share = strandSkinShare(x)
      expect(share).toBeLessThanOrEqual(before + 1e-9)
      expect(share).toBeGreaterThan(0)
      before = share
    }
    // all current in the skin: 32 (δ/d)³ of the thin strand's loss
    expect(strandSkinShare(5000) / (32 / 5000 ** 3)).toBeCloseTo(1, 2)
  })
  test('depth falls with the root of frequency; refuses nothing to compute with', () => {
    const at = (angularFrequency: number) => skinDepth({ resistivity: ρ, angularFrequency })
    expect(at(4 * ω)).toBeCloseTo(at(ω) / 2, 12)
    expect(() => at(0)).toThrow('below-minimum')
    expect(() => strandEddyLoss({ ...strand, resistivity: 0 })).toThrow('below-minimum')
    expect(() =>
      eddyLossOfRate({ section: roundSection(1e-3), rateThickness: -1, rateWidth: 0, resistivity: ρ }),
    ).toThrow('below-minimum')
  })
})

describe('agrees: skin depth from the wave number of the diffusion equation', () => {
  test('|k|² = ω μ0/ρ, decay constant its root over √2', () => {
    const k = Math.sqrt((ω * 4e-7 * Math.PI) / ρ)
    expect(skinDepth({ resistivity: ρ, angularFrequency: ω }) * (k / Math.SQRT2)).toBeCloseTo(1, 12)
  })
})

describe('agrees: area and second moments of sections by counting a fine grid', () => {
  for (const [width, thickness, cornerRadius] of [
    [4e-3, 1.5e-3, 0.5e-3],
    [3e-3, 1e-3, 0.5e-3],
    [2e-3, 2e-3, 1e-3],
    [5e-3, 2e-3, 0],
  ] as const)
    test(`${1000 * width} × ${1000 * thickness} mm, r ${1000 * cornerRadius} mm`, () => {
      const n = 800
      let area = 0
      let xx = 0
      let yy = 0
      for (let i = 0; i < n; i++)
        for (let j = 0; j < n; j++) {
          const x = ((i + 0.5) / n) * (width / 2)
          const y = ((j + 0.5) / n) * (thickness / 2)
          const u = Math.max(0, x - (width / 2 - cornerRadius))
          const v = Math.max(0, y - (thickness / 2 - cornerRadius))
          if (Math.hypot(u, v) > cornerRadius && u > 0 && v > 0) continue
          area++
          xx += x * x
          yy += y * y
        }
      const ours = stripSection({ width, thickness, cornerRadius })
      expect(ours.area / ((area / n ** 2) * width * thickness)).toBeCloseTo(1, 3)
      expect(ours.meanSquareWidth / (xx / area)).toBeCloseTo(1, 3)
      expect(ours.meanSquareThickness / (yy / area)).toBeCloseTo(1, 3)
    })
})

describe('law: sections', () => {
  test('a strip with corners of half its sides is a wire', () => {
    const strip = stripSection({ width: 2e-3, thickness: 2e-3, cornerRadius: 1e-3 })
    const wire = roundSection(2e-3)
    expect(strip.area / wire.area).toBeCloseTo(1, 12)
    expect(strip.meanSquareWidth / wire.meanSquareWidth).toBeCloseTo(1, 10)
  })
  test('broken sections are refused', () => {
    expect(() => stripSection({ width: 2e-3, thickness: 1e-3, cornerRadius: 0.6e-3 })).toThrow(
      'above-maximum',
    )
    expect(() => roundSection(0)).toThrow('below-minimum')
  })
})
