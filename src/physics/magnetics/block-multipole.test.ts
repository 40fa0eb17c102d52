/** Checks of the cuboid far away, on its edges, and of the switch from closed form to series. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { A, B, block, gap, mm } from '../../../test/sample-block.ts'
import type { Vector3 } from '../../numerics/vector.ts'
import { distantRatio } from './block-multipole.ts'

const length = (a: Vector3) => Math.hypot(...a)

const place = fc.tuple(
  ...([60, 60, 60] as const).map((range) =>
    fc.double({ min: -range * mm, max: range * mm, noNaN: true, noDefaultInfinity: true }),
  ),
) as unknown as fc.Arbitrary<Vector3>

describe('law: far away a block is a dipole', () => {
  const magnet = block([40 * mm, 20 * mm, 10 * mm], 1.3)
  const moment = 1.3 * 8e-6
  test('B and A tend to the dipole with the square of size over distance', () => {
    for (const r of [1, 10, 1e3, 1e6])
      for (const u of [
        [0, 0, 1],
        [0.6, 0, 0.8],
        [0.48, 0.64, 0.6],
        [1, 0, 0],
      ] as Vector3[]) {
        const k = moment / (4 * Math.PI * r ** 3)
        const dipole = u.map((x, i) => k * (3 * x * u[2] - (i === 2 ? 1 : 0)))
        const p = u.map((x) => x * r) as unknown as Vector3
        expect(gap(B(magnet, p), dipole)).toBeLessThan(3 * (0.04 / r) ** 2 * k + 1e-14 * k)
        expect(gap(A(magnet, p), [-k * u[1] * r, k * u[0] * r, 0])).toBeLessThan(
          (2 * (0.04 / r) ** 2 + 1e-14) * k * r,
        )
      }
  })
  test('closed form and series meet at the switch within 2e-10 (l³/V)^(2/3)', () => {
    const shapes: Vector3[] = [
      [1, 1, 1],
      [1, 1, 0.01],
      [1, 0.01, 0.01],
      [0.01, 0.01, 1],
      [0.3, 1, 0.1],
    ]
    for (const shape of shapes) {
      const magnet = block(shape, 1)
      const volume = shape[0] * shape[1] * shape[2]
      const r = (distantRatio * volume ** (1 / 9)) / 2
      const dipole = volume / (4 * Math.PI * r ** 3)
      let worst = 0
      fc.assert(
        fc.property(place, (v) => {
          fc.pre(length(v) > 1e-3)
          const [inner, outer] = [r * (1 - 1e-9), r * (1 + 1e-9)].map(
            (k) => v.map((x) => (x / length(v)) * k) as unknown as Vector3,
          ) as [Vector3, Vector3]
          // the fields' own fall over this step is 2e-9 times 3 and 2
          const like = (f: Vector3, power: number) => f.map((x) => x * (1 + 2e-9 * power))
          worst = Math.max(
            worst,
            gap(B(magnet, inner), like(B(magnet, outer), 3)) / dipole,
            gap(A(magnet, inner), like(A(magnet, outer), 2)) / (dipole * r),
          )
        }),
        { numRuns: 200 },
      )
      expect(worst).toBeLessThan(2e-10 / volume ** (2 / 3))
    }
  })
})

describe('law: `relativeError` keeps its word', () => {
  test('error against the dipole value at half the longest edge', () => {
    const shapes: Vector3[] = [
      [1, 1, 1],
      [1, 1, 0.1],
      [1, 0.1, 0.1],
      [0.1, 0.1, 1],
      [0.5, 1, 0.25],
    ]
    for (const shape of shapes)
      for (const relativeError of [1e-2, 1e-3, 1e-4, 1e-6, 1e-8]) {
        const magnet = block(shape, 1)
        const dipole = (shape[0] * shape[1] * shape[2]) / (4 * Math.PI * 0.125)
        fc.assert(
          fc.property(place, fc.double({ min: 1, max: 8, noNaN: true }), (v, r) => {
            fc.pre(length(v) > 1e-3)
            const p = v.map((x) => (x / length(v)) * r) as unknown as Vector3
            expect(gap(B(magnet, p), B(magnet, p, { relativeError }))).toBeLessThan(relativeError * dipole)
            expect(gap(A(magnet, p), A(magnet, p, { relativeError }))).toBeLessThan(
              relativeError * dipole * 0.5,
            )
          }),
          { numRuns: 100 },
        )
      }
  })
})

describe('law: finite everywhere', () => {
  const edge = fc.constantFrom(1e-12, 1e-6, 1e-3, 0.04, 1, 1e4)
  const offset = fc.oneof(
    fc.constantFrom(0, 0.5, -0.5, 0.5 + 1e-16, 0.5 - 1e-16, 1, -1, 1e-15, 1e3, 1e9, 1e-9),
    fc.double({ min: -3, max: 3, noNaN: true }),
  )
  test('faces, edges, corners, their extensions, any shape', () => {
    fc.assert(
      fc.property(edge, edge, edge, offset, offset, offset, (w, l, t, x, y, z) => {
        const magnet = block([w, l, t], 1.3)
        const p: Vector3 = [x * w, y * l, z * t]
        for (const accuracy of [{}, { relativeError: 1e-6 }])
          for (const value of [...B(magnet, p, accuracy), ...A(magnet, p, accuracy)])
            expect(Number.isFinite(value)).toBe(true)
        // The rounded logarithm bounds B: two ln(1/rounding) and 4π of angle over 4π
        expect(length(B(magnet, p))).toBeLessThan(1.3 * 12)
      }),
      { numRuns: 5000 },
    )
  })
  test('on the extension of an edge the field is that of the neighbourhood', () => {
    const magnet = block([40 * mm, 20 * mm, 10 * mm], 1.3)
    for (const p of [
      [20 * mm, 10 * mm, 9 * mm],
      [20 * mm, 10 * mm, -30 * mm],
      [20 * mm, 15 * mm, 5 * mm],
      [20 * mm, -60 * mm, -5 * mm],
      [55 * mm, 10 * mm, 5 * mm],
      [20 * mm, 30 * mm, 0],
    ] as Vector3[]) {
      const near = [1e-10, -1e-10, 3e-6, -3e-6].map((d) => B(magnet, [p[0] + d, p[1] - d / 3, p[2] + d / 2]))
      near.forEach((b, i) => {
        expect(gap(b, B(magnet, p))).toBeLessThan(i < 2 ? 1e-7 : 3e-3)
      })
    }
  })
})
