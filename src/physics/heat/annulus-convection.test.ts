/** Checks the heat across an annular gap against conduction, a rival correlation and the onset of vortices. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { annulusNusselt, annulusTaylorNumber, annulusTaylorRange } from './annulus-convection.ts'
import { shellConductance } from './conduction.ts'

describe('agrees: 0.21 (Ta Pr)^(1/4) over the gap (Tachibana, Fukui and Mitsumura 1960, from memory) within 10 %', () => {
  // that number is over the gap, ours over twice the gap; both are fits through scattered measurements of air
  for (const taylor of [1e4, 3e4, 1e5, 3e5, 1e6])
    check(`Ta = ${taylor}`, annulusNusselt(taylor), String(2 * 0.21 * (taylor * 0.71) ** 0.25), {
      relative: 0.1,
    })
})

describe('agrees: conduction through a tube of air below the first vortices', () => {
  for (const gap of [0.0005, 0.001, 0.002]) {
    const shell = shellConductance({ conductivity: 0.026, inner: 0.05, outer: 0.05 + gap, length: 0.06 })
    const area = 2 * Math.PI * (0.05 + gap / 2) * 0.06
    check(`${gap} m`, (annulusNusselt(500) * 0.026 * area) / (2 * gap), shell.toPrecision(4), {
      relative: 2e-4,
    })
  }
})

describe('law: onset and joints', () => {
  test('the vortices begin where theory has them, Ta = 1695 in the narrow gap (Taylor 1923)', () => {
    // Re √(δ/r) = 41.2 with Re = ω r δ/ν is the same statement: Ta = 41.2² = 1697
    const ν = 1.6e-5
    const δ = 1e-6
    const ω = (41.2 * ν) / (δ * Math.sqrt(δ))
    const taylor = annulusTaylorNumber({ speed: ω, innerRadius: 1, width: δ, kinematicViscosity: ν })
    expect(taylor).toBeCloseTo(41.2 ** 2, 1)
    expect(annulusNusselt(taylor)).toBe(2)
    expect(annulusNusselt(1.2 * annulusTaylorRange[0])).toBeGreaterThan(2)
  })
  test('never falls with speed, never jumps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e8, noNaN: true }), (taylor) => {
        const here = annulusNusselt(taylor)
        const next = annulusNusselt(taylor * 1.001)
        expect(next).toBeGreaterThanOrEqual(here)
        expect(next).toBeLessThan(here * 1.0005)
      }),
    )
  })
  test('refuses what is meaningless', () => {
    expect(() => annulusNusselt(-1)).toThrow(RangeError)
    expect(() => annulusNusselt(Number.NaN)).toThrow(RangeError)
    const gap = { speed: 1, innerRadius: 0.05, width: 0, kinematicViscosity: 1.6e-5 }
    expect(() => annulusTaylorNumber(gap)).toThrow(RangeError)
  })
})
