/** Checks the partners of points that mirror each other. */
import { describe, expect, test } from 'vitest'
import { mirrorPartners } from './mirror-partner.ts'

const at = (radius: number, degrees: number, z: number) => [
  radius * Math.cos((degrees * Math.PI) / 180),
  radius * Math.sin((degrees * Math.PI) / 180),
  z,
]

describe('law: mirrored twice is where it was', () => {
  test('pairs, and points in the plane that are their own image', () => {
    const points = Float64Array.from(
      [at(1, 40, 0), at(1, 20, 0), at(2, 30, 5), at(1, 20, 5), at(1, 40, 5)].flat(),
    )
    expect([...mirrorPartners(points, Math.PI / 6)!]).toEqual([1, 0, 2, 4, 3])
    // the plane goes on beyond the axis
    expect([...mirrorPartners(points, (7 * Math.PI) / 6)!]).toEqual([1, 0, 2, 4, 3])
  })
  test('a point without an image, in height or in angle', () => {
    expect(
      mirrorPartners(Float64Array.from([at(1, 40, 0), at(1, 20, 0.1)].flat()), Math.PI / 6),
    ).toBeUndefined()
    expect(mirrorPartners(Float64Array.from(at(1, 40, 0)), Math.PI / 6)).toBeUndefined()
    expect([...mirrorPartners(new Float64Array(0), 1)!]).toEqual([])
  })
})
