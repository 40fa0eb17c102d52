/** Checks of magnets of all shapes together: sums, moves, iron images, volumes. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gap } from '../../../test/sample-block.ts'
import {
  cylinder,
  fieldOf,
  frameOf,
  out,
  placeWithin,
  potentialOf,
  prism,
  refusalCode,
  unit,
} from '../../../test/sample-magnet.ts'
import { turnAboutZ, type Vector3 } from '../../numerics/vector.ts'
import { type BlockMagnet, blockFluxDensity, blockVectorPotential } from './block-magnet.ts'
import { cylinderFluxDensity } from './cylinder-magnet.ts'
import { imageMagnets } from './image-plane.ts'
import { type Magnet, magnetAxis, magnetFluxDensity, magnetVectorPotential, magnetVolume } from './magnet.ts'
import { axialExtent, mirroredMagnet, raisedMagnet, scaledMagnet, turnedMagnet } from './magnet-pose.ts'
import { magnetVolumePoints } from './magnet-volume.ts'
import { prismFluxDensity } from './prism-magnet.ts'

const pose = { centre: [0.01, -0.02, 0.03] as Vector3, frame: frameOf(0.4, -0.7, 1.1) }
const wedge = [-0.02, -0.006, 0.02, -0.012, 0.02, 0.012, -0.02, 0.006]
const block: BlockMagnet = { ...pose, size: [0.04, 0.02, 0.01], polarization: 1.3 }
const rod = cylinder(0.008, 0.012, { ...pose, polarization: -1.1 })
const leaning = prism(wedge, 0.01, { ...pose, direction: unit([0.3, -0.8, 0.5]), polarization: 1.2 })
const all: readonly Magnet[] = [block, rod, leaning]
const each = all.map((magnet, i) => [['block', 'cylinder', 'prism'][i]!, magnet] as const)

describe('agrees: together they give what each shape gives alone', () => {
  const p = new Float64Array([0.03, 0.01, 0.05, -0.1, 0.2, 0.3, 0.012, -0.018, 0.031])
  test('B is the sum', () => {
    const sum = magnetFluxDensity(all, p, { relativeError: 1e-5 })
    const parts = [
      blockFluxDensity([block], p, { relativeError: 1e-5 }),
      cylinderFluxDensity([rod], p, { relativeError: 1e-5 }),
      prismFluxDensity([leaning], p, { relativeError: 1e-5 }),
    ]
    sum.forEach((b, i) => {
      expect(b).toBeCloseTo(parts[0]![i]! + parts[1]![i]! + parts[2]![i]!, 15)
    })
  })
  test('blocks alone are bit for bit what the block functions give', () => {
    const blocks = [block, { ...block, centre: [0, 0, 0] as Vector3 }]
    expect([...magnetFluxDensity(blocks, p, { relativeError: 1e-4 })]).toEqual([
      ...blockFluxDensity(blocks, p, { relativeError: 1e-4 }),
    ])
    expect([...magnetVectorPotential(blocks, p)]).toEqual([...blockVectorPotential(blocks, p)])
  })
  test('no magnets, no field', () => {
    expect([...magnetFluxDensity([], p), ...magnetVectorPotential([], p)].every((b) => b === 0)).toBe(true)
  })
})

describe('law: a magnet turned, raised or scaled takes its field along', () => {
  test.each(each)('%s', (_, magnet) => {
    fc.assert(
      fc.property(placeWithin(0.07), fc.double({ min: -4, max: 4, noNaN: true }), (p, angle) => {
        const B = fieldOf(magnet, p)
        expect(
          gap(fieldOf(turnedMagnet(magnet, angle), turnAboutZ(p, angle)), turnAboutZ(B, angle)),
        ).toBeLessThan(1e-9)
        expect(gap(fieldOf(raisedMagnet(magnet, 0.02), [p[0], p[1], p[2] + 0.02]), B)).toBeLessThan(1e-9)
        expect(gap(fieldOf(scaledMagnet(magnet, -2), p), [-2 * B[0], -2 * B[1], -2 * B[2]])).toBeLessThan(
          1e-12,
        )
        const A = potentialOf(magnet, p)
        const turned = potentialOf(turnedMagnet(magnet, angle), turnAboutZ(p, angle))
        expect(gap(turned, turnAboutZ(A, angle))).toBeLessThan(1e-12)
      }),
      { numRuns: 50 },
    )
  })
})

describe('law: before flat iron B stands square on it, whatever shape, pose and direction of J', () => {
  const along = prism(wedge, 0.01, { ...pose, direction: [0, 1, 0] })
  test.each([...each, ['prism, J along the iron', along] as const])('%s', (_, magnet) => {
    const pair = imageMagnets({ magnets: [magnet], lowerPlane: -0.001 })
    expect(pair).toHaveLength(2)
    fc.assert(
      fc.property(placeWithin(0.1), (p) => {
        const B = fieldOf(pair, [p[0], p[1], -0.001])
        expect(Math.hypot(B[0], B[1])).toBeLessThan(1e-13)
      }),
    )
    expect(gap(mirroredMagnet(mirroredMagnet(magnet, 0.2), 0.2).centre, magnet.centre)).toBeLessThan(1e-15)
    const mirror = mirroredMagnet(magnet, -0.001)
    const [x, y, z] = magnetAxis(magnet)
    expect(gap(magnetAxis(mirror), [-x, -y, z])).toBeLessThan(1e-15)
  })
  test('between two planes too, once the images converge', () => {
    const magnets = imageMagnets({ magnets: all, lowerPlane: -0.01, upperPlane: 0.07, reflections: 60 })
    for (const z of [-0.01, 0.07]) {
      const B = fieldOf(magnets, [0.02, 0.01, z])
      expect(Math.hypot(B[0], B[1])).toBeLessThan(2e-5)
    }
  })
})

describe('law: what stands on iron with its J upright merges with its image, and only that', () => {
  const standing: readonly (readonly [string, Magnet, number])[] = [
    ['block', { ...block, centre: [0, 0, 0.005], frame: frameOf(0.3, 0, 0) }, 1],
    ['cylinder', cylinder(0.01, 0.01, { centre: [0, 0, 0.005] }), 1],
    [
      'cylinder upside down',
      cylinder(0.01, 0.01, { centre: [0, 0, 0.005], frame: frameOf(0, Math.PI, 0) }),
      1,
    ],
    ['wedge', prism(wedge, 0.01, { centre: [0, 0, 0.005] }), 1],
    ['wedge, J along the iron', prism(wedge, 0.01, { centre: [0, 0, 0.005], direction: [1, 0, 0] }), 2],
    ['wedge, J slanting', prism(wedge, 0.01, { centre: [0, 0, 0.005], direction: unit([1, 0, 1]) }), 2],
    [
      'cylinder lying',
      cylinder(0.005, 0.01, { centre: [0, 0, 0.005], frame: frameOf(0, Math.PI / 2, 0) }),
      2,
    ],
  ]
  test.each(standing)('%s', (_, magnet, count) => {
    const images = imageMagnets({ magnets: [magnet], lowerPlane: 0 })
    expect(images).toHaveLength(count)
    const apart = [magnet, mirroredMagnet(magnet, 0)]
    fc.assert(
      fc.property(placeWithin(0.04), (p) => {
        const q: Vector3 = [p[0], p[1], 0.0101 + Math.abs(p[2])]
        expect(gap(fieldOf(images, q), fieldOf(apart, q))).toBeLessThan(1e-12)
      }),
      { numRuns: 30 },
    )
  })
  test('a magnet reaching into the iron is refused', () => {
    for (const magnet of all)
      expect(refusalCode(() => imageMagnets({ magnets: [magnet], lowerPlane: 0.029 }))).toBe('conflict')
    const [low, high] = axialExtent(leaning)
    expect(
      imageMagnets({ magnets: [leaning], lowerPlane: low - 1e-9, upperPlane: high + 1e-9, reflections: 0 }),
    ).toHaveLength(2)
  })
})

describe('law: volume points lie inside, weigh the volume, and integrate polynomials', () => {
  test.each(each)('%s', (_, magnet) => {
    for (const order of [1, 2, 5, 6]) {
      const { points, weights } = magnetVolumePoints(magnet, order)
      expect(points.length).toBe(3 * weights.length)
      const V = magnetVolume(magnet)
      expect(weights.reduce((sum, w) => sum + w, 0) / V).toBeCloseTo(1, 13)
      const [low, high] = axialExtent(magnet)
      let across = 0
      for (let i = 0; i < weights.length; i++) {
        expect(points[3 * i + 2]!).toBeGreaterThan(low)
        expect(points[3 * i + 2]!).toBeLessThan(high)
        across += weights[i]! * (points[3 * i]! - magnet.centre[0])
      }
      // The wedge's centroid lies off its origin: 40 mm long, 12 and 24 mm wide
      const off = 'outline' in magnet ? out(magnet, [(0.04 * (24 - 12)) / (6 * (24 + 12)), 0, 0])[0] : 0
      if (order > 1) expect(across / V).toBeCloseTo(off, 12)
    }
  })
  test('second and fourth moments of a cylinder', () => {
    const { points, weights } = magnetVolumePoints(cylinder(2, 3), 6)
    let [xx, xxyy, zz] = [0, 0, 0]
    weights.forEach((w, i) => {
      const [x, y, z] = [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]
      xx += w * x * x
      xxyy += w * x * x * y * y
      zz += w * z ** 4
    })
    const V = 12 * Math.PI
    expect(xx / V).toBeCloseTo(1, 12)
    expect(xxyy / V).toBeCloseTo(16 / 24, 12)
    expect(zz / V).toBeCloseTo(1.5 ** 4 / 5, 12)
  })
  test('a hollow corner: points within, area right', () => {
    const ell = prism([0, 0, 3, 0, 3, 1, 1, 1, 1, 2, 0, 2], 1)
    const { points, weights } = magnetVolumePoints(ell, 4)
    let x = 0
    weights.forEach((w, i) => {
      expect(points[3 * i]! < 1 || points[3 * i + 1]! < 1).toBe(true)
      x += w * points[3 * i]!
    })
    expect(x).toBeCloseTo(3 * 1.5 + 1 * 0.5, 12)
  })
  test('order outside 1 … 64 is refused', () => {
    expect(refusalCode(() => magnetVolumePoints(rod, 0))).toBe('not-a-choice')
  })
})

describe('law: lowest and highest z hold every corner', () => {
  test('shapes', () => {
    expect(axialExtent(cylinder(0.01, 0.004, { frame: frameOf(0, Math.PI / 2, 0) }))[1]).toBeCloseTo(0.01, 14)
    const slanting = cylinder(0.01, 0.004, { frame: frameOf(0, 0.3, 0) })
    expect(axialExtent(slanting)[1]).toBeCloseTo(0.01 * Math.sin(0.3) + 0.002 * Math.cos(0.3), 14)
    const [low, high] = axialExtent(prism([0, 0, 3, 0, 0, 1], 2, { frame: frameOf(0, Math.PI / 2, 0) }))
    expect(low).toBeCloseTo(-3, 14)
    expect(high).toBeCloseTo(0, 14)
  })
})

describe('refusals', () => {
  test('law: the magnet at fault is named by its place in the list', () => {
    const p = new Float64Array(3)
    expect(() => magnetFluxDensity([block, rod, { ...leaning, height: 0 }], p)).toThrow(
      /magnets\[2\]\.height/,
    )
    expect(() => magnetVectorPotential([block, { ...rod, radius: -1 }], p)).toThrow(/magnets\[1\]\.radius/)
    expect(() => magnetFluxDensity([{ ...block, size: [1, 0, 1] }], p)).toThrow(/magnets\[0\]\.size\[1\]/)
    expect(refusalCode(() => magnetFluxDensity([block], p, { relativeError: 2 }))).toBe('above-maximum')
  })
})
