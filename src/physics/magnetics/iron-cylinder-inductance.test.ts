/** Checks of what iron tubes add to inductances: images in two dimensions, Neumann's integral, symmetry, limits. */
import { describe, expect, test } from 'vitest'
import { mutualInductance } from './inductance.ts'
import { ironTubeInductance, type TubedPaths } from './iron-cylinder-inductance.ts'

/** A coil on a cylinder: two runs at ± half, joined along the circumference. */
function coil(radius: number, half: number, length: number, { chords = 24, angle = 0, height = 0 } = {}) {
  const points: number[] = []
  const push = (θ: number, z: number) =>
    points.push(radius * Math.cos(θ + angle), radius * Math.sin(θ + angle), z + height)
  for (let i = 0; i <= chords; i++) push(-half + (2 * half * i) / chords, -length / 2)
  for (let i = 0; i <= chords; i++) push(half - (2 * half * i) / chords, length / 2)
  push(-half, -length / 2)
  return new Float64Array(points)
}
/** A wave round the shaft: 2p runs joined alternately at either end. */
function wave(radius: number, length: number, polePairs: number, chords = 6) {
  const points: number[] = []
  for (let run = 0; run < 2 * polePairs; run++) {
    const z = ((run % 2 === 0 ? -1 : 1) * length) / 2
    for (let i = 0; i <= chords; i++) {
      const θ = ((run - 1 + i / chords) * Math.PI) / polePairs
      points.push(radius * Math.cos(θ), radius * Math.sin(θ), z)
    }
  }
  points.push(points[0]!, points[1]!, points[2]!)
  return new Float64Array(points)
}
const inverted = (path: Float64Array, R: number) =>
  path.map((x, i) =>
    i % 3 === 2 ? x : (x * R * R) / (path[i - (i % 3)]! ** 2 + path[i - (i % 3) + 1]! ** 2),
  )
const ring = { radius: 0.0473, thickness: 0.006 }
const sleeve = { radius: 0.062, thickness: 0.003 }
const own = (path: Float64Array, more: Partial<TubedPaths>) =>
  ironTubeInductance({ pathA: path, pathB: path, ...more })[0]!

describe('agrees: images of long straight wires in two dimensions', () => {
  // a wire at r before ideal iron of radius R has a like image at R²/r; the images on the axis cancel
  const half = 0.12
  const image = (r: number, R: number, α: number) => {
    const d = (β: number) => Math.hypot(R ** 2 / r - r * Math.cos(β), r * Math.sin(β))
    return 2e-7 * (Math.log(d(α + 2 * half)) + Math.log(d(α - 2 * half)) - 2 * Math.log(d(α)))
  }
  for (const [name, tube, R] of [
    ['sleeve', { outer: sleeve }, sleeve.radius],
    ['ring', { inner: ring }, ring.radius],
  ] as const)
    test(`${name}: a coil and a like one turned by half a turn against it, from 1 to 2 m length`, () => {
      const r = 0.0575
      // the difference of the two has no flux along the tube, which endless iron would carry off
      const odd = (length: number) => {
        const path = coil(r, half, length)
        const M = ironTubeInductance({ pathA: path, pathB: path, angles: [0, Math.PI], ...tube })
        return M[0]! - M[1]!
      }
      const found = odd(2) - odd(1)
      const wanted = image(r, R, 0) - image(r, R, Math.PI)
      expect(Math.abs(found / wanted - 1)).toBeLessThan(2e-3)
    })
})

describe("agrees: Neumann's integral with the inverted path, where curvature is slight", () => {
  for (const side of [1, -1] as const)
    test(side > 0 ? 'iron around' : 'iron inside', () => {
      // the images' error falls as 1/R: drawn on to none from 0.1 and 0.2 m
      const error = (R: number) => {
        const r = R - side * 0.006
        const path = coil(r, 0.015 / r, 0.04, { chords: 32 })
        const tube = { radius: R, thickness: 0.003 }
        return (
          own(path, side > 0 ? { outer: tube } : { inner: tube }) /
            mutualInductance(path, inverted(path, R)) -
          1
        )
      }
      const [near, far] = [error(0.1), error(0.2)]
      expect(Math.abs(far)).toBeLessThan(0.6 * Math.abs(near))
      expect(Math.abs(2 * far - near)).toBeLessThan(5e-3)
    })
})

describe('law: inductance added by iron', () => {
  const both = { inner: ring, outer: sleeve }
  const a = coil(0.0575, 0.12, 0.06)
  const b = coil(0.0555, 0.1, 0.05, { height: 0.01 })
  test('is mutual, also turned', () => {
    const there = ironTubeInductance({ pathA: a, pathB: b, ...both, angles: [0.1, 0.5] })
    const back = ironTubeInductance({ pathA: b, pathB: a, ...both, angles: [-0.1, -0.5] })
    for (let i = 0; i < 2; i++) expect(there[i]! / back[i]!).toBeCloseTo(1, 9)
  })
  test('a turned path is a path at another angle', () => {
    const turned = coil(0.0555, 0.1, 0.05, { height: 0.01, angle: 0.3 })
    const found = ironTubeInductance({ pathA: a, pathB: turned, ...both })[0]!
    expect(found / ironTubeInductance({ pathA: a, pathB: b, ...both, angles: [0.3] })[0]!).toBeCloseTo(1, 9)
  })
  test('is above zero and grows with permeability, wall and nearness', () => {
    const at = (permeability: number, thickness = 0.003, radius = 0.062) =>
      own(a, { outer: { radius, thickness, permeability } })
    expect(at(1)).toBeLessThan(1e-6 * at(1e6))
    expect(at(10)).toBeLessThan(at(100))
    expect(at(1e7) / own(a, { outer: sleeve })).toBeCloseTo(1, 4)
    expect(at(10)).toBeLessThan(at(10, 0.01))
    expect(at(100, 0.003, 0.066)).toBeLessThan(at(100))
  })
  test('pairs of tubes add more than the sum of each', () => {
    expect(own(a, both)).toBeGreaterThan(own(a, { inner: ring }))
    expect(own(a, both)).toBeGreaterThan(own(a, { outer: sleeve }))
  })
  test('repeats are a shortcut only', () => {
    const path = wave(0.0575, 0.06, 6)
    const angles = [0, 0.1, 0.2]
    const short = ironTubeInductance({ pathA: path, pathB: path, ...both, angles, repeats: 6 })
    const whole = ironTubeInductance({ pathA: path, pathB: path, ...both, angles })
    for (let i = 0; i < 3; i++) expect(short[i]! / whole[i]!).toBeCloseTo(1, 6)
  })
  test('no iron adds nothing', () => {
    expect(own(a, {})).toBe(0)
  })
  test('meaningless input is refused', () => {
    expect(() => own(a.subarray(0, a.length - 3), both)).toThrow('closed')
    expect(() => own(new Float64Array(6), both)).toThrow('three points')
    expect(() => own(a, { outer: { radius: 0.057, thickness: 0.003 } })).toThrow('clear of the paths')
    expect(() => own(a, { inner: { radius: 0.058, thickness: 0.003 } })).toThrow('clear of the paths')
    expect(() => own(a, { inner: { ...ring, permeability: 0.5 } })).toThrow('at least 1')
    expect(() => own(a, { ...both, repeats: 4 })).toThrow('divides')
    expect(() =>
      own(
        a.map(() => Number.NaN),
        both,
      ),
    ).toThrow(RangeError)
  })
})
