/** Checks of the cuboid's closed forms: tables, quadrature, Maxwell's laws, symmetry, robustness. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { A, B, block, gap, mm } from '../../../test/sample-block.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import type { Frame3, Vector3 } from '../../numerics/vector.ts'
import { type BlockMagnet, blockFluxDensity, blockVectorPotential } from './block-magnet.ts'

/** Rotation from three angles, right-handed and orthonormal to rounding. */
function frameOf(α: number, β: number, γ: number): Frame3 {
  const [ca, sa, cb, sb, cg, sg] = [α, β, γ].flatMap((x) => [Math.cos(x), Math.sin(x)]) as number[]
  return [
    [ca! * cb!, sa! * cb!, -sb!],
    [ca! * sb! * sg! - sa! * cg!, sa! * sb! * sg! + ca! * cg!, cb! * sg!],
    [ca! * sb! * cg! + sa! * sg!, sa! * sb! * cg! - ca! * sg!, cb! * cg!],
  ]
}

// The five magnets of both tables: L × W × D mm, polarised along D, Br
const magnets = [
  ['46x30x10', block([46 * mm, 30 * mm, 10 * mm], 1.26)],
  ['50.8x25.4x12.7', block([50.8 * mm, 25.4 * mm, 12.7 * mm], 1.3)],
  ['25x10x3', block([25 * mm, 10 * mm, 3 * mm], 1.2)],
  ['40x10x5', block([40 * mm, 10 * mm, 5 * mm], 1.3)],
  ['20x20x20', block([20 * mm, 20 * mm, 20 * mm], 1)],
] as const

/** Coulomb's law for the charge sheets ±J on the faces z = ±c, Gauss points on each: outside the block. */
function sheetField(magnet: BlockMagnet, p: Vector3, order: number): Vector3 {
  const [w, l, t] = magnet.size
  const X = gaussLegendreOn(order, -w / 2, w / 2)
  const Y = gaussLegendreOn(order, -l / 2, l / 2)
  const sum = [0, 0, 0]
  for (const side of [1, -1])
    for (let i = 0; i < order; i++)
      for (let j = 0; j < order; j++) {
        const d = [p[0] - X.nodes[i]!, p[1] - Y.nodes[j]!, p[2] - (side * t) / 2] as const
        const k = (side * X.weights[i]! * Y.weights[j]!) / Math.hypot(...d) ** 3
        for (let a = 0; a < 3; a++) sum[a]! += k * d[a]!
      }
  const k = magnet.polarization / (4 * Math.PI)
  return [k * sum[0]!, k * sum[1]!, k * sum[2]!]
}

/** Potential of the wall currents K = J/μ0 × n̂, Gauss points on each wall. */
function wallPotential(magnet: BlockMagnet, p: Vector3, order: number): Vector3 {
  const [w, l, t] = magnet.size
  const Z = gaussLegendreOn(order, -t / 2, t / 2)
  const X = gaussLegendreOn(order, -w / 2, w / 2)
  const Y = gaussLegendreOn(order, -l / 2, l / 2)
  let [ax, ay] = [0, 0]
  for (const side of [1, -1])
    for (let k = 0; k < order; k++)
      for (let i = 0; i < order; i++) {
        const z = p[2] - Z.nodes[k]!
        ay +=
          (side * Z.weights[k]! * Y.weights[i]!) / Math.hypot(p[0] - (side * w) / 2, p[1] - Y.nodes[i]!, z)
        ax -=
          (side * Z.weights[k]! * X.weights[i]!) / Math.hypot(p[0] - X.nodes[i]!, p[1] - (side * l) / 2, z)
      }
  const k = magnet.polarization / (4 * Math.PI)
  return [k * ax, k * ay, 0]
}

describe('agrees: charge sheets of 400 × 400 Gauss points, printed to six decimals — on the axis', () => {
  const distances = [1, 2, 5, 10, 20, 50]
  const rows = [
    ['0.271392', '0.259832', '0.221603', '0.159688', '0.077923', '0.013417'],
    ['0.348214', '0.328831', '0.269706', '0.185075', '0.087220', '0.015362'],
    ['0.198415', '0.169526', '0.096819', '0.040214', '0.010423', '0.000983'],
    ['0.292629', '0.247195', '0.142535', '0.064452', '0.020495', '0.002490'],
    ['0.395993', '0.356656', '0.251122', '0.134782', '0.045359', '0.005879'],
  ]
  magnets.forEach(([name, magnet], m) => {
    distances.forEach((d, i) => {
      check(`${name}, ${d} mm`, () => B(magnet, [0, 0, magnet.size[2] / 2 + d * mm])[2], rows[m]![i]!)
    })
  })
})

