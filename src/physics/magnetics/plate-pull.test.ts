/** Checks the pull of a loose magnet to a steel plate. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { blockFluxDensity } from './block-magnet.ts'
import { cylinderFluxDensity } from './cylinder-magnet.ts'
import { magneticPull } from './magnetic-pull.ts'
import { blockPlatePull, cylinderPlatePull } from './plate-pull.ts'

const μ0 = 4e-7 * Math.PI
const frame = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const

describe('agrees: Maxwell’s stress on the plate’s surface, twice the magnet’s own normal field', () => {
  test('block, one quarter of the plane in panels', () => {
    const size = [0.04, 0.02, 0.01] as const
    for (const spacer of [1e-3, 5e-3, 0.02]) {
      const edges = [0, 0.008, 0.0095, 0.0105, 0.013, 0.018, 0.0195, 0.0205, 0.024, 0.04, 0.08, 0.2]
      const rules = edges.slice(1).map((to, k) => gaussLegendreOn(12, edges[k]!, to))
      const along = rules.flatMap(({ nodes, weights }) => [...nodes].map((x, i) => [x, weights[i]!] as const))
      const points = Float64Array.from(along.flatMap(([x]) => along.flatMap(([y]) => [x, y, 0])))
      const B = blockFluxDensity(
        [{ centre: [0, 0, spacer + size[2] / 2], frame, size, polarization: 1.2 }],
        points,
      )
      let force = 0
      along.forEach(([, wx], i) => {
        along.forEach(([, wy], j) => {
          force += (4 * wx * wy * (2 * B[3 * (i * along.length + j) + 2]!) ** 2) / (2 * μ0)
        })
      })
      // the plane is cut off at 0.2 m
      expect(blockPlatePull({ size, polarization: 1.2, spacer }) / force).toBeCloseTo(1, 3)
    }
  })
  test('cylinder, ring by ring', () => {
    const [radius, height] = [0.01, 0.005]
    for (const spacer of [5e-4, 3e-3, 0.02]) {
      const edges = [0, 0.008, 0.0095, 0.0105, 0.012, 0.02, 0.05, 0.3]
      let force = 0
      edges.slice(1).forEach((to, k) => {
        const { nodes, weights } = gaussLegendreOn(24, edges[k]!, to)
        const B = cylinderFluxDensity(
          [{ centre: [0, 0, spacer + height / 2], frame, radius, height, polarization: 1.2 }],
          Float64Array.from([...nodes].flatMap((ρ) => [ρ, 0, 0])),
        )
        nodes.forEach((ρ, i) => {
          force += (weights[i]! * 2 * Math.PI * ρ * (2 * B[3 * i + 2]!) ** 2) / (2 * μ0)
        })
      })
      expect(cylinderPlatePull({ radius, height, polarization: 1.2, spacer }) / force).toBeCloseTo(1, 4)
    }
  })
})

describe('agrees: B² A/2μ0 of a long magnet that stands on the iron', () => {
  test('block', () => {
    const wanted = magneticPull({ fluxDensity: 1.3, area: 2e-4 })
    const long = (c: number) =>
      blockPlatePull({ size: [0.02, 0.01, c], polarization: 1.3, spacer: 0 }) / wanted
    expect(long(10)).toBeCloseTo(1, 5)
    expect(long(0.1)).toBeGreaterThan(long(0.02))
    expect(long(0.1)).toBeLessThan(1)
  })
  test('cylinder, within a thousandth for its rim', () => {
    const wanted = magneticPull({ fluxDensity: 1.3, area: Math.PI * 1e-4 })
    const pull = cylinderPlatePull({ radius: 0.01, height: 5, polarization: 1.3, spacer: 0 })
    expect(Math.abs(pull / wanted - 1)).toBeLessThan(1e-3)
  })
})

describe('law: pull', () => {
  const edge = fc.double({ min: 1e-3, max: 0.1, noNaN: true })
  test('grows with J², falls with the spacer, the same seen with the edges across exchanged', () => {
    fc.assert(
      fc.property(edge, edge, edge, fc.double({ min: 0, max: 0.2, noNaN: true }), (a, b, c, spacer) => {
        const F = blockPlatePull({ size: [a, b, c], polarization: 1, spacer })
        expect(F).toBeGreaterThan(0)
        const near = blockPlatePull({ size: [a, b, c], polarization: -1.3, spacer })
        expect(near / F).toBeCloseTo(1.69, 9)
        expect(blockPlatePull({ size: [b, a, c], polarization: 1, spacer }) / F).toBeCloseTo(1, 5)
        expect(blockPlatePull({ size: [a, b, c], polarization: 1, spacer: spacer + 1e-3 })).toBeLessThan(F)
      }),
    )
  })
  test('from afar two dipoles: 6 μ0 m²/(4π (2s + c)⁴), block and cylinder', () => {
    const s = 0.15
    const dipole = (volume: number, c: number) =>
      ((6 * μ0) / (4 * Math.PI)) * ((volume / μ0) ** 2 / (2 * s + c) ** 4)
    expect(
      blockPlatePull({ size: [0.02, 0.02, 0.02], polarization: 1, spacer: s }) / dipole(8e-6, 0.02),
    ).toBeCloseTo(1, 2)
    expect(
      cylinderPlatePull({ radius: 0.01, height: 0.015, polarization: 1, spacer: s }) /
        dipole(Math.PI * 1.5e-6, 0.015),
    ).toBeCloseTo(1, 2)
  })
  test('in contact a cylinder converges to that of a slightly raised one', () => {
    const at = (spacer: number) =>
      cylinderPlatePull({ radius: 0.01, height: 0.005, polarization: 1.3, spacer })
    expect(at(0) / at(1e-6)).toBeGreaterThan(1)
    expect(at(0) / at(1e-6)).toBeLessThan(1.004)
  })
  test('what has no meaning is refused', () => {
    expect(() => blockPlatePull({ size: [0, 1, 1], polarization: 1, spacer: 0 })).toThrow(RangeError)
    expect(() => blockPlatePull({ size: [1, 1, 1], polarization: 1, spacer: -1 })).toThrow(RangeError)
    expect(() => cylinderPlatePull({ radius: 1, height: 0, polarization: 1, spacer: 0 })).toThrow(RangeError)
    expect(() => cylinderPlatePull({ radius: 1, height: 1, polarization: Number.NaN, spacer: 0 })).toThrow(
      RangeError,
    )
  })
})
