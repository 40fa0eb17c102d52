/** Checks of plates and rings. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { type PlateEdge, plateBending } from './plate-bending.ts'

/** E that gives a plate of thickness 1 unit stiffness D at ν = 0.3. */
const unit = { thickness: 1, modulus: 12 * (1 - 0.09) } as const

describe('source: roark, table 11.2, cases 2b, 2c, 2d and 2e — pressure over the ring, ν = 0.3', () => {
  const ratios = [0.1, 0.3, 0.5, 0.7, 0.9]
  const plate = (inner: number, innerEdge: PlateEdge, outerEdge: PlateEdge) =>
    plateBending({
      ...unit,
      outer: 1,
      inner,
      innerEdge,
      outerEdge,
      bands: [{ from: inner, to: 1, pressure: 1 }],
    })
  const row = (
    name: string,
    edges: readonly [inner: PlateEdge, outer: PlateEdge],
    value: (p: ReturnType<typeof plate>, b: number) => number,
    printed: readonly string[],
  ) => {
    printed.forEach((digits, i) => {
      const b = ratios[i]!
      // The book cuts 0.0000452 off to 0.00004.
      const cut = digits === '0.00004' ? { absolute: 0.6e-5 } : {}
      check(`${name}, b/a ${b}`, () => value(plate(b, ...edges), b), digits, cut)
    })
  }
  row('2b deflection', ['guided', 'supported'], (p) => p.greatestDeflection, [
    '0.0575',
    '0.0314',
    '0.0103',
    '0.0015',
    '0.00002',
  ])
  row('2b moment at the hole', ['guided', 'supported'], (p, b) => p.at(b).radialMoment, [
    '0.3003',
    '0.2185',
    '0.1223',
    '0.0456',
    '0.00505',
  ])
  row('2c moment of the hole, around', ['supported', 'supported'], (p, b) => p.at(b).tangentialMoment, [
    '-0.2401',
    '-0.0463',
    '-0.0101',
    '-0.0015',
  ])
  row('2d deflection', ['clamped', 'supported'], (p) => p.greatestDeflection, [
    '0.0040',
    '0.0014',
    '0.0004',
    '0.00004',
  ])
  row('2d moment at the hole', ['clamped', 'supported'], (p, b) => p.at(b).radialMoment, [
    '-0.2459',
    '-0.0939',
    '-0.0393',
    '-0.01257',
  ])
  row('2e deflection', ['free', 'clamped'], (p) => p.greatestDeflection, [
    '0.0166',
    '0.0132',
    '0.0053',
    '0.0009',
    '0.00001',
  ])
  row('2e moment at the rim', ['free', 'clamped'], (p) => p.at(1).radialMoment, [
    '-0.1246',
    '-0.1135',
    '-0.0800',
    '-0.0361',
    '-0.00470',
  ])
})

describe('source: timoshenko1959, sections 16 and 19 (from memory, not opened) — full discs', () => {
  const middle = (outerEdge: PlateEdge, load: object) =>
    plateBending({ ...unit, outer: 1, inner: 0, outerEdge, ...load }).at(0)
  const even = { bands: [{ from: 0, to: 1, pressure: 1 }] }
  check('clamped, pressure, 1/64', middle('clamped', even).deflection, '0.015625')
  check('supported, pressure, 5.3/1.3/64', middle('supported', even).deflection, '0.06370')
  check('supported, pressure, moment 3.3/16', middle('supported', even).radialMoment, '0.20625')
  const tip = { rings: [{ radius: 1e-7, force: 1 }] }
  check('clamped, force in the middle, 1/16π', middle('clamped', tip).deflection, '0.0198944')
  check('supported, force in the middle', middle('supported', tip).deflection, '0.0505011')
})

/** Slope equation of the disc clamped at b and free at a, by Runge and Kutta from b, shooting on the curvature. */
function shot(b: number, a: number, ring: number, D: number, ν: number, force: number) {
  const shear = (r: number) => (r < ring ? -force / (2 * Math.PI * r) : 0)
  const run = (κ0: number, load: number) => {
    let [w, φ, κ] = [0, 0, κ0]
    for (const [from, to] of [
      [b, ring],
      [ring, a],
    ] as const) {
      const n = 400
      const h = (to - from) / n
      // The piece's own side of the step of the shear, also at its ends.
      const q = (r: number) => (from < ring ? shear(Math.min(r, ring * (1 - 1e-15))) : 0) * load
      const rate = (r: number, f: number, k: number) => [f, k, q(r) / D - k / r + f / (r * r)] as const
      for (let i = 0; i < n; i++) {
        const r = from + i * h
        const k1 = rate(r, φ, κ)
        const k2 = rate(r + h / 2, φ + (h / 2) * k1[1], κ + (h / 2) * k1[2])
        const k3 = rate(r + h / 2, φ + (h / 2) * k2[1], κ + (h / 2) * k2[2])
        const k4 = rate(r + h, φ + h * k3[1], κ + h * k3[2])
        w += (h / 6) * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0])
        φ += (h / 6) * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1])
        κ += (h / 6) * (k1[2] + 2 * k2[2] + 2 * k3[2] + k4[2])
      }
    }
    return { w, m: κ + (ν * φ) / a }
  }
  const loaded = run(0, 1)
  const bent = run(1, 0)
  const κ0 = -loaded.m / bent.m
  return { rim: loaded.w + κ0 * bent.w, hub: -D * κ0 }
}

