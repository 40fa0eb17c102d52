/** Checks of magnet rings: places, signs, the widest block, half-wave symmetry of an alternating ring's field. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { root } from '../../numerics/root.ts'
import { cross, dot, turnAboutZ, turnPointsAboutZ, type Vector3 } from '../../numerics/vector.ts'
import { blockFluxDensity, blockVectorPotential } from './block-magnet.ts'
import { alternatingSequence, discMagnets, drumMagnets, largestBlockWidth } from './magnet-ring.ts'

const disc = (count: number, more = {}) =>
  discMagnets({
    count,
    radius: 0.09,
    height: 0.01,
    radialLength: 0.04,
    width: 0.015,
    thickness: 0.01,
    polarization: 1.28,
    sequence: alternatingSequence(count),
    ...more,
  })
const drum = (count: number, more = {}) =>
  drumMagnets({
    count,
    radius: 0.032,
    axialLength: 0.05,
    width: 0.008,
    thickness: 0.004,
    polarization: 1.3,
    sequence: alternatingSequence(count),
    ...more,
  })
const code = (f: () => unknown) => {
  try {
    f()
  } catch (error) {
    return (error as { code?: string }).code
  }
  return 'none'
}

describe('law: places and poses', () => {
  test('frames are right-handed, polarization stands along the radius or the axis', () => {
    for (const [magnets, along] of [
      [drum(16), 'radius'],
      [disc(12), 'axis'],
    ] as const)
      magnets.forEach((magnet, k) => {
        const angle = (2 * Math.PI * k) / magnets.length
        const radial: Vector3 = [Math.cos(angle), Math.sin(angle), 0]
        expect(dot(cross(magnet.frame[0], magnet.frame[1]), magnet.frame[2])).toBeCloseTo(1, 14)
        expect(dot(magnet.frame[2], along === 'radius' ? radial : [0, 0, 1])).toBeCloseTo(1, 14)
        expect(
          dot(magnet.frame[along === 'radius' ? 1 : 0], along === 'radius' ? [0, 0, 1] : radial),
        ).toBeCloseTo(1, 14)
        expect(Math.sign(magnet.polarization)).toBe(k % 2 === 0 ? 1 : -1)
        expect(Math.hypot(magnet.centre[0], magnet.centre[1])).toBeCloseTo(
          along === 'radius' ? 0.032 : 0.09,
          14,
        )
      })
  })
  test('outward blocks send flux outward on their own axis', () => {
    const field = blockFluxDensity(drum(16), new Float64Array([0.036, 0, 0]))
    expect(field[0]).toBeGreaterThan(0.2)
  })
  test('strength scales one magnet; a missing one leaves the rest', () => {
    const strength = [1, 0.9, 0, ...new Array(9).fill(1)]
    const weak = disc(12, { strength })
    expect(weak[1]!.polarization).toBeCloseTo(-1.28 * 0.9, 14)
    const p = new Float64Array([0.05, 0.08, 0.03])
    const rest = blockFluxDensity(
      disc(12)
        .map((m, k) => ({ ...m, polarization: m.polarization * strength[k]! }))
        .filter((_, k) => k !== 2),
      p,
    )
    const field = blockFluxDensity(weak, p)
    for (let i = 0; i < 3; i++) expect(field[i]).toBeCloseTo(rest[i]!, 14)
  })
})

describe('agrees: one block and points turned back to it', () => {
  test('field of a ring is the sum of one block seen from each turned point', () => {
    const p = new Float64Array([0.05, 0.08, 0.03])
    for (const magnets of [disc(12), drum(16)]) {
      const sum = [0, 0, 0]
      magnets.forEach((_, k) => {
        const angle = (2 * Math.PI * k) / magnets.length
        const [bx, by, bz] = blockFluxDensity([magnets[0]!], turnPointsAboutZ(p, -angle))
        turnAboutZ([bx!, by!, bz!], angle).forEach((b, i) => {
          sum[i]! += k % 2 === 0 ? b : -b
        })
      })
      blockFluxDensity(magnets, p).forEach((b, i) => {
        expect(Math.abs(b - sum[i]!)).toBeLessThan(1e-14)
      })
    }
  })
  test('widest block: search for the width at which neighbours part, by the line halfway between them', () => {
    for (const count of [3, 8, 16]) {
      // The signed distance of the inner corner from the ray at half a pole falls through zero
      const clear = (width: number) =>
        0.07 * Math.sin(Math.PI / count) - (width / 2) * Math.cos(Math.PI / count)
      const width = root(clear, [0, 1])
      expect(largestBlockWidth({ count, radius: 0.09, radialEdge: 0.04 })).toBeCloseTo(width, 10)
    }
  })
})

describe('law: half-wave symmetry — a turn by one pole reverses B and A of an alternating ring', () => {
  for (const [name, magnets] of [
    ['disc 12', disc(12)],
    ['drum 16', drum(16)],
  ] as const)
    test(name, () => {
      const pole = (2 * Math.PI) / magnets.length
      const inside = fc.double({ min: 0.02, max: 0.12, noNaN: true })
      fc.assert(
        fc.property(
          inside,
          fc.double({ min: 0, max: 6, noNaN: true }),
          fc.double({ min: -0.05, max: 0.05, noNaN: true }),
          (r, θ, z) => {
            const at = (turn: number) => {
              const [c, s] = [Math.cos(θ + turn), Math.sin(θ + turn)]
              const p = new Float64Array([r * c, r * s, z])
              return [blockFluxDensity(magnets, p), blockVectorPotential(magnets, p)].flatMap((f) => [
                f[0]! * c + f[1]! * s,
                f[1]! * c - f[0]! * s,
                f[2]!,
              ])
            }
            const [here, next] = [at(0), at(pole)]
            for (let i = 0; i < 6; i++) expect(Math.abs(here[i]! + next[i]!)).toBeLessThan(1e-9)
          },
        ),
      )
    })
})

describe('law: the widest block that fits', () => {
  test('at that width the inner corners of neighbours meet', () => {
    for (const count of [3, 4, 12, 40]) {
      const width = largestBlockWidth({ count, radius: 0.09, radialEdge: 0.04 })
      const pole = (2 * Math.PI) / count
      const corner = (k: number, s: number): [number, number] => [
        0.07 * Math.cos(k * pole) - ((s * width) / 2) * Math.sin(k * pole),
        0.07 * Math.sin(k * pole) + ((s * width) / 2) * Math.cos(k * pole),
      ]
      const [a, b] = [corner(0, 1), corner(1, -1)]
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-15)
      expect(
        code(() =>
          discMagnets({
            count,
            radius: 0.09,
            height: 0,
            radialLength: 0.04,
            width: width * 1.0001,
            thickness: 0.01,
            polarization: 1,
            sequence: Array.from({ length: count }, () => 1 as const),
          }),
        ),
      ).toBe('conflict')
    }
  })
  test('one or two blocks have no neighbour in the way', () => {
    expect(largestBlockWidth({ count: 2, radius: 0.09, radialEdge: 0.04 })).toBe(Number.MAX_VALUE)
  })
})

describe('refusals', () => {
  test.each([
    ['count zero', () => disc(12, { count: 0 }), 'below-minimum'],
    ['sequence too short', () => disc(12, { sequence: [1, -1] }), 'wrong-length'],
    ['sequence with a zero', () => disc(4, { sequence: [1, 0, 1, -1] }), 'not-a-choice'],
    ['strength too long', () => disc(4, { strength: [1, 1, 1, 1, 1] }), 'wrong-length'],
    ['strength negative', () => disc(4, { strength: [1, 1, 1, -1] }), 'below-minimum'],
    ['blocks across the axis', () => disc(2, { radius: 0.01 }), 'conflict'],
    ['thickness zero', () => drum(16, { thickness: 0 }), 'below-minimum'],
    ['colliding drum blocks', () => drum(16, { width: 0.0125 }), 'conflict'],
    ['odd alternating ring', () => alternatingSequence(7), 'not-a-choice'],
    ['height not finite', () => disc(4, { height: Number.NaN }), 'not-finite'],
  ])('law: %s', (_, f, expected) => {
    expect(code(f)).toBe(expected)
  })
  test('law: the refusal names the widest block', () => {
    expect(() => drum(16, { width: 0.0125 })).toThrow(/width must be at most 0\.01193.* m/)
  })
})
