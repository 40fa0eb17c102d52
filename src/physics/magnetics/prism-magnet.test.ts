/** Checks of the prism's closed forms: blocks, cylinders, cuts, Maxwell's laws, series, robustness. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gap } from '../../../test/sample-block.ts'
import {
  cylinder,
  fieldOf,
  frameOf,
  maxwellFaults,
  placeWithin,
  potentialOf,
  prism,
  refusalCode,
  roundOutline,
  unit,
} from '../../../test/sample-magnet.ts'
import type { Vector3 } from '../../numerics/vector.ts'
import type { BlockMagnet } from './block-magnet.ts'
import { cuboidDemagnetizingFactor, cylinderDemagnetizingFactor } from './demagnetizing-factor.ts'
import { prismDemagnetizingFactor } from './prism-demagnetizing-factor.ts'
import { prismFluxDensity, prismVectorPotential } from './prism-magnet.ts'

const size: Vector3 = [0.04, 0.02, 0.01]
const rectangle = [-0.02, -0.01, 0.02, -0.01, 0.02, 0.01, -0.02, 0.01]
const along = (axis: number) => [0, 1, 2].map((k) => (k === axis ? 1 : 0)) as unknown as Vector3
/** The cuboid with J along one of its axes, as a block and as a prism. */
function twins(axis: number): [BlockMagnet, ReturnType<typeof prism>] {
  const frame = frameOf(0.4, -0.7, 1.1)
  const order = [(axis + 1) % 3, (axis + 2) % 3, axis] as const
  const centre: Vector3 = [0.003, -0.001, 0.002]
  return [
    {
      centre,
      frame: [frame[order[0]]!, frame[order[1]]!, frame[order[2]]!],
      size: [size[order[0]]!, size[order[1]]!, size[order[2]]!],
      polarization: 1,
    },
    prism(rectangle, 0.01, { centre, frame, direction: along(axis) }),
  ]
}

describe('agrees: a prism over a rectangle is a block, J along each of its axes', () => {
  for (let axis = 0; axis < 3; axis++) {
    const [block, twin] = twins(axis)
    test(`random places, axis ${axis}`, () => {
      fc.assert(
        fc.property(placeWithin(0.05), (p) => {
          expect(gap(fieldOf(block, p), fieldOf(twin, p))).toBeLessThan(1e-13)
          expect(gap(potentialOf(block, p), potentialOf(twin, p)) / 0.02).toBeLessThan(1e-13)
        }),
        { numRuns: 300 },
      )
    })
    test(`on faces, in the planes of faces, on the extensions of edges, axis ${axis}`, () => {
      const frame = [along(0), along(1), along(2)] as const
      const order = [(axis + 1) % 3, (axis + 2) % 3, axis] as const
      const plainBlock: BlockMagnet = {
        centre: [0, 0, 0],
        frame: [frame[order[0]]!, frame[order[1]]!, frame[order[2]]!],
        size: [size[order[0]]!, size[order[1]]!, size[order[2]]!],
        polarization: 1,
      }
      const plain = prism(rectangle, 0.01, { direction: along(axis) })
      const lattice = [-2, -1, -0.3, 0, 1, 1.7]
      for (const i of lattice)
        for (const j of lattice)
          for (const k of lattice) {
            const p: Vector3 = [i * 0.02, j * 0.01, k * 0.005]
            expect(gap(potentialOf(plainBlock, p), potentialOf(plain, p))).toBeLessThan(1e-16)
            // On an edge B has no limit and the two stop its growth differently
            const edges = [i, j, k].filter((s) => Math.abs(s) === 1).length
            const beyond = [i, j, k].some((s) => Math.abs(s) > 1)
            const [b, q] = [fieldOf(plainBlock, p), fieldOf(plain, p)]
            if (edges < 2 || beyond) expect(gap(b, q)).toBeLessThan(1e-14)
            else for (const value of q) expect(Math.abs(value)).toBeLessThan(20)
          }
    })
  }
})

