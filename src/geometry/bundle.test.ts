/** Checks of the filaments of a bundle: convergence of linkage, weights, moments. */
import { describe, expect, test } from 'vitest'
import type { Filament } from './bundle.ts'
import { bundleFilaments, defaultBundleOrders } from './bundle.ts'
import { coilFilaments } from './coil-outline.ts'
import { curveQuadrature } from './curve.ts'
import { serpentineFilaments } from './serpentine.ts'

/** ∮A·dl of rows of alternating point dipoles, standing in for magnets: rough fields on purpose. */
function dipoleLinkage(
  filaments: readonly Filament[],
  field: { poles: number; radius: number; level: number; axial: boolean; turned: number },
  quadrature = { longestStep: 0.002, order: 4 },
): number {
  let average = 0
  for (const { curve, weight } of filaments) {
    const { points, steps } = curveQuadrature(curve, quadrature)
    let ψ = 0
    for (let k = 0; k < field.poles; k++) {
      const φ = (2 * Math.PI * k) / field.poles + field.turned
      const sign = k % 2 === 0 ? 1 : -1
      const c = Math.cos(φ)
      const s = Math.sin(φ)
      for (const away of [-0.015, 0, 0.015]) {
        const R = field.radius + (field.axial ? away : 0)
        const m = field.axial ? [0, 0, sign] : [sign * c, sign * s, 0]
        for (let i = 0; i < points.length; i += 3) {
          const x = points[i] - R * c
          const y = points[i + 1] - R * s
          const z = points[i + 2] - (field.axial ? field.level : away)
          const r3 = (x * x + y * y + z * z) ** 1.5
          ψ +=
            ((m[1] * z - m[2] * y) * steps[i] +
              (m[2] * x - m[0] * z) * steps[i + 1] +
              (m[0] * y - m[1] * x) * steps[i + 2]) /
            r3
        }
      }
    }
    average += weight * ψ
  }
  return average
}

describe('law: default Gauss points over a bundle converge to better than 1e-4 of the linkage', () => {
  const onDisc = { poles: 12, radius: 0.09, level: -0.011, axial: true, turned: 0 }
  const coil = {
    hole: { kind: 'wedge', innerWidth: 0.012, outerWidth: 0.024, length: 0.04, cornerRadius: 0.003 },
    surface: { kind: 'disc', meanRadius: 0.09, z: 0 },
    angle: 0,
  } as const
  const legs = { width: 0.012, thickness: 0.008 }
  test('wedge coil with 12 mm legs, 8 mm thick, sources 7 mm under its lower face', () => {
    const usual = dipoleLinkage(coilFilaments(coil, legs), onDisc)
    const fine = dipoleLinkage(coilFilaments(coil, legs, [12, 8]), onDisc)
    expect(Math.abs(usual / fine - 1)).toBeLessThan(2e-5)
  })
  test('serpentine bundle 6 mm wide and 3 mm thick on a drum', () => {
    const field = { poles: 16, radius: 0.03, level: 0, axial: false, turned: 0 }
    const serpentine = {
      surface: { kind: 'drum', radius: 0.038, z: 0 },
      polePairs: 8,
      activeLength: 0.05,
      runSlant: 0,
      crown: { kind: 'half-ellipse', height: 0.006 },
      // the middle of each loop over a pole
      angle: -Math.PI / 16,
    } as const
    const bundle = { width: 0.006, thickness: 0.003 }
    const usual = dipoleLinkage(serpentineFilaments(serpentine, bundle), field)
    const fine = dipoleLinkage(serpentineFilaments(serpentine, bundle, [8, 5]), field)
    expect(usual).toBeGreaterThan(0)
    expect(Math.abs(usual / fine - 1)).toBeLessThan(5e-5)
  })
  test('2 mm steps of four points along the wire are converged as well', () => {
    const filaments = coilFilaments(coil, legs)
    const usual = dipoleLinkage(filaments, onDisc)
    const fine = dipoleLinkage(filaments, onDisc, { longestStep: 0.0005, order: 8 })
    expect(Math.abs(usual / fine - 1)).toBeLessThan(1e-7)
  })
})

describe('law: the filaments of a bundle', () => {
  const nothing = () => ({ closed: true, pieces: [] })
  test('weights sum to one; moments of the section are exact', () => {
    const filaments = bundleFilaments(nothing, { across: [0, 3], normal: [-1, 1] })
    expect(filaments.length).toBe(defaultBundleOrders[0] * defaultBundleOrders[1])
    const mean = (f: (u: number, n: number) => number) =>
      filaments.reduce((sum, { weight, offset }) => sum + weight * f(...offset), 0)
    expect(mean(() => 1)).toBeCloseTo(1, 14)
    expect(mean((u) => u)).toBeCloseTo(1.5, 14)
    expect(mean((u, n) => u * u * n * n)).toBeCloseTo(1, 14)
  })
  test('a section without width or thickness takes one point there', () => {
    expect(bundleFilaments(nothing, { across: [1, 1], normal: [0, 0] })).toEqual([
      { curve: nothing(), weight: 1, offset: [1, 0] },
    ])
  })
  test('a range that falls is refused', () => {
    expect(() => bundleFilaments(nothing, { across: [1, 0], normal: [0, 0] })).toThrow(/not-increasing/)
  })
})
