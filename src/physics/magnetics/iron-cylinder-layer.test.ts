/** Checks of the closed form of a long layered drum against integrals over its magnetic charge. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { type LayeredDrum, layeredDrumFluxDensity } from './iron-cylinder-layer.ts'

const drum: LayeredDrum = {
  coreRadius: 0.0475,
  magnetRadius: 0.0525,
  boreRadius: 0.062,
  remanence: 1.3,
  recoilPermeability: 1,
  polePairs: 6,
  poleArc: 0.6,
}

/** Harmonics from line charges between ideal iron: faces ± J, volume −J/r′. */
function fromCharge(
  { coreRadius: a, magnetRadius: b, boreRadius: c = 1e4, ...rest }: LayeredDrum,
  n: number,
  r: number,
) {
  const m = n * rest.polePairs
  const J = ((4 * rest.remanence) / (n * Math.PI)) * Math.sin((n * Math.PI * rest.poleArc) / 2)
  const S = (x: number) => (x / a) ** m - (a / x) ** m
  const { nodes, weights } = gaussLegendreOn(24, a, b)
  let charge = b * S(b)
  for (let i = 0; i < 24; i++) charge -= weights[i]! * S(nodes[i]!)
  const share = (J * charge) / (2 * m * ((c / a) ** m - (a / c) ** m))
  return {
    normal: ((share * m) / r) * ((c / r) ** m + (r / c) ** m),
    tangential: ((share * m) / r) * ((c / r) ** m - (r / c) ** m),
  }
}

describe('agrees: line charges between two ideal cylinders', () => {
  for (const polePairs of [1, 2, 6, 20])
    for (const n of [1, 3, 5])
      for (const bore of [0.062, undefined])
        test(`p ${polePairs}, order ${n}, bore ${bore ?? 'none'}`, () => {
          const { boreRadius: _, ...open } = drum
          const one = { ...(bore === undefined ? open : drum), polePairs }
          if (bore === undefined && n * polePairs > 30) return
          for (const r of [0.0525, 0.0575, 0.06]) {
            const found = layeredDrumFluxDensity(one, n, r)
            const wanted = fromCharge(one, n, r)
            expect(Math.abs(found.normal - wanted.normal)).toBeLessThan(2e-8)
            expect(Math.abs(found.tangential - wanted.tangential)).toBeLessThan(2e-8)
          }
        })
})

describe('law: a long layered drum', () => {
  test('field stands square on the bore, even orders are none', () => {
    for (const n of [1, 3, 5]) expect(layeredDrumFluxDensity(drum, n, 0.062).tangential).toBeCloseTo(0, 12)
    expect(layeredDrumFluxDensity(drum, 2, 0.06)).toEqual({ normal: 0, tangential: 0 })
  })
  test('recoil permeability weakens the field, least where the gap is least', () => {
    const share = (boreRadius: number) => {
      const one = { ...drum, boreRadius }
      return (
        layeredDrumFluxDensity({ ...one, recoilPermeability: 1.1 }, 1, 0.0527).normal /
        layeredDrumFluxDensity(one, 1, 0.0527).normal
      )
    }
    expect(share(0.062)).toBeLessThan(1)
    expect(share(0.062)).toBeLessThan(share(0.053))
  })
  test('any drum gives numbers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 0, max: 12 }),
        (polePairs, core, gap, poleArc, half) => {
          const one = { ...drum, coreRadius: core, magnetRadius: 1, boreRadius: 1 + gap, polePairs, poleArc }
          const { normal, tangential } = layeredDrumFluxDensity(one, 2 * half + 1, 1 + gap / 2)
          expect(Number.isFinite(normal) && Number.isFinite(tangential)).toBe(true)
        },
      ),
    )
  })
  test('meaningless input is refused', () => {
    expect(() => layeredDrumFluxDensity({ ...drum, boreRadius: 0.05 }, 1, 0.06)).toThrow(RangeError)
    expect(() => layeredDrumFluxDensity({ ...drum, coreRadius: 0.06 }, 1, 0.06)).toThrow(RangeError)
    expect(() => layeredDrumFluxDensity({ ...drum, poleArc: 1.1 }, 1, 0.06)).toThrow('at most 1')
    expect(() => layeredDrumFluxDensity(drum, 0.5, 0.06)).toThrow('whole number')
    expect(() => layeredDrumFluxDensity(drum, 1, 0.07)).toThrow('at most')
  })
})