describe('agrees: a round prism tends to the cylinder with the fourth power of its facets', () => {
  const whole = cylinder(0.01, 0.012)
  const places: Vector3[] = [
    [0.004, 0.002, 0.009],
    [0.013, 0.003, 0.001],
    [0.002, -0.001, 0.003],
    [0.03, 0.02, -0.03],
  ]
  const worst = (n: number, of: typeof fieldOf) =>
    Math.max(...places.map((p) => gap(of(prism(roundOutline(0.01, n), 0.012), p), of(whole, p))))
  test('B and A', () => {
    for (const of of [fieldOf, potentialOf]) {
      const ratio = worst(48, of) / worst(96, of)
      expect(ratio).toBeGreaterThan(14)
      expect(ratio).toBeLessThan(18)
    }
    expect(worst(96, fieldOf)).toBeLessThan(1e-6)
  })
  test('its demagnetizing factor too', () => {
    const factor = prismDemagnetizingFactor(prism(roundOutline(0.01, 48), 0.012))
    expect(Math.abs(factor - cylinderDemagnetizingFactor(whole))).toBeLessThan(3e-5)
  })
})

const leaning = unit([0.3, -0.8, 0.5])
const wedge = [-0.02, -0.006, 0.02, -0.012, 0.02, 0.012, -0.02, 0.006]
const ell = [0, 0, 0.03, 0, 0.03, 0.01, 0.01, 0.01, 0.01, 0.02, 0, 0.02]

describe('law: curl A = B, div A = 0, div B = 0, J leaning, inside and out', () => {
  test.each([
    ['wedge', wedge],
    ['hollow corner', ell],
  ])('%s', (_, outline) => {
    const magnet = prism(outline, 0.014, { direction: leaning, centre: [0.001, 0.002, 0] })
    fc.assert(
      fc.property(placeWithin(0.035), (p) => {
        const [x, y] = [p[0] - 0.001, p[1] - 0.002]
        const clear = outline.every((_, i) => {
          if (i % 2 === 1) return true
          const j = (i + 2) % outline.length
          const [dx, dy] = [outline[j]! - outline[i]!, outline[j + 1]! - outline[i + 1]!]
          return Math.abs((x - outline[i]!) * dy - (y - outline[i + 1]!) * dx) / Math.hypot(dx, dy) > 1e-3
        })
        fc.pre(clear && Math.abs(Math.abs(p[2]) - 0.007) > 1e-3)
        const { curl, divA, divB } = maxwellFaults(magnet, p, 4e-5)
        expect(curl).toBeLessThan(3e-5)
        expect(divA).toBeLessThan(3e-5)
        expect(divB * 1e-3).toBeLessThan(3e-5)
      }),
      { numRuns: 200 },
    )
  })
})

describe('law: cuts, corners on straight edges, shifts of the origin', () => {
  test('a wedge is the sum of what a slanting cut leaves', () => {
    const direction = leaning
    const whole = prism(wedge, 0.01, { direction })
    const parts = [
      prism([-0.02, -0.006, 0.02, -0.012, 0.02, 0.003, -0.02, -0.001], 0.01, { direction }),
      prism([-0.02, -0.001, 0.02, 0.003, 0.02, 0.012, -0.02, 0.006], 0.01, { direction }),
    ]
    fc.assert(
      fc.property(placeWithin(0.04), (p) => {
        expect(gap(fieldOf(whole, p), fieldOf(parts, p))).toBeLessThan(1e-11)
        expect(gap(potentialOf(whole, p), potentialOf(parts, p))).toBeLessThan(1e-14)
      }),
    )
  })
  test('a hollow corner is the sum of two blocks', () => {
    const arm = { frame: frameOf(0, 0, 0), polarization: 1 }
    const blocks: BlockMagnet[] = [
      { ...arm, centre: [0.015, 0.005, 0], size: [0.03, 0.01, 0.008] },
      { ...arm, centre: [0.005, 0.015, 0], size: [0.01, 0.01, 0.008] },
    ]
    fc.assert(
      fc.property(placeWithin(0.04), (p) => {
        expect(gap(fieldOf(prism(ell, 0.008), p), fieldOf(blocks, p))).toBeLessThan(1e-11)
        expect(gap(potentialOf(prism(ell, 0.008), p), potentialOf(blocks, p))).toBeLessThan(1e-14)
      }),
    )
  })
  test('more corners on the same edges change nothing, nor does another origin', () => {
    const direction = leaning
    const plain = prism(rectangle, 0.01, { direction })
    const dotted = prism(
      [-0.02, -0.01, 0, -0.01, 0.02, -0.01, 0.02, 0.01, -0.011, 0.01, -0.02, 0.01, -0.02, 0.002],
      0.01,
      { direction },
    )
    const shifted = prism(
      rectangle.map((v, i) => v + (i % 2 === 0 ? 0.5 : -0.2)),
      0.01,
      { direction, centre: [-0.5, 0.2, 0] },
    )
    fc.assert(
      fc.property(placeWithin(0.04), (p) => {
        expect(gap(fieldOf(dotted, p), fieldOf(plain, p))).toBeLessThan(1e-10)
        expect(gap(potentialOf(dotted, p), potentialOf(plain, p))).toBeLessThan(1e-13)
        expect(gap(potentialOf(shifted, p), potentialOf(plain, p))).toBeLessThan(1e-13)
      }),
    )
  })
  test('B keeps and A grows with the scale', () => {
    for (const k of [1e-9, 1e3, 1e9]) {
      const at = (s: number) =>
        prism(
          wedge.map((v) => v * s),
          0.014 * s,
          { direction: leaning },
        )
      const p: Vector3 = [0.013, 0.017, -0.004]
      const q = p.map((x) => x * k) as unknown as Vector3
      expect(gap(fieldOf(at(k), q), fieldOf(at(1), p))).toBeLessThan(1e-13)
      const A = potentialOf(at(k), q).map((a) => a / k)
      expect(gap(A, potentialOf(at(1), p))).toBeLessThan(1e-15)
    }
  })
})