describe('agrees: charge sheets of 400 × 400 Gauss points, printed to six decimals — 5 mm above the face', () => {
  const places = [
    [0.25, 0],
    [0.5, 0],
    [0.5, 0.5],
    [0.75, 0.25],
    [0, 1],
  ] as const
  const rows = [
    '.051478 0 .225453   .185210 0 .099195   .102697 .099825 .035788   .050514 .010429 -.024160   0 .041902 -.028217',
    '.051788 0 .272614   .203316 0 .124290   .118653 .111859 .048313   .051219 .010385 -.021977   0 .069939 -.031814',
    '.019741 0 .094643   .054565 0 .045270   .036816 .031775 .022067   .020034 .003846 -.003863   0 .037649 -.002611',
    '.016703 0 .144149   .082226 0 .068056   .057610 .047345 .034756   .016911 .002472 -.007547   0 .065694 -.003064',
    '.080143 0 .228030   .142167 0 .129944   .086885 .086885 .065667   .095583 .025685 .026296   0 .059140 .000379',
  ].map((row) => row.trim().split(/\s+/))
  magnets.forEach(([name, magnet], m) => {
    places.forEach(([x, y], i) => {
      const [L, W, D] = magnet.size
      for (let axis = 0; axis < 3; axis++) {
        const printed = rows[m]![3 * i + axis]!
        check(
          `${name}, x/L ${x}, y/W ${y}, ${'xyz'[axis]}`,
          () => B(magnet, [x * L, y * W, D / 2 + 5 * mm])[axis]!,
          printed === '0' ? '0.000000' : printed,
        )
      }
    })
  })
})

describe('agrees: on-axis arctangent formula of the block (furlani2001, section 4.2, from memory, not opened)', () => {
  const onAxis = (J: number, [L, W, D]: Vector3, d: number) => {
    const part = (z: number) => Math.atan((L * W) / (2 * z * Math.sqrt(4 * z * z + L * L + W * W)))
    return (J / Math.PI) * ((d === 0 ? Math.PI / 2 : part(d)) - part(D + d))
  }
  const rows = [
    [0, '0.3667'],
    [2, '0.3182'],
    [5, '0.2445'],
    [10, '0.1502'],
    [20, '0.0602'],
  ] as const
  for (const [d, printed] of rows) {
    const magnet = block([40 * mm, 20 * mm, 10 * mm], 1.3)
    check(`40 × 20 × 10 mm, 1.3 T, ${d} mm`, () => B(magnet, [0, 0, (5 + d) * mm])[2], printed)
    test(`formula, ${d} mm`, () => {
      expect(B(magnet, [0, 0, (5 + d) * mm])[2]).toBeCloseTo(onAxis(1.3, magnet.size, d * mm), 13)
    })
  }
})

describe('agrees: quadrature of charge sheets and of wall currents', () => {
  const places: Vector3[] = [
    [11 * mm, 7 * mm, 20 * mm],
    [30 * mm, -4 * mm, 1 * mm],
    [-9 * mm, 21 * mm, -6 * mm],
    [35 * mm, 25 * mm, 15 * mm],
    [0, 17 * mm, 0],
  ]
  for (const [name, magnet] of magnets.filter((_, m) => m !== 1))
    test(name, () => {
      for (const p of places) {
        expect(gap(A(magnet, p), wallPotential(magnet, p, 120))).toBeLessThan(1e-13)
        if (p[2] < magnet.size[2] / 2 + 2 * mm && Math.abs(p[0]) < magnet.size[0] / 2 + 4 * mm) continue
        expect(gap(B(magnet, p), sheetField(magnet, p, 160))).toBeLessThan(1e-12)
      }
    })
  test('potential inside the block', () => {
    const magnet = block([20 * mm, 30 * mm, 25 * mm], 1)
    expect(
      gap(A(magnet, [1 * mm, 2 * mm, -3 * mm]), wallPotential(magnet, [1 * mm, 2 * mm, -3 * mm], 120)),
    ).toBeLessThan(1e-13)
  })
})

/** Fourth-order central difference of each component of f along `axis`. */
function slope(f: (p: Vector3) => Vector3, p: Vector3, axis: number, h: number): Vector3 {
  const at = (k: number) => f(p.map((x, i) => (i === axis ? x + k * h : x)) as unknown as Vector3)
  const [m2, m1, p1, p2] = [at(-2), at(-1), at(1), at(2)]
  return [0, 1, 2].map((i) => (8 * (p1[i]! - m1[i]!) - (p2[i]! - m2[i]!)) / (12 * h)) as unknown as Vector3
}

