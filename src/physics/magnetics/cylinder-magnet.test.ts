/** Checks of the cylinder's closed forms: axis, quadrature, current rings, Maxwell's laws, robustness. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gap } from '../../../test/sample-block.ts'
import {
  cylinder,
  fieldOf,
  frameOf,
  maxwellFaults,
  out,
  placeWithin,
  potentialOf,
  refusalCode,
} from '../../../test/sample-magnet.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import { type CylinderMagnet, cylinderFluxDensity, cylinderVectorPotential } from './cylinder-magnet.ts'
import { coaxialLoopMutualInductance } from './inductance.ts'

const μ0 = 4e-7 * Math.PI
const shapes = [
  ['disc 20 × 5 mm', cylinder(0.01, 0.005)],
  ['rod 6 × 25 mm', cylinder(0.003, 0.025)],
  ['as long as wide', cylinder(0.01, 0.02)],
] as const

describe('agrees: the field on the axis, B = J/2 [ζ/√(a² + ζ²)] (jackson1999, problem 5.19, from memory, not opened)', () => {
  for (const [name, magnet] of shapes)
    test(name, () => {
      const { radius: a, height } = magnet
      const part = (ζ: number) => ζ / Math.hypot(a, ζ) / 2
      for (const z of [0, 0.3, 0.5, 0.7, 1, 2, 5]) {
        const B = fieldOf(magnet, [0, 0, z * height])
        expect(B[0]).toBe(0)
        expect(B[2]).toBeCloseTo(part((z + 0.5) * height) - part((z - 0.5) * height), 14)
      }
    })
})

/** Coulomb's law for the charge sheets ±J on the end discs. */
function sheetField({ radius, height }: CylinderMagnet, p: Vector3): Vector3 {
  const rings = gaussLegendreOn(60, 0, radius)
  const spokes = 120
  const sum = [0, 0, 0]
  for (const side of [1, -1])
    rings.nodes.forEach((r, i) => {
      for (let k = 0; k < spokes; k++) {
        const φ = (2 * Math.PI * k) / spokes
        const d = [p[0] - r * Math.cos(φ), p[1] - r * Math.sin(φ), p[2] - (side * height) / 2] as const
        const w = (side * rings.weights[i]! * r * 2 * Math.PI) / spokes / Math.hypot(...d) ** 3
        for (let a = 0; a < 3; a++) sum[a]! += w * d[a]!
      }
    })
  return sum.map((s) => s / (4 * Math.PI)) as unknown as Vector3
}

describe('agrees: quadrature of the charged end discs', () => {
  for (const [name, magnet] of shapes)
    test(name, () => {
      const { radius: a, height: h } = magnet
      for (const p of [
        [0.4 * a, 0.2 * a, h / 2 + a],
        [1.6 * a, -0.5 * a, h / 2 + 0.6 * a],
        [0, 2 * a, -h / 2],
      ] as const)
        expect(gap(fieldOf(magnet, p), sheetField(magnet, p))).toBeLessThan(1e-11)
    })
})

describe('agrees: a stack of current rings, their mutual inductance with a ring through the point', () => {
  // Flux through a circle of radius ρ is 2πρ Aφ; the wall carries J/μ0 per length
  for (const [name, magnet] of shapes)
    test(name, () => {
      const { radius: a, height: h } = magnet
      const rings = gaussLegendreOn(120, -h / 2, h / 2)
      for (const [ρ, z] of [
        [0.05 * a, 0],
        [0.5 * a, 0.3 * h],
        [0.7 * a, h],
        [1.5 * a, 0.1 * h],
        [4 * a, h],
      ] as const) {
        let flux = 0
        rings.nodes.forEach((height, i) => {
          flux +=
            ((rings.weights[i]! * 1) / μ0) *
            coaxialLoopMutualInductance({ radiusA: a, radiusB: ρ, apart: z - height })
        })
        const A = potentialOf(magnet, [ρ * 0.6, ρ * 0.8, z])
        const Aφ = -0.8 * A[0] + 0.6 * A[1]
        expect(Math.abs(Aφ / (flux / (2 * Math.PI * ρ)) - 1)).toBeLessThan(1e-11)
        expect(0.6 * A[0] + 0.8 * A[1]).toBeCloseTo(0, 16)
      }
    })
})

describe('law: curl A = B, div A = 0, div B = 0, inside and out, at the seams of the methods too', () => {
  const tilted = cylinder(0.01, 0.012, { centre: [1e-3, -2e-3, 3e-3], frame: frameOf(0.4, -0.7, 1.1) })
  test('random places', () => {
    fc.assert(
      fc.property(placeWithin(0.03), (q) => {
        const ρ = Math.hypot(q[0], q[1])
        fc.pre(Math.abs(ρ - 0.01) > 5e-4 || Math.abs(q[2]) > 0.007)
        fc.pre(Math.abs(Math.abs(q[2]) - 0.006) > 5e-4 || ρ > 0.011)
        const p = out(tilted, q).map((x, i) => x + tilted.centre[i]!) as unknown as Vector3
        const { curl, divA, divB } = maxwellFaults(tilted, p, 2e-5)
        expect(curl).toBeLessThan(3e-5)
        expect(divA).toBeLessThan(1e-7)
        expect(divB * 1e-3).toBeLessThan(3e-5)
      }),
      { numRuns: 300 },
    )
  })
})