describe('law: nothing but finite numbers', () => {
  test('on corners, edges, faces and their extensions; plates, needles and slivers', () => {
    const outlines = [wedge, ell, [0, 0, 1, 0, 0.5, 1e-9], [0, 0, 1e-6, 0, 1e-6, 1]]
    for (const outline of outlines)
      for (const height of [1e-8, 0.01, 1e4])
        for (const direction of [along(0), along(2), leaning]) {
          const magnet = prism(outline, height, { direction })
          const n = outline.length / 2
          for (let i = 0; i < n; i++)
            for (const t of [-1, 0, 0.5, 1, 2, 1e9])
              for (const z of [-0.5, 0, 0.5, 0.5 + 1e-15, 7]) {
                const j = (i + 1) % n
                const p: Vector3 = [
                  outline[2 * i]! + t * (outline[2 * j]! - outline[2 * i]!),
                  outline[2 * i + 1]! + t * (outline[2 * j + 1]! - outline[2 * i + 1]!),
                  z * height,
                ]
                for (const value of [...fieldOf(magnet, p), ...potentialOf(magnet, p)])
                  expect(Number.isFinite(value)).toBe(true)
              }
        }
  })
})

describe('agrees: the series keeps what `relativeError` asks', () => {
  const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true })
  const level = fc.double({ min: -1, max: 1, noNaN: true })
  const times = fc.double({ min: 2.5, max: 30, noNaN: true })
  const flat = fc.double({ min: -1.3, max: 1.3, noNaN: true })
  test('triangles, wedges and hollow corners, J in any direction', () => {
    fc.assert(
      fc.property(
        fc.constantFrom([0, 0, 1, 0, 0.2, 0.9], wedge, ell, roundOutline(1, 7)),
        flat,
        fc.tuple(turn, level),
        fc.tuple(turn, level),
        times,
        fc.constantFrom(1e-2, 1e-4, 1e-6),
        (outline, s, [φ, c], [χ, d], K, relativeError) => {
          const sphere = (angle: number, z: number): Vector3 => [
            Math.sqrt(1 - z * z) * Math.cos(angle),
            Math.sqrt(1 - z * z) * Math.sin(angle),
            z,
          ]
          const width = Math.max(...outline) - Math.min(...outline)
          const height = width * 10 ** s
          const magnet = prism(outline, height, { direction: unit(sphere(φ, c)) })
          // Largest extent from the centroid, by the area moments of triangles from the first corner
          let [area, mx, my] = [0, 0, 0]
          const n = outline.length / 2
          for (let i = 0; i < n; i++) {
            const j = (i + 1) % n
            const [ax, ay, bx, by] = [
              outline[2 * i]!,
              outline[2 * i + 1]!,
              outline[2 * j]!,
              outline[2 * j + 1]!,
            ]
            const cross = ax * by - ay * bx
            area += cross / 2
            mx += (cross * (ax + bx)) / 6
            my += (cross * (ay + by)) / 6
          }
          const [cx, cy] = [mx / area, my / area]
          const extent = outline.reduce(
            (most, v, i) => Math.max(most, Math.abs(v - (i % 2 === 0 ? cx : cy))),
            height / 2,
          )
          const p = sphere(χ, d).map((x, i) => x * K * extent + [cx, cy, 0][i]!) as unknown as Vector3
          const dipole = (area * height) / (4 * Math.PI)
          const wrongB = gap(fieldOf(magnet, p, { relativeError }), fieldOf(magnet, p))
          const wrongA = gap(potentialOf(magnet, p, { relativeError }), potentialOf(magnet, p))
          expect(wrongB).toBeLessThan((relativeError * dipole) / extent ** 3 + 3e-15)
          expect(wrongA).toBeLessThan((relativeError * dipole) / extent ** 2 + 3e-15 * extent)
        },
      ),
      { numRuns: 1000 },
    )
  })
})