const tilted = block([40 * mm, 20 * mm, 10 * mm], 1.3, {
  centre: [3 * mm, -5 * mm, 2 * mm],
  frame: frameOf(0.4, -0.7, 1.1),
})
const place = fc.tuple(
  ...([60, 60, 60] as const).map((range) =>
    fc.double({ min: -range * mm, max: range * mm, noNaN: true, noDefaultInfinity: true }),
  ),
) as unknown as fc.Arbitrary<Vector3>
/** Least distance from the planes of the block's faces. */
const clearance = (magnet: BlockMagnet, p: Vector3) =>
  Math.min(
    ...magnet.frame.map((row, i) =>
      Math.abs(
        Math.abs(row.reduce((s, r, k) => s + r * (p[k]! - magnet.centre[k]!), 0)) - magnet.size[i]! / 2,
      ),
    ),
  )

describe('law: curl A = B, div A = 0, div B = 0, inside and out', () => {
  test('central differences at random places', () => {
    fc.assert(
      fc.property(place, (p) => {
        fc.pre(clearance(tilted, p) > 1 * mm)
        const h = 0.04 * mm
        const [ax, ay, az] = [0, 1, 2].map((axis) => slope((q) => A(tilted, q), p, axis, h)) as Vector3[]
        const [bx, by, bz] = [0, 1, 2].map((axis) => slope((q) => B(tilted, q), p, axis, h)) as Vector3[]
        const curl: Vector3 = [ay![2] - az![1], az![0] - ax![2], ax![1] - ay![0]]
        expect(gap(curl, B(tilted, p))).toBeLessThan(3e-5)
        expect(Math.abs(ax![0] + ay![1] + az![2])).toBeLessThan(3e-5)
        expect(Math.abs(bx![0] + by![1] + bz![2]) * mm).toBeLessThan(3e-5)
      }),
      { numRuns: 300 },
    )
  })
})

describe('law: ∮A·dl = ∬B·n', () => {
  // A square loop of 70 mm above a tilted block, and one that cuts through its middle
  for (const z of [40 * mm, 2 * mm])
    test(`loop at ${z} m`, () => {
      const half = 35 * mm
      const { nodes, weights } = gaussLegendreOn(200, -half, half)
      let flux = 0
      let circulation = 0
      const points = new Float64Array(3 * 200 * 200)
      for (let i = 0; i < 200; i++)
        for (let j = 0; j < 200; j++) points.set([nodes[i]!, nodes[j]!, z], 3 * (200 * i + j))
      const field = blockFluxDensity([tilted], points)
      for (let i = 0; i < 200; i++) {
        for (let j = 0; j < 200; j++) flux += weights[i]! * weights[j]! * field[3 * (200 * i + j) + 2]!
        circulation +=
          weights[i]! *
          (A(tilted, [nodes[i]!, -half, z])[0] -
            A(tilted, [nodes[i]!, half, z])[0] +
            A(tilted, [half, nodes[i]!, z])[1] -
            A(tilted, [-half, nodes[i]!, z])[1])
      }
      // Inside the block B steps across the faces, so Gauss points converge slowly there
      expect(Math.abs(flux - circulation)).toBeLessThan((z > 0.01 ? 1e-9 : 1e-2) * Math.abs(circulation))
      expect(Math.abs(circulation)).toBeGreaterThan(1e-6)
    })
})

describe('law: steps at faces', () => {
  const magnet = block([40 * mm, 20 * mm, 10 * mm], 1.3)
  const ε = 1e-10
  test('axial B drops by J across a side wall; on the wall it is the mean', () => {
    for (const [y, z] of [
      [0, 0],
      [5 * mm, -3 * mm],
      [9 * mm, 4.9 * mm],
    ] as const) {
      const [inside, on, outside] = [-ε, 0, ε].map((d) => B(magnet, [20 * mm + d, y, z])) as Vector3[]
      expect(inside![2] - outside![2]).toBeCloseTo(1.3, 6)
      expect(on![2]).toBeCloseTo((inside![2] + outside![2]) / 2, 6)
      expect(inside![0] - outside![0]).toBeCloseTo(0, 6)
      expect(inside![1] - outside![1]).toBeCloseTo(0, 6)
    }
  })
  test('B is continuous across a pole face; μ0H steps there by J', () => {
    const [inside, on, outside] = [-ε, 0, ε].map((d) => B(magnet, [7 * mm, -2 * mm, 5 * mm + d])) as Vector3[]
    expect(gap(inside!, outside!)).toBeLessThan(1e-6)
    expect(gap(on!, outside!)).toBeLessThan(1e-6)
  })
  test('A is continuous across faces, edges and corners', () => {
    for (const [x, y, z] of [
      [20, 0, 0],
      [20, 10, 1],
      [20, 10, 5],
      [3, 10, 5],
      [20, 4, -5],
    ] as const) {
      const at = A(magnet, [x * mm, y * mm, z * mm])
      for (const dx of [-ε, ε])
        for (const dy of [-ε, ε])
          for (const dz of [-ε, ε])
            expect(gap(A(magnet, [x * mm + dx, y * mm + dy, z * mm + dz]), at)).toBeLessThan(1e-7)
    }
  })
})