describe('law: ∮A·dl = ∬B·n over circles about the axis', () => {
  test('in the magnet, across its end, above it', () => {
    const magnet = cylinder(0.01, 0.02)
    for (const [radius, z] of [
      [0.009, 0],
      [0.009, 0.01],
      [0.03, 0.012],
    ] as const) {
      const { nodes, weights } = gaussLegendreOn(80, 0, radius)
      let flux = 0
      nodes.forEach((ρ, i) => {
        flux += weights[i]! * 2 * Math.PI * ρ * fieldOf(magnet, [0, ρ, z])[2]
      })
      expect(
        Math.abs((2 * Math.PI * radius * potentialOf(magnet, [radius, 0, z])[1]) / flux - 1),
      ).toBeLessThan(1e-9)
    }
  })
})

describe('law: wall, ends and rim', () => {
  const magnet = cylinder(0.01, 0.02, { polarization: 1.3 })
  const ε = 1e-11
  test('axial B drops by J across the wall; on it is the mean; the rest is continuous', () => {
    for (const z of [0, 0.003, -0.0095]) {
      const [inside, on, outside] = [-ε, 0, ε].map((d) => fieldOf(magnet, [0.01 + d, 0, z])) as Vector3[]
      expect(inside![2] - outside![2]).toBeCloseTo(1.3, 6)
      expect(on![2]).toBeCloseTo((inside![2] + outside![2]) / 2, 6)
      expect(inside![0]).toBeCloseTo(outside![0], 6)
      expect(on![0]).toBeCloseTo(outside![0], 6)
    }
  })
  test('B is continuous across an end, A everywhere', () => {
    const at = (d: number) => fieldOf(magnet, [0.004, 0.003, 0.01 + d])
    expect(gap(at(-ε), at(ε))).toBeLessThan(1e-6)
    expect(gap(at(0), at(ε))).toBeLessThan(1e-6)
    for (const [x, z] of [
      [0.01, 0],
      [0.01, 0.01],
      [0.002, 0.01],
      [0.01, 0.05],
    ] as const)
      for (const dx of [-ε, ε])
        for (const dz of [-ε, ε])
          expect(gap(potentialOf(magnet, [x + dx, 0, z + dz]), potentialOf(magnet, [x, 0, z]))).toBeLessThan(
            1e-9,
          )
  })
  test('nothing but finite numbers on the rim, in the planes of the ends, along the wall and on the axis', () => {
    for (const shape of [
      magnet,
      cylinder(1, 1e-6),
      cylinder(1e-6, 1),
      cylinder(3e-9, 2e-9),
      cylinder(1e9, 1e10),
    ])
      for (const r of [0, 1e-300, 1e-12, 1 - 1e-15, 1, 1 + 1e-15, 2, 1e6])
        for (const z of [0, 1 - 1e-15, 1, 1 + 1e-15, 3, 1e8]) {
          const p: Vector3 = [r * shape.radius, 0, (z * shape.height) / 2]
          for (const value of [...fieldOf(shape, p), ...potentialOf(shape, p)])
            expect(Number.isFinite(value)).toBe(true)
          const limit = 3 * shape.polarization * (1 + Math.log(1e9 * (1 + shape.height / shape.radius)))
          for (const value of fieldOf(shape, p)) expect(Math.abs(value)).toBeLessThan(limit)
        }
  })
})