describe('law: demagnetizing factors of a prism', () => {
  test('across a round rod: half of what the factor along it leaves, within 2e-4', () => {
    const rod = { radius: 0.005, height: 0.03 }
    const across = prismDemagnetizingFactor(
      prism(roundOutline(rod.radius, 40), rod.height, { direction: unit([0.6, 0.8, 0]) }),
    )
    expect(Math.abs(across - (1 - cylinderDemagnetizingFactor(rod)) / 2)).toBeLessThan(2e-4)
  })
  test('agree with the cuboid within 1e-6 along each axis', () => {
    for (let axis = 0; axis < 3; axis++) {
      const order = [(axis + 1) % 3, (axis + 2) % 3, axis].map((k) => size[k]!) as unknown as Vector3
      expect(
        Math.abs(
          prismDemagnetizingFactor(prism(rectangle, 0.01, { direction: along(axis) })) -
            cuboidDemagnetizingFactor(order),
        ),
      ).toBeLessThan(1e-6)
    }
  })
  test('of three directions square to each other sum to one, whatever the outline', () => {
    for (const outline of [wedge, ell, [0, 0, 0.03, 0, 0.01, 0.02]]) {
      const [u, v, w] = frameOf(0.7, 0.3, -1)
      const sum = [u, v, w].reduce(
        (total, direction) => total + prismDemagnetizingFactor(prism(outline, 0.01, { direction })),
        0,
      )
      expect(Math.abs(sum - 1)).toBeLessThan(2e-6)
    }
  })
})

describe('refusals', () => {
  const p = new Float64Array([0, 0, 1])
  const good = prism(rectangle, 1)
  test.each([
    ['two corners', { ...good, outline: new Float64Array([0, 0, 1, 0]) }, 'wrong-length'],
    ['half a corner', { ...good, outline: new Float64Array(7) }, 'wrong-length'],
    ['clockwise', { ...good, outline: new Float64Array([0, 0, 0, 1, 1, 0]) }, 'conflict'],
    ['no area', { ...good, outline: new Float64Array([0, 0, 1, 0, 2, 0]) }, 'conflict'],
    ['crossed', { ...good, outline: new Float64Array([0, 0, 3, 0, 0, 1, 3, 3]) }, 'conflict'],
    ['edge of no length', { ...good, outline: new Float64Array([0, 0, 0, 0, 1, 0, 0, 1]) }, 'below-minimum'],
    ['corner at infinity', { ...good, outline: new Float64Array([0, 0, Number.NaN, 0, 0, 1]) }, 'not-finite'],
    ['height zero', { ...good, height: 0 }, 'below-minimum'],
    ['direction too long', { ...good, direction: [1, 1, 0] as Vector3 }, 'conflict'],
    ['J not a number', { ...good, polarization: Number.NaN }, 'not-finite'],
  ])('law: %s', (_, magnet, expected) => {
    expect(refusalCode(() => prismFluxDensity([magnet], p))).toBe(expected)
    expect(refusalCode(() => prismVectorPotential([magnet], p))).toBe(expected)
    expect(refusalCode(() => prismDemagnetizingFactor({ ...magnet, polarization: 1 }))).toBe(
      expected === 'not-finite' && Number.isNaN(magnet.polarization) ? 'none' : expected,
    )
  })
})
