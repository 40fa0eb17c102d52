/** Checks of what magnets feel of each other: a solenoid table, reciprocity, circuits of unlike magnets. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { cylinder, frameOf, prism, refusalCode, unit } from '../../../test/sample-magnet.ts'
import type { Vector3 } from '../../numerics/vector.ts'
import type { BlockMagnet } from './block-magnet.ts'
import { cylinderDemagnetizingFactor } from './demagnetizing-factor.ts'
import { imageMagnets } from './image-plane.ts'
import { type Magnet, magnetVolume } from './magnet.ts'
import { magnetInfluence, selfFactor } from './magnet-influence.ts'
import { workingPoint, workingPolarizations } from './working-point.ts'

describe('source: nagaoka1909, table of the factor L/L∞ by diameter over length (from two transcriptions, not opened)', () => {
  // The mean B of a cylinder is J times this factor, so it is one less the demagnetizing factor
  const factor = (ratio: number) => () => 1 + selfFactor(cylinder(ratio / 2, 1))
  for (const [ratio, printed] of [
    [0.25, '0.901649'],
    [0.5, '0.818136'],
    [1, '0.688423'],
    [2, '0.525510'],
    [2.5, '0.471865'],
    [3, '0.429199'],
  ] as const)
    check(`diameter ${ratio} lengths`, factor(ratio), printed)
  // The table was summed from a series by hand and strays in its last digits as the coil gets short
  for (const [ratio, printed] of [
    [1.5, '0.595045'],
    [4.5, '0.340898'],
    [5, '0.319825'],
    [10, '0.203315'],
  ] as const)
    check(`diameter ${ratio} lengths`, factor(ratio), printed, { absolute: 1e-5 })
})

describe('law: demagnetizing factor of a cylinder', () => {
  test('disc to one, rod to 8/(3π) x − x²/2 with x = a/h, monotone between', () => {
    expect(cylinderDemagnetizingFactor({ radius: 1e6, height: 1 })).toBeGreaterThan(0.99998)
    const rod = cylinderDemagnetizingFactor({ radius: 1, height: 1e4 })
    expect(rod / ((8 / (3 * Math.PI)) * 1e-4 - 1e-8 / 2)).toBeCloseTo(1, 7)
    let last = 0
    for (let s = -3; s <= 3; s += 0.1) {
      const N = cylinderDemagnetizingFactor({ radius: 10 ** s, height: 1 })
      expect(N).toBeGreaterThan(last)
      last = N
    }
  })
  test('a length not above zero is refused', () => {
    expect(refusalCode(() => cylinderDemagnetizingFactor({ radius: 0, height: 1 }))).toBe('below-minimum')
  })
})

const block = (centre: Vector3, more: Partial<BlockMagnet> = {}): BlockMagnet => ({
  centre,
  frame: frameOf(0, 0, 0),
  size: [0.02, 0.012, 0.008],
  polarization: 1.3,
  ...more,
})
const disc = cylinder(0.008, 0.006, {
  centre: [0.02, 0.005, 0.013],
  frame: frameOf(0.3, 0.5, 0),
  polarization: 0.4,
})
const wedge = prism([-0.01, -0.004, 0.01, -0.007, 0.01, 0.007, -0.01, 0.004], 0.008, {
  centre: [-0.004, 0.022, -0.006],
  direction: unit([0.5, 0.7, 0.3]),
  polarization: 1.1,
})

describe('law: what one magnet does to another it suffers in turn, V1 J1 ⟨B2·ĵ1⟩ = V2 J2 ⟨B1·ĵ2⟩', () => {
  const all: readonly Magnet[] = [block([0, 0, 0]), disc, wedge]
  test.each([
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const)('shapes %i and %i', (i, j) => {
    const [a, b] = [all[i]!, all[j]!]
    const there = magnetVolume(a) * a.polarization * magnetInfluence(a, [b])
    const back = magnetVolume(b) * b.polarization * magnetInfluence(b, [a])
    expect(there / back).toBeCloseTo(1, 4)
  })
})

describe('agrees: equal magnets by the matrix and by the one-magnet circuit', () => {
  test('a ring of six over iron', () => {
    const discs = Array.from({ length: 6 }, (_, k) =>
      cylinder(0.009, 0.006, {
        centre: [0.03 * Math.cos((Math.PI * k) / 3), 0.03 * Math.sin((Math.PI * k) / 3), 0.003],
        polarization: k % 2 === 0 ? 1 : -1,
      }),
    )
    const field = discs.map((one) => imageMagnets({ magnets: [one], lowerPlane: 0 }))
    // A merged magnet stands for its iron side too: its own factor is that of the whole
    const whole = field.map(([one]) => one!)
    const influence = new Float64Array(36)
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++)
        influence[6 * i + j] =
          i === j
            ? selfFactor(whole[i]!)
            : magnetInfluence(
                whole[i]!,
                field[j]!.map((one) => ({ ...one, polarization: 1 })),
              )
    const J = workingPolarizations({
      influence,
      remanence: discs.map((one) => 1.28 * one.polarization),
      recoilPermeability: discs.map(() => 1.05),
    })
    const point = workingPoint({ magnets: field.flat(), own: 0, remanence: 1.28, recoilPermeability: 1.05 })
    J.forEach((value, k) => {
      expect(value).toBeCloseTo((k % 2 === 0 ? 1 : -1) * point.polarization, 6)
    })
  })
})

describe('law: unlike magnets in one circuit', () => {
  const pair = (first: number, second: number) =>
    workingPolarizations({
      influence: [-0.5, 0.2, 0.1, -0.3],
      remanence: [first, second],
      recoilPermeability: [1.05, 1.1],
    })
  test('each J satisfies its own recoil line', () => {
    const [a, b] = pair(1.3, 0.4) as unknown as [number, number]
    expect(a).toBeCloseTo(1.3 + 0.05 * (-0.5 * a + 0.2 * b), 14)
    expect(b).toBeCloseTo(0.4 + 0.1 * (0.1 * a - 0.3 * b), 14)
  })
  test('linear in the remanences; a neighbour against it weakens, one with it strengthens', () => {
    expect(pair(2.6, 0.8)[0]!).toBeCloseTo(2 * pair(1.3, 0.4)[0]!, 14)
    expect(pair(1.3, -0.4)[0]!).toBeLessThan(pair(1.3, 0)[0]!)
    expect(pair(1.3, 0.4)[0]!).toBeGreaterThan(pair(1.3, 0)[0]!)
  })
  test('μrec 1 leaves every J at its remanence', () => {
    expect([
      ...workingPolarizations({
        influence: [-0.5, 9, -9, -0.3],
        remanence: [1.3, -0.4],
        recoilPermeability: [1, 1],
      }),
    ]).toEqual([1.3, -0.4])
  })
  test('lists that do not match, values out of range and not finite are refused', () => {
    const good = { influence: [-0.5], remanence: [1], recoilPermeability: [1.05] }
    expect(refusalCode(() => workingPolarizations({ ...good, influence: [1, 2] }))).toBe('wrong-length')
    expect(refusalCode(() => workingPolarizations({ ...good, recoilPermeability: [] }))).toBe('wrong-length')
    expect(refusalCode(() => workingPolarizations({ ...good, recoilPermeability: [0.9] }))).toBe(
      'below-minimum',
    )
    expect(refusalCode(() => workingPolarizations({ ...good, remanence: [Number.NaN] }))).toBe('not-finite')
    expect(
      refusalCode(() => workingPolarizations({ ...good, influence: [1], recoilPermeability: [2] })),
    ).toBe('no-convergence')
  })
})

describe('law: halves make the whole, unlike shapes', () => {
  test('two half-high discs, touching, average to one', () => {
    const halves = [-1, 1].map((side) => cylinder(0.01, 0.004, { centre: [0, 0, 0.002 * side] }))
    const h = selfFactor(halves[0]!) + magnetInfluence(halves[0]!, [halves[1]!])
    expect(Math.abs(h - selfFactor(cylinder(0.01, 0.008)))).toBeLessThan(1e-3)
  })
  test('J along another edge is another factor: a prism turned on its side', () => {
    const lying = prism([-0.01, -0.006, 0.01, -0.006, 0.01, 0.006, -0.01, 0.006], 0.008, {
      direction: [1, 0, 0],
    })
    const upright = block([0, 0, 0], { size: [0.012, 0.008, 0.02] })
    expect(Math.abs(selfFactor(lying) - selfFactor(upright))).toBeLessThan(1e-6)
  })
})