describe('law: superposition, turning, mirror and scale', () => {
  test('a block is the sum of its halves', () => {
    const whole = block([40 * mm, 20 * mm, 10 * mm], 1.3)
    for (let axis = 0; axis < 3; axis++) {
      const halves = [-1, 1].map((s) => {
        const size = whole.size.map((e, i) => (i === axis ? e / 2 : e)) as unknown as Vector3
        const centre = [0, 1, 2].map((i) => (i === axis ? (s * whole.size[i]!) / 4 : 0)) as unknown as Vector3
        return block(size, 1.3, { centre })
      })
      fc.assert(
        fc.property(place, (p) => {
          fc.pre(clearance(whole, p) > 1e-6 && Math.abs(p[axis]!) > 1e-6)
          expect(gap(B(whole, p), B(halves, p))).toBeLessThan(1e-12)
          expect(gap(A(whole, p), A(halves, p))).toBeLessThan(1e-14)
        }),
      )
    }
  })
  test('turning magnet and point together turns B and A', () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true })
    const straight = block([40 * mm, 20 * mm, 10 * mm], 1.3)
    fc.assert(
      fc.property(place, angle, angle, angle, (p, α, β, γ) => {
        fc.pre(clearance(straight, p) > 1e-6)
        const frame = frameOf(α, β, γ)
        const out = (v: Vector3): Vector3 =>
          [0, 1, 2].map(
            (k) => v[0] * frame[0][k]! + v[1] * frame[1][k]! + v[2] * frame[2][k]!,
          ) as unknown as Vector3
        const turned = block(straight.size, 1.3, { frame })
        expect(gap(B(turned, out(p)), out(B(straight, p)))).toBeLessThan(1e-9)
        expect(gap(A(turned, out(p)), out(A(straight, p)))).toBeLessThan(1e-12)
      }),
    )
  })
  test('B keeps and A grows with the scale, from nanometres to gigametres', () => {
    for (const k of [1e-9, 1e-3, 1e3, 1e9]) {
      const size: Vector3 = [0.04, 0.02, 0.01]
      const small = block(size.map((e) => e * k) as unknown as Vector3, 1.3)
      const p: Vector3 = [0.013, 0.021, -0.008]
      const q = p.map((x) => x * k) as unknown as Vector3
      expect(gap(B(small, q), B(block(size, 1.3), p))).toBeLessThan(1e-14)
      expect(
        gap(
          A(small, q),
          A(block(size, 1.3), p).map((a) => a * k),
        ) / k,
      ).toBeLessThan(1e-15)
    }
  })
})

describe('refusals', () => {
  const code = (f: () => unknown) => {
    try {
      f()
    } catch (error) {
      return (error as { code?: string }).code
    }
    return 'none'
  }
  const p = new Float64Array([0, 0, 1])
  const good = block([1, 1, 1], 1)
  test.each([
    ['size zero', { ...good, size: [1, 0, 1] as Vector3 }, 'below-minimum'],
    ['centre infinite', { ...good, centre: [Number.POSITIVE_INFINITY, 0, 0] as Vector3 }, 'not-finite'],
    ['J not a number', { ...good, polarization: Number.NaN }, 'not-finite'],
    [
      'frame skew',
      {
        ...good,
        frame: [
          [1, 0, 0],
          [1, 0, 0],
          [0, 0, 1],
        ] as Frame3,
      },
      'conflict',
    ],
  ])('law: %s', (_, magnet, expected) => {
    expect(code(() => blockFluxDensity([magnet], p))).toBe(expected)
    expect(code(() => blockVectorPotential([magnet], p))).toBe(expected)
  })
  test('law: points not in threes, not finite', () => {
    expect(code(() => blockFluxDensity([good], new Float64Array(4)))).toBe('wrong-length')
    expect(code(() => blockFluxDensity([good], new Float64Array([0, Number.NaN, 0])))).toBe('not-finite')
  })
  test('law: no magnets, no field', () => {
    expect([...blockFluxDensity([], p), ...blockVectorPotential([], p)]).toEqual([0, 0, 0, 0, 0, 0])
  })
})
