/** Checks of arcs and wedges: volumes, convergence of facets, rings, rods, a segmented dipole of the literature. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gap } from '../../../test/sample-block.ts'
import { cylinder, fieldOf, potentialOf, refusalCode } from '../../../test/sample-magnet.ts'
import { completeElliptic } from '../../numerics/elliptic.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { identityFrame, type Vector3 } from '../../numerics/vector.ts'
import { type ArcMagnet, arcFacets, arcMagnets } from './arc-magnet.ts'
import { type Magnet, magnetAxis, magnetFluxDensity, magnetVolume } from './magnet.ts'
import { turnedMagnet } from './magnet-pose.ts'
import { wedgeMagnet } from './wedge-magnet.ts'

const arc = (more: Partial<ArcMagnet> = {}): ArcMagnet => ({
  centre: [0, 0, 0],
  frame: identityFrame,
  innerRadius: 0.05,
  outerRadius: 0.055,
  length: 0.03,
  span: 0.47,
  magnetization: 'parallel',
  polarization: 1.2,
  ...more,
})

describe('source: halbach1980, segmented dipole, B = Br ln(ro/ri) sin(2π/M)/(2π/M) (from memory, not opened)', () => {
  // The two-dimensional dipole of M uniform segments, J turning twice as fast as the place: here 80 radii long
  const bore = (M: number) => {
    const segment = arc({
      innerRadius: 0.01,
      outerRadius: 0.02,
      length: 0.8,
      span: (2 * Math.PI) / M,
      polarization: 1,
      facets: Math.ceil(96 / M),
    })
    const ring = Array.from({ length: M }, (_, k): Magnet[] => {
      const θ = (2 * Math.PI * k) / M
      return arcMagnets({ ...segment, lean: θ }).map((one) => turnedMagnet(one, θ))
    }).flat()
    return fieldOf(ring, [0, 0, 0])[0] / Math.LN2
  }
  check('8 segments keep', () => bore(8), '0.90')
  check('16 segments keep', () => bore(16), '0.97')
  test('the formula itself within 1e-4', () => {
    for (const M of [6, 8, 12])
      expect(Math.abs(bore(M) / (Math.sin((2 * Math.PI) / M) / ((2 * Math.PI) / M)) - 1)).toBeLessThan(2e-4)
  })
})

describe('agrees: a whole ring of radial J, by charged rings: its walls ±J, its inside −J/r', () => {
  // Potential of a charged ring, differentiated by fourth-order differences: no other field formula is trusted
  const potential = (a: number, ρ: number, z: number) => {
    const s = (a + ρ) ** 2 + z * z
    const { K } = completeElliptic(Math.sqrt((4 * a * ρ) / s), Math.sqrt(((a - ρ) ** 2 + z * z) / s))
    return (2 * K) / (Math.PI * Math.sqrt(s))
  }
  const [ri, ro, h, J] = [0.02, 0.03, 0.012, 1.2]
  const heights = gaussLegendreOn(40, -h / 2, h / 2)
  const radii = gaussLegendreOn(40, ri, ro)
  const φ = (ρ: number, z: number) => {
    let sum = 0
    heights.nodes.forEach((height, i) => {
      const at = (a: number) => a * potential(a, ρ, z - height)
      let inside = 0
      radii.nodes.forEach((a, k) => {
        inside += (radii.weights[k]! / a) * at(a)
      })
      sum += heights.weights[i]! * (at(ro) - at(ri) - inside)
    })
    return (J * sum) / 2
  }
  const slope = (f: (t: number) => number, step: number) =>
    (8 * (f(step) - f(-step)) - f(2 * step) + f(-2 * step)) / (12 * step)
  test('beside, in the bore and above', () => {
    const ring = arcMagnets(
      arc({
        innerRadius: ri,
        outerRadius: ro,
        length: h,
        span: 2 * Math.PI,
        magnetization: 'radial',
        facets: 240,
      }),
    )
    for (const [ρ, z] of [
      [0.04, 0.004],
      [0.012, 0.003],
      [0.026, 0.015],
    ] as const) {
      const B = fieldOf(ring, [ρ, 0, z])
      expect(B[0]).toBeCloseTo(-slope((t) => φ(ρ + t, z), 2e-4), 4)
      expect(B[2]).toBeCloseTo(-slope((t) => φ(ρ, z + t), 2e-4), 4)
      expect(B[1]).toBeCloseTo(0, 12)
    }
  })
})

describe('agrees: axial rings against cylinders, rods across against their two-dimensional limit', () => {
  test('a hollow ring is a cylinder less a cylinder', () => {
    const ring = arcMagnets(arc({ span: 2 * Math.PI, magnetization: 'axial', facets: 180 }))
    expect(ring).toHaveLength(2)
    const pair = [cylinder(0.055, 0.03, { polarization: 1.2 }), cylinder(0.05, 0.03, { polarization: -1.2 })]
    for (const p of [
      [0.052, 0.004, 0.02],
      [0.01, 0.02, 0],
      [0.04, -0.05, 0.01],
    ] as const)
      expect(gap(fieldOf(ring, p), fieldOf(pair, p))).toBeLessThan(1e-5)
  })
  test('a long rod magnetised across: J/2 inside, J/2 (a/ρ)² outside', () => {
    const rod = arcMagnets(
      arc({
        innerRadius: 0,
        outerRadius: 0.003,
        length: 1.2,
        span: 2 * Math.PI,
        polarization: 1,
        facets: 90,
      }),
    )
    expect(rod).toHaveLength(1)
    expect(fieldOf(rod, [0.001, 0.0005, 0])[0]).toBeCloseTo(0.5, 4)
    expect(fieldOf(rod, [0.009, 0, 0])[0]).toBeCloseTo(0.5 / 9, 4)
    expect(fieldOf(rod, [0, 0.009, 0])[0]).toBeCloseTo(-0.5 / 9, 4)
  })
})

describe('law: volume, moment and convergence of facets', () => {
  const volume = (magnets: readonly Magnet[]) => magnets.reduce((sum, one) => sum + magnetVolume(one), 0)
  test('facets keep the volume, whatever their number', () => {
    for (const span of [0.2, 2, 2 * Math.PI])
      for (const innerRadius of [0, 0.04])
        for (const magnetization of ['radial', 'parallel', 'axial'] as const)
          for (const facets of [3, 4, 17])
            expect(
              volume(arcMagnets(arc({ span, innerRadius, magnetization, facets }))) /
                ((span / 2) * (0.055 ** 2 - innerRadius ** 2) * 0.03),
            ).toBeCloseTo(1, 12)
  })
  test('radial J keeps its moment: ∫J dV = 2 sin(span/2)/span J V along the middle', () => {
    const magnets = arcMagnets(arc({ magnetization: 'radial', facets: 3, span: 1.2 }))
    const moment = [0, 1].map((k) =>
      magnets.reduce((sum, one) => sum + magnetAxis(one)[k]! * one.polarization * magnetVolume(one), 0),
    )
    expect(moment[0]! / volume(magnets)).toBeCloseTo((1.2 * Math.sin(0.6)) / 0.6, 12)
    expect(moment[1]!).toBeCloseTo(0, 18)
  })
  const places = (clearance: number): Float64Array => {
    const p: number[] = []
    for (let i = -12; i <= 12; i++) {
      const θ = (0.47 * i) / 20
      for (const z of [0, 0.006, 0.0149])
        p.push((0.055 + clearance) * Math.cos(θ), (0.055 + clearance) * Math.sin(θ), z)
      p.push((0.05 - clearance) * Math.cos(θ), (0.05 - clearance) * Math.sin(θ), 0)
      p.push(0.0525 * Math.cos(θ), 0.0525 * Math.sin(θ), 0.015 + clearance)
    }
    return new Float64Array(p)
  }
  const error = (more: Partial<ArcMagnet>, facets: number, clearance: number) => {
    const at = (n: number) => magnetFluxDensity(arcMagnets(arc({ ...more, facets: n })), places(clearance))
    const fine = at(more.magnetization === 'radial' ? 160 : 64)
    const coarse = at(facets)
    const worst = coarse.reduce((most, b, i) => Math.max(most, Math.abs(b - fine[i]!)), 0)
    return worst / fine.reduce((most, b) => Math.max(most, Math.abs(b)), 0)
  }
  test('halving them divides the error by 16 (parallel, axial), by 4 (radial)', () => {
    for (const magnetization of ['parallel', 'axial'] as const)
      expect(error({ magnetization }, 12, 0.005) / error({ magnetization }, 24, 0.005)).toBeGreaterThan(13)
    const ratio = error({ magnetization: 'radial' }, 8, 0.005) / error({ magnetization: 'radial' }, 16, 0.005)
    expect(ratio).toBeGreaterThan(3.7)
    expect(ratio).toBeLessThan(4.6)
  })
  test('`arcFacets` keeps its word', () => {
    for (const magnetization of ['parallel', 'axial', 'radial'] as const)
      for (const clearance of [0.00125, 0.0025, 0.005])
        for (const relativeError of [1e-2, 1e-3])
          for (const lean of magnetization === 'axial' ? [0] : [0, Math.PI / 2]) {
            const n = arcFacets({ ...arc({ magnetization }), clearance, relativeError })
            expect(error({ magnetization, lean }, n, clearance), `${magnetization} ${n}`).toBeLessThan(
              relativeError * (lean === 0 ? 1 : 1.5),
            )
          }
  })
})

describe('law: wedges', () => {
  const body = {
    centre: [0.09, 0, 0.005] as Vector3,
    frame: identityFrame,
    length: 0.04,
    height: 0.01,
    polarization: 1.3,
  }
  test('equal widths make a block, J up or leaning', () => {
    const magnet = wedgeMagnet({ ...body, innerWidth: 0.02, outerWidth: 0.02 })
    const block = {
      centre: body.centre,
      frame: identityFrame,
      size: [0.04, 0.02, 0.01] as Vector3,
      polarization: 1.3,
    }
    const p: Vector3 = [0.1, 0.013, 0.018]
    expect(gap(fieldOf(magnet, p), fieldOf(block, p))).toBeLessThan(1e-14)
    expect(gap(potentialOf(magnet, p), potentialOf(block, p))).toBeLessThan(1e-16)
  })
  test('area of the trapezoid; two triangles make a block', () => {
    expect(magnetVolume(wedgeMagnet({ ...body, innerWidth: 0.01, outerWidth: 0.03 }))).toBeCloseTo(8e-6, 18)
    const halves = [
      wedgeMagnet({ ...body, innerWidth: 0, outerWidth: 0.02 }),
      wedgeMagnet({ ...body, innerWidth: 0.02, outerWidth: 0 }),
    ]
    expect(halves.map((one) => one.outline.length)).toEqual([6, 6])
    expect(halves.reduce((sum, one) => sum + magnetVolume(one), 0)).toBeCloseTo(8e-6, 18)
  })
})

describe('refusals', () => {
  test.each([
    ['radii upside down', () => arcMagnets(arc({ innerRadius: 0.06 })), 'conflict'],
    ['span beyond a turn', () => arcMagnets(arc({ span: 7 })), 'above-maximum'],
    ['span zero', () => arcMagnets(arc({ span: 0 })), 'below-minimum'],
    ['one facet for half a turn', () => arcMagnets(arc({ span: Math.PI, facets: 1 })), 'below-minimum'],
    ['half a facet', () => arcMagnets(arc({ facets: 2.5 })), 'below-minimum'],
    ['no length', () => arcMagnets(arc({ length: 0 })), 'below-minimum'],
    ['lean not a number', () => arcMagnets(arc({ lean: Number.NaN })), 'not-finite'],
    ['no clearance', () => arcFacets({ ...arc(), clearance: 0 }), 'below-minimum'],
    [
      'a wedge without width',
      () => wedgeMagnet({ ...arc(), innerWidth: 0, outerWidth: 0, height: 1 }),
      'conflict',
    ],
  ])('law: %s', (_, f, expected) => {
    expect(refusalCode(f)).toBe(expected)
  })
})
