/** Checks of vectors and rotations. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  add,
  cross,
  dot,
  identityFrame,
  norm,
  scale,
  subtract,
  turnAboutZ,
  turnPointsAboutZ,
  type Vector3,
} from './vector.ts'

const component = fc.double({ min: -10, max: 10, noNaN: true })
const vector: fc.Arbitrary<Vector3> = fc.tuple(component, component, component)
const near = (a: Vector3, b: Vector3, within = 1e-10) => expect(norm(subtract(a, b))).toBeLessThan(within)

describe('law: the identities of Lagrange and Jacobi', () => {
  test('|a × b|² + (a · b)² = |a|² |b|²', () => {
    fc.assert(
      fc.property(vector, vector, (a, b) => {
        const left = norm(cross(a, b)) ** 2 + dot(a, b) ** 2
        expect(Math.abs(left - norm(a) ** 2 * norm(b) ** 2)).toBeLessThan(1e-8)
      }),
    )
  })
  test('a × (b × c) = b (a · c) − c (a · b)', () => {
    fc.assert(
      fc.property(vector, vector, vector, (a, b, c) => {
        near(cross(a, cross(b, c)), subtract(scale(b, dot(a, c)), scale(c, dot(a, b))))
      }),
    )
  })
  test('the frame is right-handed', () => {
    const [x, y, z] = identityFrame
    expect(cross(x, y)).toEqual(z)
    expect(cross(y, z)).toEqual(x)
    expect(cross(z, x)).toEqual(y)
    expect(add(x, y)).toEqual([1, 1, 0])
  })
})

describe('law: a turn about z', () => {
  test('a quarter turn takes x to y, counter-clockwise seen from +z', () => {
    near(turnAboutZ([1, 0, 0], Math.PI / 2), [0, 1, 0], 1e-15)
    near(turnAboutZ([0, 1, 5], Math.PI / 2), [-1, 0, 5], 1e-15)
  })
  test('keeps lengths, angles and height; two turns add', () => {
    fc.assert(
      fc.property(vector, vector, component, component, (a, b, α, β) => {
        expect(Math.abs(dot(turnAboutZ(a, α), turnAboutZ(b, α)) - dot(a, b))).toBeLessThan(1e-10)
        expect(turnAboutZ(a, α)[2]).toBe(a[2])
        near(turnAboutZ(turnAboutZ(a, α), β), turnAboutZ(a, α + β))
      }),
    )
  })
})

describe('agrees: flat points turn as vectors do', () => {
  test('many points', () => {
    fc.assert(
      fc.property(fc.array(vector, { maxLength: 6 }), component, (points, angle) => {
        const given = Float64Array.from(points.flat())
        const copy = given.slice()
        const turned = turnPointsAboutZ(given, angle)
        expect([...turned]).toEqual(points.flatMap((point) => [...turnAboutZ(point, angle)]))
        expect(given).toEqual(copy)
      }),
    )
  })
})
