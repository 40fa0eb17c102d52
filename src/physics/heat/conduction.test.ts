/** Checks of conduction through layers and windings, and of radiation. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import {
  coatedWireConductivity,
  heatedSlabRise,
  shellConductance,
  slabConductance,
  windingConductivity,
} from './conduction.ts'
import { radiationCoefficient, radiationExchangeFactor } from './radiation.ts'

describe('source: cengel2015, example 9-4 — two panes of emissivity 0.9', () => {
  check('exchange factor', radiationExchangeFactor({ first: 0.9, second: 0.9 }), '0.818')
})

describe('agrees: radiation coefficient times difference, against the fourth powers', () => {
  test('black body at 350 K in 300 K', () => {
    const h = radiationCoefficient({ surface: 350, surroundings: 300, emissivity: 1 })
    expect(h * 50).toBeCloseTo(5.670374419e-8 * (350 ** 4 - 300 ** 4), 9)
  })
})

describe('law: radiation', () => {
  const kelvin = fc.double({ min: 1, max: 3000, noNaN: true })
  test('is symmetric in the two temperatures and 4 σ T³ where they meet', () =>
    fc.assert(
      fc.property(kelvin, kelvin, (a, b) => {
        const there = radiationCoefficient({ surface: a, surroundings: b, emissivity: 0.8 })
        const back = radiationCoefficient({ surface: b, surroundings: a, emissivity: 0.8 })
        expect(Math.abs(there / back - 1)).toBeLessThan(1e-14)
        const same = radiationCoefficient({ surface: a, surroundings: a, emissivity: 1 })
        expect(Math.abs(same / (4 * 5.670374419e-8 * a ** 3) - 1)).toBeLessThan(1e-12)
      }),
    ))
  test('exchange factor: a small body in a room keeps its own emissivity', () => {
    expect(radiationExchangeFactor({ first: 0.3, second: 0.7, areaRatio: 0 })).toBeCloseTo(0.3, 14)
    expect(() => radiationExchangeFactor({ first: 0, second: 1 })).toThrow('below-minimum')
    expect(() => radiationExchangeFactor({ first: 1.1, second: 1 })).toThrow('above-maximum')
    expect(() => radiationCoefficient({ surface: 0, surroundings: 300, emissivity: 1 })).toThrow(
      'below-minimum',
    )
  })
})

describe('agrees: shell cut into thin slabs, and coated wire as a coaxial pair of shells', () => {
  test('shell: 2000 rings in series', () => {
    const [inner, outer, n] = [0.01, 0.03, 2000]
    let resistance = 0
    for (let i = 0; i < n; i++) {
      const radius = inner + ((i + 0.5) * (outer - inner)) / n
      resistance +=
        1 /
        slabConductance({
          conductivity: 0.2,
          area: 2 * Math.PI * radius * 0.5,
          thickness: (outer - inner) / n,
        })
    }
    const closed = shellConductance({ conductivity: 0.2, inner, outer, length: 0.5 })
    expect(Math.abs(closed * resistance - 1)).toBeLessThan(1e-6)
  })
  test('coated wire: boundary values of the two-dimensional dipole', () => {
    // Potentials r cosθ: inside A r; coat B r + C/r; outside r + D/r. D = 0 when the outside has the equivalent conductivity.
    const [kw, kc, d, D] = [385, 0.26, 1, 1.062]
    const k = coatedWireConductivity({ conductivity: kw, coating: kc, diameter: d, outer: D })
    const a = d / 2
    const b = D / 2
    // From the inner boundary with A = 1: B + C/a² = 1, kc (B − C/a²) = kw.
    const B = (1 + kw / kc) / 2
    const C = ((1 - kw / kc) / 2) * a * a
    const potential = B + C / (b * b)
    const flux = kc * (B - C / (b * b))
    expect(Math.abs(flux / potential / k - 1)).toBeLessThan(1e-12)
  })
})

describe('agrees: winding across its wires, perrins1979 (square pattern, multipoles of higher order)', () => {
  const square = (f: number) =>
    1 + (2 * f) / (1 - f - (0.305827 * f ** 4) / (1 - 1.402958 * f ** 8) - 0.013362 * f ** 8)
  for (const [fill, within] of [
    [0.1, 0.0002],
    [0.3, 0.004],
    [0.5, 0.03],
    [0.6, 0.085],
  ] as const)
    test(`fill ${fill}: lower bound, within ${within}`, () => {
      const { across } = windingConductivity({ wire: 1e9, matrix: 1, fill, metal: 1e9, metalFill: fill })
      const ratio = across / square(fill)
      expect(ratio).toBeLessThan(1)
      expect(1 - ratio).toBeLessThan(within)
    })
})

describe('agrees: heated slab, finite differences over half of it', () => {
  test('mean and greatest rise', () => {
    const { mean, greatest } = heatedSlabRise({ heatDensity: 1e6, thickness: 0.012, conductivity: 0.6 })
    const n = 400
    const h = 0.012 / n
    // T_i by integrating the flux outward from the middle, where it is nought.
    let sum = 0
    for (let i = 0; i < n; i++) {
      const x = -0.006 + (i + 0.5) * h
      sum += (1e6 / (2 * 0.6)) * (0.006 ** 2 - x * x)
    }
    expect(Math.abs(sum / n / mean - 1)).toBeLessThan(1e-5)
    expect(greatest).toBeCloseTo((1e6 / (2 * 0.6)) * 0.006 ** 2, 9)
  })
})

describe('law: conduction', () => {
  test('a thin shell is a slab', () => {
    const shell = shellConductance({ conductivity: 1, inner: 1, outer: 1 + 1e-9, length: 1 })
    const slab = slabConductance({
      conductivity: 1,
      area: 2 * Math.PI * (1 + 0.5e-9),
      thickness: 1 + 1e-9 - 1,
    })
    expect(Math.abs(shell / slab - 1)).toBeLessThan(1e-12)
  })
  test('mixtures lie between series and parallel, and at the ends of the range', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (wire, matrix, fill) => {
          const { across, along } = windingConductivity({
            wire,
            matrix,
            fill,
            metal: 385,
            metalFill: fill / 2,
          })
          expect(across).toBeGreaterThanOrEqual((1 / (fill / wire + (1 - fill) / matrix)) * (1 - 1e-12))
          expect(across).toBeLessThanOrEqual((fill * wire + (1 - fill) * matrix) * (1 + 1e-12))
          expect(along).toBeGreaterThan(0)
        },
      ),
    ))
  test('ends', () => {
    const ends = (fill: number) =>
      windingConductivity({ wire: 4, matrix: 0.2, fill, metal: 385, metalFill: fill / 2 }).across
    expect(ends(0)).toBeCloseTo(0.2, 14)
    expect(ends(1)).toBeCloseTo(4, 12)
    expect(coatedWireConductivity({ conductivity: 385, coating: 0.2, diameter: 1, outer: 1 })).toBeCloseTo(
      385,
      9,
    )
    expect(heatedSlabRise({ heatDensity: 0, thickness: 0, conductivity: 1 }).greatest).toBe(0)
  })
  test('refusals', () => {
    expect(() => shellConductance({ conductivity: 1, inner: 1, outer: 1, length: 1 })).toThrow(
      'below-minimum',
    )
    expect(() => slabConductance({ conductivity: 1, area: 1, thickness: 0 })).toThrow('below-minimum')
    expect(() => coatedWireConductivity({ conductivity: 1, coating: 1, diameter: 2, outer: 1 })).toThrow(
      'below-minimum',
    )
    expect(() => windingConductivity({ wire: 1, matrix: 1, fill: 0.3, metal: 1, metalFill: 0.4 })).toThrow(
      'above-maximum',
    )
    expect(() => heatedSlabRise({ heatDensity: 1, thickness: 1, conductivity: 0 })).toThrow('below-minimum')
  })
})