describe('law: superposition, turning, scale, limits', () => {
  test('a cylinder is the sum of its slices', () => {
    const whole = cylinder(0.01, 0.02)
    const slices = [-0.005, 0.005].map((z) => cylinder(0.01, 0.01, { centre: [0, 0, z] }))
    fc.assert(
      fc.property(placeWithin(0.03), (p) => {
        fc.pre(Math.abs(Math.hypot(p[0], p[1]) - 0.01) > 1e-7)
        expect(gap(fieldOf(whole, p), fieldOf(slices, p))).toBeLessThan(1e-12)
        expect(gap(potentialOf(whole, p), potentialOf(slices, p))).toBeLessThan(1e-15)
      }),
    )
  })
  test('turning magnet and point together turns B and A; a turn about its own axis changes nothing', () => {
    const straight = cylinder(0.01, 0.008)
    const frame: Frame3 = frameOf(0.3, 1.1, -2)
    const turned = cylinder(0.01, 0.008, { frame })
    const spun = cylinder(0.01, 0.008, { frame: frameOf(1.234, 0, 0) })
    const p: Vector3 = [0.007, 0.004, 0.009]
    expect(gap(fieldOf(turned, out(turned, p)), out(turned, fieldOf(straight, p)))).toBeLessThan(1e-14)
    expect(gap(potentialOf(turned, out(turned, p)), out(turned, potentialOf(straight, p)))).toBeLessThan(
      1e-16,
    )
    expect(gap(fieldOf(spun, p), fieldOf(straight, p))).toBeLessThan(1e-14)
  })
  test('B keeps and A grows with the scale, from nanometres to gigametres', () => {
    for (const k of [1e-9, 1e-3, 1e3, 1e9]) {
      const p: Vector3 = [0.7, 0.4, 0.6]
      const q = p.map((x) => x * k) as unknown as Vector3
      expect(gap(fieldOf(cylinder(k, k), q), fieldOf(cylinder(1, 1), p))).toBeLessThan(1e-14)
      const A = potentialOf(cylinder(k, k), q).map((a) => a / k)
      expect(gap(A, potentialOf(cylinder(1, 1), p))).toBeLessThan(1e-14)
    }
  })
  test('an endless rod holds J, an endless sheet nothing', () => {
    expect(fieldOf(cylinder(1, 1e5), [0.3, 0.4, 0])[2]).toBeCloseTo(1, 9)
    expect(fieldOf(cylinder(1, 1e5), [2, 0.4, 0])[2]).toBeCloseTo(0, 9)
    expect(fieldOf(cylinder(1e5, 1), [10, 0, 0])[2]).toBeCloseTo(0, 4)
  })
})

describe('agrees: the series keeps what `relativeError` asks, discs to rods', () => {
  const shape = fc.double({ min: -2, max: 2, noNaN: true })
  const angle = fc.double({ min: 0, max: Math.PI, noNaN: true })
  const times = fc.double({ min: 2.2, max: 30, noNaN: true })
  test('error in units of the least dipole value at half the longest edge', () => {
    fc.assert(
      fc.property(shape, angle, times, fc.constantFrom(1e-2, 1e-4, 1e-7), (s, θ, K, relativeError) => {
        const magnet = cylinder(10 ** Math.min(s, 0), 2 * 10 ** Math.min(-s, 0))
        const p: Vector3 = [K * Math.sin(θ), 0, K * Math.cos(θ)]
        const dipole = (magnet.radius ** 2 * magnet.height) / 4
        const wrongB = gap(fieldOf(magnet, p, { relativeError }), fieldOf(magnet, p))
        const wrongA = gap(potentialOf(magnet, p, { relativeError }), potentialOf(magnet, p))
        expect(wrongB).toBeLessThan(relativeError * dipole + 2e-15)
        expect(wrongA).toBeLessThan(relativeError * dipole + 2e-15)
      }),
      { numRuns: 600 },
    )
  })
  test('by default the far field joins on within 1e-9', () => {
    for (const magnet of [cylinder(1, 2), cylinder(1, 0.3), cylinder(0.2, 2)])
      for (const θ of [0, 0.4, 0.9, 1.57]) {
        const at = (K: number): Vector3 => [K * Math.sin(θ), 0, K * Math.cos(θ)]
        // Just inside and well outside of the switch, brought to the same distance by the dipole's own law
        const near = fieldOf(magnet, at(45)).map((b) => b * 45 ** 3)
        const series = fieldOf(magnet, at(45), { relativeError: 0.1 }).map((b) => b * 45 ** 3)
        expect(gap(near, series) / Math.hypot(...series)).toBeLessThan(2e-8)
      }
  })
})

describe('refusals', () => {
  const p = new Float64Array([0, 0, 1])
  const good = cylinder(1, 1)
  test.each([
    ['radius zero', { ...good, radius: 0 }, 'below-minimum'],
    ['height negative', { ...good, height: -1 }, 'below-minimum'],
    ['height infinite', { ...good, height: Number.POSITIVE_INFINITY }, 'not-finite'],
    ['J not a number', { ...good, polarization: Number.NaN }, 'not-finite'],
    ['centre infinite', { ...good, centre: [0, Number.NaN, 0] as Vector3 }, 'not-finite'],
    ['frame skew', { ...good, frame: [good.frame[0], good.frame[0], good.frame[2]] as Frame3 }, 'conflict'],
  ])('law: %s', (_, magnet, expected) => {
    expect(refusalCode(() => cylinderFluxDensity([magnet], p))).toBe(expected)
    expect(refusalCode(() => cylinderVectorPotential([magnet], p))).toBe(expected)
  })
  test('law: points not in threes', () => {
    expect(refusalCode(() => cylinderFluxDensity([good], new Float64Array(2)))).toBe('wrong-length')
  })
  test('law: no J, no field', () => {
    expect([...cylinderFluxDensity([{ ...good, polarization: 0 }], p)]).toEqual([0, 0, 0])
  })
})