describe('agrees: numerical solution of the plate equation', () => {
  // A steel rotor disc of 150 mm radius on a 30 mm hub, 6 mm thick, its magnets at 120 mm pulled with 1.5 kN.
  const disc = { outer: 0.15, inner: 0.03, thickness: 0.006, modulus: 2.05e11, poisson: 0.29 }
  const D = (disc.modulus * disc.thickness ** 3) / (12 * (1 - disc.poisson ** 2))
  const own = plateBending({
    ...disc,
    innerEdge: 'clamped',
    outerEdge: 'free',
    rings: [{ radius: 0.12, force: 1500 }],
  })
  const other = shot(disc.inner, disc.outer, 0.12, D, disc.poisson, 1500)
  test('disc pulled by its magnets: rim and hub', () => {
    expect(own.at(0.15).deflection / other.rim).toBeCloseTo(1, 7)
    expect(own.at(0.03).radialMoment / other.hub).toBeCloseTo(1, 7)
    expect(own.greatestDeflection).toBeCloseTo(own.at(0.15).deflection, 15)
    expect(own.greatestStress).toBeCloseTo((6 * Math.abs(own.at(0.03).radialMoment)) / 0.006 ** 2, 3)
  })
  test('a narrow band of pressure is a ring of the same force', () => {
    const [from, to] = [0.1199, 0.1201]
    const pressure = 1500 / (Math.PI * (to - from) * (to + from))
    const band = plateBending({
      ...disc,
      innerEdge: 'clamped',
      outerEdge: 'free',
      bands: [{ from, to, pressure }],
    })
    expect(band.at(0.15).deflection / own.at(0.15).deflection).toBeCloseTo(1, 5)
  })
})

describe('agrees: hub shrunk to a point, from the closed form of the supported disc with a force in its middle', () => {
  // Ring at half the radius against the hub: the middle's sag under it less the middle's sag under the hub's push.
  const sag = (r: number) =>
    ((3.3 / 1.3) * (1 - r * r) + (r > 0 ? 2 * r * r * Math.log(r) : 0)) / (16 * Math.PI)
  for (const inner of [1e-12, 1e-6])
    test(`hub ${inner} of the rim`, () => {
      const disc = plateBending({
        ...unit,
        outer: 1,
        inner,
        innerEdge: 'clamped',
        outerEdge: 'free',
        rings: [{ radius: 0.5, force: 1 }],
      })
      expect(disc.at(1).deflection).toBeCloseTo(sag(0) - sag(0.5), 9)
    })
})

describe('law: plate bending', () => {
  const edges = fc.constantFrom<PlateEdge>('clamped', 'supported', 'guided', 'free')
  test('deflection at one circle from a ring at another is the same the other way round', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        edges,
        fc.constantFrom<PlateEdge>('clamped', 'supported'),
        (inner, p, q, outerEdge, innerEdge) => {
          const [r1, r2] = [inner + (1 - inner) * p, inner + (1 - inner) * q]
          const w = (radius: number, at: number) =>
            plateBending({
              ...unit,
              outer: 1,
              inner,
              outerEdge,
              innerEdge,
              rings: [{ radius, force: 1 }],
            }).at(at).deflection
          const scale = Math.max(Math.abs(w(r1, r1)), Math.abs(w(r2, r2)), 1e-9)
          expect(Math.abs(w(r1, r2) - w(r2, r1)) / scale).toBeLessThan(1e-6)
        },
      ),
    )
  })
  test('a ring narrow against its radius is a cantilever', () => {
    const [b, a] = [1, 1.002]
    const one = plateBending({
      ...unit,
      outer: a,
      inner: b,
      innerEdge: 'clamped',
      outerEdge: 'free',
      rings: [{ radius: a, force: 2 * Math.PI }],
    })
    expect(one.at(a).deflection / ((a - b) ** 3 / 3)).toBeCloseTo(1, 2)
    expect(one.at(b).radialMoment / (b - a)).toBeCloseTo(1, 2)
  })
  test('size and stiffness scale, from a millimetre to a kilometre', () => {
    const w = (k: number) =>
      plateBending({
        outer: 0.2 * k,
        inner: 0.05 * k,
        thickness: 0.01 * k,
        modulus: 2e11,
        innerEdge: 'clamped',
        outerEdge: 'free',
        bands: [{ from: 0.1 * k, to: 0.15 * k, pressure: 1e5 }],
      })
    for (const k of [0.005, 5000]) {
      expect(w(k).greatestDeflection / k / w(1).greatestDeflection).toBeCloseTo(1, 9)
      expect(w(k).greatestStress / w(1).greatestStress).toBeCloseTo(1, 9)
    }
  })
  test('edges that hold nothing are refused', () => {
    const loose = { ...unit, outer: 1, inner: 0.2, outerEdge: 'free', innerEdge: 'guided' } as const
    expect(() => plateBending(loose)).toThrow('outerEdge must be held')
    expect(() => plateBending({ ...loose, inner: 0, innerEdge: 'clamped' })).toThrow('outerEdge must be held')
    expect(() => plateBending({ ...loose, inner: 0.9999 })).toThrow('inner must be at most 0.999 of outer')
  })
})
