/** Checks of iron images: boundary condition, merging, convergence of the double series, known gap fields. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { identityFrame, type Vector3 } from '../../numerics/vector.ts'
import { type BlockMagnet, blockFluxDensity } from './block-magnet.ts'
import { imageMagnets, imageReflectionsFor } from './image-plane.ts'
import { alternatingSequence, discMagnets } from './magnet-ring.ts'
import { arrayFluxDensity } from './periodic-array.ts'

const block = (centre: Vector3, more: Partial<BlockMagnet> = {}): BlockMagnet => ({
  centre,
  frame: identityFrame,
  size: [0.04, 0.02, 0.01],
  polarization: 1.3,
  ...more,
})
const field = (magnets: readonly BlockMagnet[], p: Vector3) => blockFluxDensity(magnets, new Float64Array(p))
const ring = (count: number, height: number, radius = 0.09) =>
  discMagnets({
    count,
    radius,
    height,
    radialLength: 0.04,
    width: (0.9 * 2 * (radius - 0.02) * Math.PI) / Math.max(count, 4) / 1.2,
    thickness: 0.01,
    polarization: 1.28,
    sequence: alternatingSequence(count),
  })
const code = (f: () => unknown) => {
  try {
    f()
  } catch (error) {
    return (error as { code?: string }).code
  }
  return 'none'
}

describe('law: B stands square on the iron', () => {
  const [c, s] = [Math.cos(0.6), Math.sin(0.6)]
  const tilted = block([0.003, -0.004, 0.02], {
    frame: [
      [c, 0, -s],
      [0, 1, 0],
      [s, 0, c],
    ],
  })
  test('one plane, any pose', () => {
    for (const magnets of [
      imageMagnets({ magnets: [tilted], lowerPlane: 0 }),
      imageMagnets({ magnets: [tilted], upperPlane: 0.05 }),
    ]) {
      expect(magnets).toHaveLength(2)
      const z = magnets[1]!.centre[2] < 0 ? 0 : 0.05
      for (const [x, y] of [
        [0, 0],
        [0.03, 0.01],
        [-0.2, 0.1],
      ] as const) {
        const b = field(magnets, [x, y, z])
        expect(Math.hypot(b[0]!, b[1]!)).toBeLessThan(1e-14)
      }
    }
  })
  test('two planes, once the series has converged', () => {
    const magnets = imageMagnets({
      magnets: ring(12, 0.005),
      lowerPlane: 0,
      upperPlane: 0.026,
      reflections: 9,
    })
    for (const z of [0, 0.026])
      for (const [r, θ] of [
        [0.09, 0.1],
        [0.06, 0.3],
        [0.115, 0.7],
      ] as const) {
        const b = field(magnets, [r * Math.cos(θ), r * Math.sin(θ), z])
        expect(Math.hypot(b[0]!, b[1]!)).toBeLessThan(1e-8)
      }
  })
})

describe('law: a magnet standing on iron is one of twice the thickness', () => {
  test('merged and unmerged give the same field', () => {
    const magnet = block([0, 0, 0.005])
    const merged = imageMagnets({ magnets: [magnet], lowerPlane: 0 })
    expect(merged).toHaveLength(1)
    expect(merged[0]!.size[2]).toBeCloseTo(0.02, 14)
    fc.assert(
      fc.property(
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: 0.0101, max: 0.06, noNaN: true }),
        (x, z) => {
          const apart = field([magnet, block([0, 0, -0.005])], [x, 0.003, z])
          const together = field(merged, [x, 0.003, z])
          for (let i = 0; i < 3; i++) expect(Math.abs(apart[i]! - together[i]!)).toBeLessThan(1e-13)
        },
      ),
    )
  })
  test('turned upside down it merges too; floating it does not', () => {
    const down = block([0, 0, 0.005], {
      frame: [
        [1, 0, 0],
        [0, -1, 0],
        [0, 0, -1],
      ],
    })
    expect(imageMagnets({ magnets: [down], lowerPlane: 0 })).toHaveLength(1)
    expect(imageMagnets({ magnets: [block([0, 0, 0.006])], lowerPlane: 0 })).toHaveLength(2)
  })
  test('magnets on either plane merge with the images of the nearer one', () => {
    const magnets = [...ring(12, -0.013), ...ring(12, 0.013)]
    const all = imageMagnets({ magnets, lowerPlane: -0.018, upperPlane: 0.018, reflections: 3 })
    expect(all).toHaveLength(24 * 7)
    // the middle plane is one of symmetry, as the arrangement is
    const b = field(all, [0.08, 0.01, 0])
    expect(Math.hypot(b[0]!, b[1]!)).toBeLessThan(1e-14)
  })
})

describe('law: the image series of a ring converges as `imageReflectionsFor` says', () => {
  test('4 to 32 poles, narrow and wide, error 1e-2 to 1e-8', () => {
    for (const [count, radius] of [
      [4, 0.06],
      [8, 0.08],
      [12, 0.09],
      [20, 0.12],
      [32, 0.15],
    ] as const)
      for (const planeDistance of [0.02, 0.036, 0.08]) {
        const make = (reflections: number) =>
          imageMagnets({
            magnets: ring(count, 0.005, radius),
            lowerPlane: 0,
            upperPlane: planeDistance,
            reflections,
          })
        const points: number[] = []
        for (const r of [0.6, 0.85, 1, 1.15, 1.3])
          for (const θ of [0, 0.3, 0.5])
            for (const z of [0.0101, planeDistance])
              points.push(
                radius * r * Math.cos((θ * 2 * Math.PI) / count),
                radius * r * Math.sin((θ * 2 * Math.PI) / count),
                z,
              )
        const p = new Float64Array(points)
        const full = blockFluxDensity(
          make(
            imageReflectionsFor({
              poleCount: count,
              meanRadius: radius,
              planeDistance,
              relativeError: 1e-11,
            }),
          ),
          p,
        )
        const largest = Math.max(...full.map(Math.abs))
        for (const relativeError of [1e-2, 1e-4, 1e-6, 1e-8]) {
          const N = imageReflectionsFor({
            poleCount: count,
            meanRadius: radius,
            planeDistance,
            relativeError,
          })
          const cut = blockFluxDensity(make(N), p)
          const worst = Math.max(...cut.map((b, i) => Math.abs(b - full[i]!)))
          expect(worst / largest, `${count} poles, D ${planeDistance}, ${relativeError}`).toBeLessThan(
            relativeError,
          )
        }
      }
  })
  test('repeats fall with distance and grow with accuracy', () => {
    const N = (planeDistance: number, relativeError: number) =>
      imageReflectionsFor({ poleCount: 12, meanRadius: 0.09, planeDistance, relativeError })
    expect(N(0.01, 1e-6)).toBeGreaterThan(N(0.03, 1e-6))
    expect(N(0.03, 1e-9)).toBeGreaterThan(N(0.03, 1e-3))
    expect(N(10, 1e-3)).toBe(1)
  })
})

describe('agrees: long blocks in a long row between planes against the endless array', () => {
  // 163 magnets of 4 m length, pole pitch 40 mm: the row's ends and the magnets' ends are too far to be felt
  test('pole centre 1e-3, sum of 120 images', () => {
    const row = (z: number) =>
      Array.from(
        { length: 163 },
        (_, k): BlockMagnet => ({
          centre: [(k - 81) * 0.04, 0, z],
          frame: identityFrame,
          size: [0.03, 4, 0.01],
          polarization: (k % 2 === 0 ? -1 : 1) * 1.2,
        }),
      )
    const images = imageMagnets({
      magnets: [...row(-0.013), ...row(0.013)],
      lowerPlane: -0.018,
      upperPlane: 0.018,
      reflections: 12,
    })
    const array = {
      polePitch: 0.04,
      magnetWidth: 0.03,
      magnetThickness: 0.01,
      gap: 0.016,
      remanence: 1.2,
      recoilPermeability: 1,
      backing: 'iron-pair',
    } as const
    for (const [x, z] of [
      [0, 0],
      [0.01, 0],
      [0.013, 0.004],
    ] as const) {
      const b = field(images, [x, 0, z])
      const series = arrayFluxDensity(array, { x, height: z })
      expect(Math.abs(b[2]! - series.across)).toBeLessThan(1e-3 * 0.6)
      expect(Math.abs(b[0]! - series.along)).toBeLessThan(1e-3 * 0.6)
    }
    const air = field([...row(-0.013), ...row(0.013)], [0, 0, 0])
    expect(air[2]).toBeCloseTo(
      arrayFluxDensity({ ...array, backing: 'air-pair' }, { x: 0, height: 0 }).across,
      3,
    )
  })
})

describe('law: very wide poles between iron reach the one-dimensional circuit B = Br h/(h + g/2)', () => {
  test('1 m blocks 10 mm thick, 16 mm apart', () => {
    const wide = (z: number) => block([0, 0, z], { size: [1, 1, 0.01] })
    const images = imageMagnets({
      magnets: [wide(-0.013), wide(0.013)],
      lowerPlane: -0.018,
      upperPlane: 0.018,
      reflections: 400,
    })
    expect(field(images, [0, 0, 0])[2]).toBeCloseTo((1.3 * 20) / 36, 3)
  })
})

describe('refusals', () => {
  const magnets = [block([0, 0, 0.005])]
  test.each([
    ['magnet in the iron', () => imageMagnets({ magnets, lowerPlane: 0.001 }), 'conflict'],
    ['magnet behind the iron', () => imageMagnets({ magnets, upperPlane: -0.1 }), 'conflict'],
    ['planes upside down', () => imageMagnets({ magnets, lowerPlane: 0, upperPlane: -1 }), 'conflict'],
    ['no reflections', () => imageMagnets({ magnets, lowerPlane: 0, upperPlane: 1 }), 'missing-key'],
    [
      'half a reflection',
      () => imageMagnets({ magnets, lowerPlane: 0, upperPlane: 1, reflections: 0.5 }),
      'below-minimum',
    ],
    [
      'plane at infinity',
      () => imageMagnets({ magnets, lowerPlane: Number.NEGATIVE_INFINITY }),
      'not-finite',
    ],
    [
      'planes too close',
      () => imageReflectionsFor({ poleCount: 2, meanRadius: 1, planeDistance: 1e-4, relativeError: 1e-9 }),
      'no-convergence',
    ],
    [
      'odd poles',
      () => imageReflectionsFor({ poleCount: 3, meanRadius: 1, planeDistance: 1, relativeError: 1e-9 }),
      'not-a-choice',
    ],
  ])('law: %s', (_, f, expected) => {
    expect(code(f)).toBe(expected)
  })
  test('law: without planes the magnets come back', () => {
    expect(imageMagnets({ magnets })).toEqual(magnets)
  })
})

describe('agrees: image sums of a twelve-pole machine — 16 mm between faces, fixed J 1.28 T', () => {
  const magnets = imageMagnets({
    magnets: discMagnets({
      count: 12,
      radius: 0.09,
      height: 0.013,
      radialLength: 0.04,
      width: 0.02,
      thickness: 0.01,
      polarization: 1.28,
      sequence: alternatingSequence(12),
    }).flatMap((m) => [m, { ...m, centre: [m.centre[0], m.centre[1], -0.013] as Vector3 }]),
    lowerPlane: -0.018,
    upperPlane: 0.018,
    reflections: 4,
  })
  check('mid-gap over a pole centre', () => field(magnets, [0.09, 0, 0])[2]!, '0.553')
})
