/** Checks of the endless array: printed series values, limits, the field's own laws, finite elements. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { arrayFluxDensity, arrayHarmonicFluxDensity, type PeriodicArray } from './periodic-array.ts'

const mm = 1e-3
const array = (
  [τ, w, h, g]: readonly [number, number, number, number],
  remanence: number,
  recoilPermeability: number,
  backing: PeriodicArray['backing'] = 'iron-pair',
): PeriodicArray => ({
  polePitch: τ * mm,
  magnetWidth: w * mm,
  magnetThickness: h * mm,
  gap: g * mm,
  remanence,
  recoilPermeability,
  backing,
})
const first = [40, 30, 10, 16] as const
const second = [62.8, 30, 10, 16] as const
const third = [25.1, 10, 3, 10] as const

describe('agrees: separately programmed series, printed to five decimals — mid-gap harmonics', () => {
  const rows = [
    [first, 1.2, 1, '0.63403', '-0.02933', '-0.00505'],
    [first, 1.2, 1.05, '0.61980', '-0.02863', '-0.00493'],
    [second, 1.26, 1, '0.55530', '0.11945', '-0.02470'],
    [second, 1.26, 1.05, '0.54304', '0.11665', '-0.02410'],
    [third, 1.2, 1, '0.29222', '0.06664', '0.00016'],
  ] as const
  for (const [shape, Br, μ, ...printed] of rows)
    printed.forEach((text, i) => {
      check(
        `τ ${shape[0]} mm, μrec ${μ}, order ${2 * i + 1}`,
        () => arrayHarmonicFluxDensity(array(shape, Br, μ), 2 * i + 1, 0),
        text,
      )
    })
  const sums = [
    [first, 1.2, 1, '0.60164'],
    [first, 1.2, 1.05, '0.58818'],
    [second, 1.26, 1, '0.64155'],
    [second, 1.26, 1.05, '0.62730'],
    [third, 1.2, 1, '0.35619'],
  ] as const
  for (const [shape, Br, μ, text] of sums)
    check(
      `τ ${shape[0]} mm, μrec ${μ}, sum at the pole centre`,
      () => arrayFluxDensity(array(shape, Br, μ), { x: 0, height: 0 }).across,
      text,
    )
  const others = [
    [first, 1.2, '0.37995', '0.38971'],
    [second, 1.26, '0.35482', '0.36282'],
    [third, 1.2, '0.19754', '0.16907'],
  ] as const
  for (const [shape, Br, air, plain] of others) {
    check(
      `τ ${shape[0]} mm, no iron, sum at the pole centre`,
      () => arrayFluxDensity(array(shape, Br, 1, 'air-pair'), { x: 0, height: 0 }).across,
      air,
    )
    check(
      `τ ${shape[0]} mm, one array and plain iron, first harmonic half way`,
      () => arrayHarmonicFluxDensity(array(shape, Br, 1, 'iron-plain'), 1, (shape[3] / 2) * mm),
      plain,
    )
  }
})

describe('agrees: magnetic circuit of wide poles, B = Br h/(h + μrec g/2)', () => {
  // Br 1.3 T, μrec 1.05, magnets 10 mm: ideal-iron values of the textbook circuit without leakage
  const wide = (gap: number, backing: PeriodicArray['backing']) =>
    array([4000, 4000, 10, gap], 1.3, 1.05, backing)
  for (const [gap, printed] of [
    [12, '0.798'],
    [15, '0.727'],
  ] as const)
    check(
      `two rows ${gap} mm apart`,
      () => arrayFluxDensity(wide(gap, 'iron-pair'), { x: 0, height: 0 }).across,
      printed,
    )
  // The circuit gives 1.3/(1 + 1.05) = 0.63415, printed 0.634
  check(
    'two rows 20 mm apart',
    () => arrayFluxDensity(wide(20, 'iron-pair'), { x: 0, height: 0 }).across,
    '0.634',
  )
  check(
    'one row 15 mm from plain iron',
    () => arrayFluxDensity(wide(15, 'iron-plain'), { x: 0, height: 7.5 * mm }).across,
    '0.505',
  )
})

describe('law: the field obeys Laplace, the iron and the magnets', () => {
  const shape = array(second, 1.26, 1.05)
  test('div B = 0 and curl B = 0 in the gap', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: -0.007, max: 0.007, noNaN: true }),
        (x, z) => {
          const h = 1e-6
          const at = (dx: number, dz: number) => arrayFluxDensity(shape, { x: x + dx, height: z + dz })
          const [e, w, n, s] = [at(h, 0), at(-h, 0), at(0, h), at(0, -h)]
          expect(Math.abs(e.along - w.along + n.across - s.across) / (2 * h)).toBeLessThan(1e-3)
          expect(Math.abs(e.across - w.across - n.along + s.along) / (2 * h)).toBeLessThan(1e-3)
        },
      ),
    )
  })
  test('no field along a plain iron surface; half-wave and even symmetry', () => {
    const plain = array(first, 1.2, 1.05, 'iron-plain')
    for (const x of [0.003, 0.017, 0.02]) {
      expect(Math.abs(arrayFluxDensity(plain, { x, height: 0 }).along)).toBeLessThan(1e-15)
      const [here, next, back] = [x, x + 0.04, -x].map((at) =>
        arrayFluxDensity(plain, { x: at, height: 0.005 }),
      )
      expect(next!.across).toBeCloseTo(-here!.across, 12)
      expect(back!.across).toBeCloseTo(here!.across, 12)
    }
  })
  test('at μrec 1 two rows in air are twice one row: b_n (1 − e^−kh) e^(−kg/2)', () => {
    const air = array(first, 1.2, 1, 'air-pair')
    for (const n of [1, 3, 5, 7]) {
      const k = (n * Math.PI) / 0.04
      const b = ((4 * 1.2) / (n * Math.PI)) * Math.sin((k * 0.03) / 2)
      expect(arrayHarmonicFluxDensity(air, n, 0)).toBeCloseTo(
        b * -Math.expm1(-k * 0.01) * Math.exp(-k * 0.008),
        13,
      )
    }
  })
  test('two rows a gap apart are one row half that gap from plain iron', () => {
    const pair = array(second, 1.26, 1.07)
    const plain = { ...pair, gap: pair.gap / 2, backing: 'iron-plain' } as const
    for (const n of [1, 3, 9])
      expect(arrayHarmonicFluxDensity(pair, n, 0.003)).toBeCloseTo(
        arrayHarmonicFluxDensity(plain, n, 0.003),
        14,
      )
  })
  test('finite for any shape', () => {
    const lengths = fc.double({ min: 1e-6, max: 100, noNaN: true })
    fc.assert(
      fc.property(
        lengths,
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        lengths,
        lengths,
        fc.constantFrom('iron-pair', 'iron-plain', 'air-pair' as const),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (polePitch, share, magnetThickness, gap, backing, z) => {
          const any = {
            polePitch,
            magnetWidth: share * polePitch,
            magnetThickness,
            gap,
            remanence: 1.3,
            recoilPermeability: 1.05,
            backing: backing as PeriodicArray['backing'],
          }
          const b = arrayFluxDensity(any, { x: 0.3 * polePitch, height: (z * gap) / 2 })
          expect(Number.isFinite(b.across) && Number.isFinite(b.along)).toBe(true)
          expect(Math.abs(b.across)).toBeLessThan(1.3 * 1.3)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('agrees: two-dimensional finite elements, τ 62.8 mm, μrec 1.05 (test/reference/magnetics/array-pitch)', () => {
  const file = new URL('../../../test/reference/magnetics/array-pitch.json', import.meta.url)
  const { runs } = JSON.parse(readFileSync(file, 'utf8')) as {
    runs: Record<string, { x_m: number[]; By_T: number[] }>
  }
  const shape = array(second, 1.26, 1.05)
  const harmonic = ({ x_m, By_T }: { x_m: number[]; By_T: number[] }, n: number) => {
    let sum = 0
    for (let i = 1; i < x_m.length; i++) {
      const f = (j: number) => By_T[j]! * Math.cos((n * Math.PI * x_m[j]!) / 0.0628)
      sum += ((f(i) + f(i - 1)) / 2) * (x_m[i]! - x_m[i - 1]!)
    }
    return (4 / 0.0628) * sum
  }
  test('magnets’ permeability between the magnets too, as in the series: within 1e-4 T along the gap', () => {
    const { x_m, By_T } = runs['filled-fine']!
    expect(x_m.length).toBeGreaterThan(100)
    x_m.forEach((x, i) => {
      expect(Math.abs(arrayFluxDensity(shape, { x, height: 0 }).across - By_T[i]!)).toBeLessThan(1e-4)
    })
  })
  test('harmonics within 2e-4 T on the coarse mesh, 1e-4 T on the fine one', () => {
    for (const [density, allowed] of [
      ['coarse', 2e-4],
      ['fine', 1e-4],
    ] as const)
      for (const n of [1, 3, 5])
        expect(
          Math.abs(harmonic(runs[`filled-${density}`]!, n) - arrayHarmonicFluxDensity(shape, n, 0)),
        ).toBeLessThan(allowed)
  })
  test('air between the magnets: the series gives 0.3 % too little', () => {
    const ratio = arrayHarmonicFluxDensity(shape, 1, 0) / harmonic(runs['air-fine']!, 1)
    expect(ratio).toBeGreaterThan(0.996)
    expect(ratio).toBeLessThan(0.998)
  })
})

describe('refusals', () => {
  const good = array(first, 1.2, 1)
  test.each([
    ['magnet wider than the pitch', { ...good, magnetWidth: 0.041 }, 0],
    ['thickness zero', { ...good, magnetThickness: 0 }, 0],
    ['gap not finite', { ...good, gap: Number.NaN }, 0],
    ['μrec below one', { ...good, recoilPermeability: 0.9 }, 0],
    ['unknown backing', { ...good, backing: 'wood' as PeriodicArray['backing'] }, 0],
    ['height in the magnet', good, 0.009],
  ])('law: %s', (_, bad, height) => {
    expect(() => arrayHarmonicFluxDensity(bad, 1, height)).toThrow(RangeError)
    expect(() => arrayFluxDensity(bad, { x: 0, height })).toThrow(RangeError)
  })
  test('law: order zero; even orders are nothing', () => {
    expect(() => arrayHarmonicFluxDensity(good, 0, 0)).toThrow(RangeError)
    expect(arrayHarmonicFluxDensity(good, 2, 0)).toBe(0)
  })
})
