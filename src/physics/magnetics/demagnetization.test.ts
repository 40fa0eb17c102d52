/** Checks the intrinsic curve with its knee, and what loads beyond it leave of a magnet. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { blockFluxDensity } from './block-magnet.ts'
import {
  demagnetization,
  demagnetizationPolarization,
  demagnetizationTemperature,
  type MagnetMaterial,
  normalCoercivity,
  squarenessRange,
} from './demagnetization.ts'
import { cuboidDemagnetizingFactor } from './demagnetizing-factor.ts'

const μ0 = 4e-7 * Math.PI

const n42: MagnetMaterial = {
  remanence: 1.3,
  recoilPermeability: 1.05,
  intrinsicCoercivity: 955e3,
  squareness: 0.9,
}

const uniform = (material: MagnetMaterial, share: number, applied = 0) =>
  demagnetization({
    material,
    ownShare: Float64Array.of(share),
    appliedField: Float64Array.of(applied),
    weights: Float64Array.of(1),
  })

describe('source: ndfeb-sheet-a and ndfeb-sheet-b, rows whose Hcb lies beyond the knee — least Br, Hcj → least Hcb', () => {
  // Both columns print least values of a grade, not those of one magnet: 5 % is what that leaves, at squareness 0.9.
  const rows = [
    // sheet, Br mT, Hcj kA/m, Hcb kA/m
    ['a, N38', 1220, 955, '870'],
    ['a, N42', 1300, 955, '870'],
    ['a, N45', 1330, 955, '900'],
    ['a, N48', 1370, 955, '900'],
    ['a, N50', 1410, 875, '830'],
    ['a, N52', 1440, 875, '830'],
    ['b, N45', 1320, 955, '892'],
    ['b, N48', 1370, 955, '892'],
    ['b, N50', 1390, 955, '892'],
    ['b, N52', 1420, 955, '892'],
    ['b, N42', 1280, 955, '923'],
    ['b, N45M', 1320, 1114, '995'],
    ['b, N48M', 1370, 1114, '1027'],
  ] as const
  for (const [name, Br, Hcj, Hcb] of rows)
    check(
      `sheet ${name}`,
      () => normalCoercivity({ ...n42, remanence: Br / 1000, intrinsicCoercivity: Hcj * 1000 }) / 1000,
      Hcb,
      { relative: 0.055 },
    )
})

describe('source: ndfeb-sheet-f, N48SH — 13.82 kGs and 21.06 kOe at 20 °C, 11.69 kGs and 6.29 kOe at 150 °C', () => {
  // Its coefficients as printed, −0.119 and −0.539 %/K. A field of 6.29 kOe at 150 °C, squareness put at one: the
  // whole of the coercivity is gone there. 1 K stands for the last digit of the coefficients.
  const α = -0.119e-2
  const β = -0.539e-2
  const kOe = 1e3 / (4 * Math.PI) / 1e-3
  const at150 = 6.29 * kOe
  check(
    'temperature at which that field meets the coercivity',
    demagnetizationTemperature({
      field: at150 * ((1 + α * 0) / (1 + α * 130)),
      kneeField: 21.06 * kOe,
      temperature: 293.15,
      remanenceCoefficient: α,
      coercivityCoefficient: β,
    }) - 273.15,
    '150',
    { absolute: 1 },
  )
  check('remanence at 150 °C, kGs', 13.82 * (1 + α * 130), '11.69', { absolute: 0.015 })
})

describe('agrees: load line on the straight part, B = Br/(1 + μrec N/(1 − N))', () => {
  for (const N of [0.1, 1 / 3, 0.55])
    test(`N = ${N.toFixed(2)}`, () => {
      const { remanence: Br, recoilPermeability: μrec } = n42
      const { polarization: J, worstField: H } = uniform(n42, -N)
      // operating line B = −μ0 H (1 − N)/N against B = Br + μrec μ0 H
      const B = Br / (1 + (μrec * N) / (1 - N))
      expect((J + μ0 * H) / B).toBeCloseTo(1, 4)
      expect((J * (1 - N)) / B).toBeCloseTo(1, 4)
    })
})

describe('agrees: demagnetising factor of a cuboid, mean of the field at points of its volume', () => {
  test('mean J of the points is that of the factor', () => {
    const size = [0.046, 0.03, 0.01] as const
    const { nodes, weights } = gaussLegendre(8)
    const points: number[] = []
    const shares: number[] = []
    for (let i = 0; i < 8; i++)
      for (let j = 0; j < 8; j++)
        for (let k = 0; k < 8; k++) {
          points.push((nodes[i]! * size[0]) / 2, (nodes[j]! * size[1]) / 2, (nodes[k]! * size[2]) / 2)
          shares.push(weights[i]! * weights[j]! * weights[k]!)
        }
    const B = blockFluxDensity(
      [
        {
          centre: [0, 0, 0],
          frame: [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ],
          size,
          polarization: 1,
        },
      ],
      Float64Array.from(points),
    )
    const material = { ...n42, intrinsicCoercivity: 2e6 }
    const own = Float64Array.from(shares, (_, i) => B[3 * i + 2]! - 1)
    const whole = demagnetization({
      material,
      ownShare: own,
      appliedField: new Float64Array(own.length),
      weights: Float64Array.from(shares),
    })
    const one = uniform(material, -cuboidDemagnetizingFactor(size))
    expect(whole.polarization / one.polarization).toBeCloseTo(1, 4)
    // the middle of a pole face bears more than the mean
    expect(whole.worstField).toBeLessThan(1.05 * one.worstField)
  })
})

describe('agrees: wide plate past its knee, J = μ0 h on the curve', () => {
  test('the plate stands at the normal coercivity, where B is zero', () => {
    const hot = { ...n42, intrinsicCoercivity: 600e3 }
    const { polarization, worstField, kneeRatio } = uniform(hot, -1)
    expect(-worstField / normalCoercivity(hot)).toBeCloseTo(1, 9)
    expect(polarization / (-μ0 * worstField)).toBeCloseTo(1, 9)
    expect(kneeRatio).toBeGreaterThan(1)
  })
})

describe('law: the curve', () => {
  const material = fc.record({
    remanence: fc.double({ min: 0.1, max: 1.6, noNaN: true }),
    recoilPermeability: fc.double({ min: 1, max: 1.5, noNaN: true }),
    intrinsicCoercivity: fc.double({ min: 1e3, max: 4e6, noNaN: true }),
    squareness: fc.double({ min: squarenessRange[0], max: squarenessRange[1], noNaN: true }),
  })
  test('Br at rest, 0.9 Br or less at the knee, zero at the coercivity, reversed far beyond', () => {
    fc.assert(
      fc.property(material, (m) => {
        const at = (share: number) =>
          demagnetizationPolarization(m, -share * m.intrinsicCoercivity) / m.remanence
        expect(at(0)).toBe(1)
        expect(at(m.squareness)).toBeLessThan(0.9 + 1e-9)
        expect(at(1)).toBeCloseTo(0, 7)
        expect(at(50)).toBeLessThanOrEqual(-1 + 1e-12)
        expect(Number.isFinite(at(1e300 / m.intrinsicCoercivity))).toBe(true)
      }),
    )
  })
  test('never rises as the demagnetising field grows', () => {
    fc.assert(
      fc.property(
        material,
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (m, a, b) => {
          const at = (share: number) => demagnetizationPolarization(m, -share * m.intrinsicCoercivity)
          expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-12)
        },
      ),
    )
  })
  test('squarer is stronger at its shoulder', () => {
    const at = (squareness: number) => demagnetizationPolarization({ ...n42, squareness }, -830e3)
    expect(at(0.95)).toBeGreaterThan(at(0.9))
    expect(at(0.9)).toBeGreaterThan(at(0.8))
  })
})

describe('law: loads', () => {
  test('cool and without current nothing is lost', () => {
    const rest = uniform(n42, -0.35)
    expect(rest.irreversibleLoss).toBeLessThan(1e-6)
    expect(rest.shareBeyondKnee).toBe(0)
    expect(rest.margin).toBeGreaterThan(4e5)
    expect(rest.kneeRatio).toBeCloseTo(-rest.worstField / rest.kneeField, 14)
  })
  test('the loss grows with the load, from nothing to reversal, and never backwards', () => {
    let last = -1
    for (let applied = 0; applied <= 1.6e6; applied += 2e4) {
      const { irreversibleLoss, margin, kneeRatio } = uniform(n42, -0.3, -applied)
      expect(irreversibleLoss).toBeGreaterThanOrEqual(last)
      expect(margin > 0).toBe(kneeRatio < 1)
      last = irreversibleLoss
    }
    expect(last).toBe(2)
  })
  test('a magnetising field hurts nothing', () => {
    const aided = uniform(n42, 0.2, 3e5)
    expect(aided.irreversibleLoss).toBe(0)
    expect(aided.kneeRatio).toBe(0)
    expect(aided.polarization).toBeGreaterThan(n42.remanence)
  })
  test('the share past the knee is that of the weights, watching points count for the worst alone', () => {
    const load = demagnetization({
      material: n42,
      ownShare: Float64Array.of(-0.2, -0.2, -0.2),
      appliedField: Float64Array.of(0, -8e5, -9e5),
      weights: Float64Array.of(3, 1, 0),
    })
    expect(load.shareBeyondKnee).toBe(0.25)
    expect(load.worstPoint).toBe(2)
    expect(load.irreversibleLoss).toBeGreaterThan(0.02)
    expect(load.irreversibleLoss).toBeLessThan(0.5)
  })
  test('any load gives finite numbers', () => {
    const share = fc.double({ min: -1, max: 0.3, noNaN: true })
    const applied = fc.double({ min: -1e9, max: 1e9, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(share, applied), { minLength: 1, maxLength: 6 }), (points) => {
        const all = demagnetization({
          material: n42,
          ownShare: Float64Array.from(points, ([s]) => s),
          appliedField: Float64Array.from(points, ([, H]) => H),
          weights: Float64Array.from(points, () => 1),
        })
        for (const value of Object.values(all)) expect(Number.isFinite(value)).toBe(true)
        expect(all.irreversibleLoss).toBeGreaterThanOrEqual(0)
      }),
    )
  })
})

describe('law: temperature at which the knee is met', () => {
  const at = {
    kneeField: 860e3,
    temperature: 293.15,
    remanenceCoefficient: -0.0012,
    coercivityCoefficient: -0.007,
  }
  test('there both are equal, from whichever temperature they are told', () => {
    const field = 500e3
    const T = demagnetizationTemperature({ ...at, field })
    const carried = (value: number, k: number, to: number) => value * (1 + k * (to - 293.15))
    expect(carried(field, -0.0012, T) / carried(860e3, -0.007, T)).toBeCloseTo(1, 12)
    const cold = {
      ...at,
      temperature: 260,
      field: carried(field, -0.0012, 260),
      kneeField: carried(860e3, -0.007, 260),
    }
    expect(demagnetizationTemperature(cold)).toBeCloseTo(T, 9)
  })
  test('neodymium: a stronger field meets it sooner, at no field the coercivity’s own end remains', () => {
    expect(demagnetizationTemperature({ ...at, field: 700e3 })).toBeLessThan(
      demagnetizationTemperature({ ...at, field: 600e3 }),
    )
    expect(demagnetizationTemperature({ ...at, field: 0 })).toBeCloseTo(293.15 + 1 / 0.007, 9)
  })
  test('ferrite: the cold meets it, the harder it works the milder', () => {
    const ferrite = { ...at, kneeField: 180e3, remanenceCoefficient: -0.002, coercivityCoefficient: 0.0035 }
    const lowest = demagnetizationTemperature({ ...ferrite, field: 150e3 })
    expect(lowest).toBeLessThan(293.15)
    expect(lowest).toBeGreaterThan(demagnetizationTemperature({ ...ferrite, field: 140e3 }))
    expect(demagnetizationTemperature({ ...ferrite, field: 0 })).toBeCloseTo(293.15 - 1 / 0.0035, 9)
  })
  test('equal coefficients never meet', () => {
    expect(demagnetizationTemperature({ ...at, field: 860e3, coercivityCoefficient: -0.0012 })).toBe(
      Number.MAX_VALUE,
    )
  })
})

describe('law: what has no meaning is refused', () => {
  const bad: readonly [string, Partial<MagnetMaterial>][] = [
    ['no remanence', { remanence: 0 }],
    ['no coercivity', { intrinsicCoercivity: -1 }],
    ['recoil below one', { recoilPermeability: 0.9 }],
    ['squareness of one', { squareness: 1 }],
    ['not a number', { remanence: Number.NaN }],
  ]
  for (const [name, change] of bad)
    test(name, () => expect(() => demagnetizationPolarization({ ...n42, ...change }, 0)).toThrow(RangeError))
  test('lists that do not match, weights of nothing', () => {
    const one = Float64Array.of(1)
    const load = {
      material: n42,
      ownShare: one.map(() => -0.3),
      appliedField: new Float64Array(1),
      weights: one,
    }
    expect(() => demagnetization({ ...load, ownShare: new Float64Array(2) })).toThrow(RangeError)
    expect(() => demagnetization({ ...load, weights: new Float64Array(1) })).toThrow(RangeError)
    expect(() => demagnetization({ ...load, ownShare: Float64Array.of(40) })).toThrow(RangeError)
  })
})
