/** Checks of the magnetisation curve: a benchmark's table, its inverse, its energy. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { bhCurve } from './bh-curve.ts'

const μ0 = 4e-7 * Math.PI
// biome-ignore format: a table
const team13 = [
  ['0.0', '0'], ['0.1', '191'], ['0.3', '222'], ['0.5', '247'], ['0.7', '272'], ['0.9', '313'], ['1.0', '342'],
  ['1.1', '377'], ['1.2', '433'], ['1.3', '509'], ['1.4', '648'], ['1.5', '933'], ['1.6', '1934'], ['1.7', '4993'],
  ['1.8', '9423'], ['1.9', '14752'], ['2.0', '20996'], ['2.1', '28904'], ['2.2', '41976'],
] as const
const table = { fluxDensity: team13.map(([B]) => Number(B)), fieldStrength: team13.map(([, H]) => Number(H)) }
const steel = bhCurve(table)

describe('source: nakata1992, B–H table of the steel', () => {
  for (const [B, H] of team13) {
    check(`H at ${B} T`, () => steel.fieldStrength(Number(B)), H)
    check(`B at ${H} A/m`, () => steel.fluxDensity(Number(H)), B)
  }
})

describe('source: iec-61869-2, knee point: a tenth more asks for half as much excitation again', () => {
  check(
    'ratio of H at the knee',
    () => steel.fieldStrength(1.1 * steel.knee) / steel.fieldStrength(steel.knee),
    '1.500000',
  )
  test('it lies where this table begins to bend', () => {
    expect(steel.knee).toBeGreaterThan(1.3)
    expect(steel.knee).toBeLessThan(1.4)
  })
  test('a straight table bends at its end only: none before', () => {
    expect(bhCurve({ fluxDensity: [0, 1, 2], fieldStrength: [0, 100, 200] }).knee).toBeLessThanOrEqual(2)
    expect(bhCurve({ fluxDensity: [0, 1, 2], fieldStrength: [0, 100, 200] }).knee).toBeGreaterThan(1.8)
  })
})

/** Rising tables of 2 … 20 points over many decades. */
const tables = fc
  .array(
    fc.tuple(fc.double({ min: 1e-3, max: 1, noNaN: true }), fc.double({ min: 1e-2, max: 1e5, noNaN: true })),
    {
      minLength: 1,
      maxLength: 19,
    },
  )
  .map((steps) => {
    const fluxDensity = [0]
    const fieldStrength = [0]
    for (const [b, h] of steps) {
      fluxDensity.push(fluxDensity.at(-1)! + b)
      fieldStrength.push(fieldStrength.at(-1)! + h)
    }
    return { fluxDensity, fieldStrength }
  })

describe('law: one curve, read both ways', () => {
  test('B(H(B)) = B to rounding, odd, rising', () => {
    fc.assert(
      fc.property(tables, fc.double({ min: 0, max: 1.5, noNaN: true }), (rows, share) => {
        const curve = bhCurve(rows)
        const B = share * curve.lastFluxDensity
        const H = curve.fieldStrength(B)
        expect(Math.abs(curve.fluxDensity(H) - B)).toBeLessThanOrEqual(1e-11 * curve.lastFluxDensity)
        expect(curve.fluxDensity(-H) + curve.fluxDensity(H)).toBe(0)
        expect(curve.fieldStrength(-B) + H).toBe(0)
        expect(curve.fieldStrength(B * 1.01)).toBeGreaterThanOrEqual(H)
        expect(curve.differentialReluctivity(B)).toBeGreaterThan(0)
        expect(curve.relativePermeability(B)).toBeGreaterThan(0)
        expect(Number.isFinite(curve.knee)).toBe(true)
      }),
    )
  })
  test('beyond the last point steel adds no more: dB/dH = μ0', () => {
    expect(steel.differentialReluctivity(2.3)).toBe(1 / μ0)
    expect((steel.fluxDensity(2e6) - steel.fluxDensity(1e6)) / 1e6).toBeCloseTo(μ0, 15)
    expect(steel.fieldStrength(3)).toBeCloseTo(41976 + 0.8 / μ0, 5)
  })
  test('a straight table gives its permeability everywhere', () => {
    const straight = bhCurve({ fluxDensity: [0, 0.5, 1], fieldStrength: [0, 500, 1000] })
    for (const B of [0, 0.1, 0.7, 1]) expect(straight.relativePermeability(B) * μ0).toBeCloseTo(1e-3, 12)
  })
})

describe('agrees: energy and slope against quadrature and differences', () => {
  test.each([0.05, 0.4, 1.25, 1.55, 1.95, 2.6])('∫H dB to %f T', (B) => {
    let sum = 0
    const edges = [0, ...table.fluxDensity.filter((b) => b > 0 && b < B), B]
    for (let i = 1; i < edges.length; i++) {
      const { nodes, weights } = gaussLegendreOn(4, edges[i - 1]!, edges[i]!)
      nodes.forEach((b, k) => {
        sum += weights[k]! * steel.fieldStrength(b)
      })
    }
    expect(Math.abs(steel.energyDensity(B) / sum - 1)).toBeLessThan(1e-12)
    expect(steel.energyDensity(-B)).toBe(steel.energyDensity(B))
  })
  test.each([100, 230, 600, 3000, 20_000])('dB/dH at %f A/m', (H) => {
    const difference = (steel.fluxDensity(H * 1.0001) - steel.fluxDensity(H * 0.9999)) / (2e-4 * H)
    const slope = steel.differentialReluctivity(steel.fluxDensity(H))
    expect(Math.abs(slope * difference - 1)).toBeLessThan(1e-5)
  })
})

describe('refusals', () => {
  test.each([
    ['one point', [0], [0]],
    ['not from zero', [0.1, 1], [0, 100]],
    ['H falls', [0, 1, 2], [0, 100, 90]],
    ['B stands still', [0, 1, 1], [0, 100, 200]],
    ['lists differ', [0, 1], [0, 100, 200]],
    ['not finite', [0, Number.NaN], [0, 100]],
  ])('law: %s', (_, fluxDensity, fieldStrength) => {
    expect(() => bhCurve({ fluxDensity, fieldStrength })).toThrow(RangeError)
  })
  test('law: values that are not finite', () => {
    expect(() => steel.fieldStrength(Number.NaN)).toThrow(RangeError)
    expect(() => steel.fluxDensity(Number.POSITIVE_INFINITY)).toThrow(RangeError)
  })
})
