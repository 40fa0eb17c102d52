/** Checks of flux linkage and motional EMF against each other and by hand. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { coilCurve } from '../../geometry/coil-outline.ts'
import type { Curve } from '../../geometry/curve.ts'
import { curveQuadrature } from '../../geometry/curve.ts'
import { serpentineCurve } from '../../geometry/serpentine.ts'
import { motionalEmf, pathLinkage } from './path-linkage.ts'

const disc = { kind: 'disc', meanRadius: 0.12, z: 0 } as const
/** Radial runs from 0.10 to 0.14 m and bare arcs: the first run over a pole's middle. */
const wave = serpentineCurve({
  surface: disc,
  polePairs: 8,
  activeLength: 0.04,
  runSlant: 0,
  crown: { kind: 'half-ellipse', height: 0 },
  angle: 0,
})

/** Axial field B cos(p φ), the same at every radius; and a dipole under the path with its vector potential. */
function poleField(points: Float64Array, B: number, p: number): Float64Array {
  const field = new Float64Array(points.length)
  for (let i = 0; i < points.length; i += 3)
    field[i + 2] = B * Math.cos(p * Math.atan2(points[i + 1], points[i]))
  return field
}
function dipoles(points: Float64Array, turned: number): { A: Float64Array; B: Float64Array } {
  const A = new Float64Array(points.length)
  const B = new Float64Array(points.length)
  const c = Math.cos(turned)
  const s = Math.sin(turned)
  const sources = [
    { at: [0.11, 0.01, -0.02], m: [0.3, -0.2, 1] },
    { at: [-0.08, 0.07, 0.03], m: [-1, 0.5, 0.4] },
  ]
  for (const { at, m } of sources) {
    const [X, Y, Z] = [c * at[0] - s * at[1], s * at[0] + c * at[1], at[2]]
    const [mx, my, mz] = [c * m[0] - s * m[1], s * m[0] + c * m[1], m[2]]
    for (let i = 0; i < points.length; i += 3) {
      const x = points[i] - X
      const y = points[i + 1] - Y
      const z = points[i + 2] - Z
      const r2 = x * x + y * y + z * z
      const r3 = r2 * Math.sqrt(r2)
      const along = (3 * (mx * x + my * y + mz * z)) / (r2 * r3)
      A[i] += (my * z - mz * y) / r3
      A[i + 1] += (mz * x - mx * z) / r3
      A[i + 2] += (mx * y - my * x) / r3
      B[i] += along * x - mx / r3
      B[i + 1] += along * y - my / r3
      B[i + 2] += along * z - mz / r3
    }
  }
  return { A, B }
}

describe('agrees: EMF of a thin full-pitch serpentine by hand, E = N · poles · Ω ∫ B r dr', () => {
  // 0.50 T from 0.10 to 0.14 m, 16 poles, 10 turns, 300 r/min: 10·16·31.416·0.50·(0.14² − 0.10²)/2
  const { points, steps } = curveQuadrature(wave, { longestStep: 0.01, order: 6 })
  const e = 10 * motionalEmf(poleField(points, 0.5, 8), points, steps, (300 * 2 * Math.PI) / 60)
  check('peak of the phase', Math.abs(e), '12.06')
})

describe('agrees: motional EMF and −dψ/dt of the same path as the field turns by +θ', () => {
  const paths: [string, Curve][] = [
    ['serpentine', wave],
    [
      'wedge coil on a disc',
      coilCurve(
        {
          hole: { kind: 'wedge', innerWidth: 0.01, outerWidth: 0.02, length: 0.03, cornerRadius: 0.002 },
          surface: disc,
          angle: 0.3,
        },
        { outward: 0.004, normal: 0.002 },
      ),
    ],
    [
      'round coil on a drum',
      coilCurve(
        { hole: { kind: 'round', diameter: 0.03 }, surface: { kind: 'drum', radius: 0.12, z: 0 }, angle: 0 },
        { outward: 0.004, normal: 0.002 },
      ),
    ],
  ]
  for (const [name, curve] of paths)
    test(name, () => {
      const { points, steps } = curveQuadrature(curve, { longestStep: 0.002, order: 6 })
      const ψ = (θ: number) => pathLinkage(dipoles(points, θ).A, steps)
      for (const θ of [0, 0.4, 1.7]) {
        const h = 1e-4
        const slope = (8 * (ψ(θ + h) - ψ(θ - h)) - (ψ(θ + 2 * h) - ψ(θ - 2 * h))) / (12 * h)
        const e = motionalEmf(dipoles(points, θ).B, points, steps, 20)
        expect(Math.abs(e + 20 * slope)).toBeLessThan(1e-6 * Math.max(1, Math.abs(e)))
      }
    })
})

describe('law: gauge, sense and shapes of the lists', () => {
  const { points, steps } = curveQuadrature(wave, { longestStep: 0.01, order: 6 })
  test('a gradient added to A changes nothing on a closed path', () => {
    // A = grad(x y + z): (y, x, 1)
    const A = new Float64Array(points.length)
    for (let i = 0; i < points.length; i += 3) {
      A[i] = points[i + 1]
      A[i + 1] = points[i]
      A[i + 2] = 1
    }
    expect(Math.abs(pathLinkage(A, steps))).toBeLessThan(1e-14)
  })
  test('a field that is the same all round gives no EMF', () => {
    expect(Math.abs(motionalEmf(poleField(points, 1, 0), points, steps, 100))).toBeLessThan(1e-12)
  })
  test('unlike lists and broken numbers are refused', () => {
    expect(() => pathLinkage(new Float64Array(3), steps)).toThrow(/wrong-length/)
    expect(() => motionalEmf(points, points, steps, Number.NaN)).toThrow(/not-finite/)
    expect(() => pathLinkage(new Float64Array([Number.NaN, 0, 0]), new Float64Array([1, 0, 0]))).toThrow(
      /not-finite/,
    )
  })
})
