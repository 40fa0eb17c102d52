/** Checks of retention, inertia, gap stack and thermal growth. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import { runningClearance } from './gap-stack.ts'
import { bladeInertia, blockInertia, ringInertia } from './inertia.ts'
import { bandHoopStress, centrifugalForce, pocketWallStress, shearStress } from './retention.ts'
import { restrainedStress, thermalGrowth } from './thermal-expansion.ts'

const rpm = Math.PI / 30

describe('agrees: force outward, printed vectors for 60 g at 0.12 m', () => {
  for (const [speed, printed] of [
    [300, '7.11'],
    [600, '28.4'],
    [1000, '79.0'],
    [1900, '285'],
  ] as const)
    check(`${speed} rpm`, centrifugalForce({ mass: 0.06, radius: 0.12, speed: speed * rpm }), printed)
})

describe('source: roark, table 11.4, case 8a (from memory, not opened) — square and long plate, all edges held', () => {
  const unit = (length: number) =>
    pocketWallStress({ force: length, length, width: 1, thickness: 1, modulus: 1 })
  check('square, stress', unit(1).stress, '0.3078')
  check('square, deflection', unit(1).deflection, '0.0138')
  check('2 : 1, stress', unit(2).stress, '0.4974')
  check('2 : 1, deflection', unit(2).deflection, '0.0277')
  check('long, stress', unit(50).stress, '0.5000')
  check('long, deflection', unit(50).deflection, '0.0284')
})

describe('agrees: a long wall is a strip held at both ends', () => {
  test('p b²/2t² and p b⁴ (1 − ν²)/32 E t³', () => {
    const wall = { force: 100, length: 1, width: 0.02, thickness: 0.002, modulus: 2e9 }
    const { stress, deflection } = pocketWallStress(wall)
    const p = 100 / 0.02
    expect(stress).toBeCloseTo((p * 0.02 ** 2) / (2 * 0.002 ** 2), 6)
    expect(deflection / ((p * 0.02 ** 4 * (1 - 0.09)) / (32 * 2e9 * 0.002 ** 3))).toBeCloseTo(1, 2)
  })
  test('shearStress: force over area by hand', () =>
    expect(shearStress({ force: 285, area: 8e-4 })).toBe(356250))
})

describe('agrees: band by the balance of a half ring, magnets summed one by one', () => {
  test('many magnets', () => {
    const [R, w, t, d, ω, n, m, r] = [0.1, 0.02, 0.001, 7850, 200, 360, 0.002, 0.09]
    let across = 0
    for (let i = 0; i < n; i++) {
      const angle = ((i + 0.5) * 2 * Math.PI) / n
      // Half of the ring: magnets and band above the cut pull on two sections.
      if (angle < Math.PI) across += (m * r + (d * w * t * 2 * Math.PI * R * R) / n) * ω * ω * Math.sin(angle)
    }
    const stress = bandHoopStress({
      radius: R,
      width: w,
      thickness: t,
      density: d,
      carriedMass: n * m,
      massRadius: r,
      speed: ω,
    })
    expect(Math.abs(across / (2 * w * t) / stress - 1)).toBeLessThan(1e-4)
  })
})

describe('law: retention', () => {
  test('grows with the square of speed, whichever way it turns', () =>
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), (speed) => {
        const once = centrifugalForce({ mass: 0.1, radius: 0.2, speed })
        expect(centrifugalForce({ mass: 0.1, radius: 0.2, speed: -2 * speed })).toBeCloseTo(4 * once, 6)
      }),
    ))
  test('sides of the wall may be named either way; the band is weightless without speed', () => {
    const wall = { force: 10, thickness: 0.001, modulus: 1e9 }
    expect(pocketWallStress({ ...wall, length: 0.04, width: 0.01 })).toEqual(
      pocketWallStress({ ...wall, length: 0.01, width: 0.04 }),
    )
    expect(
      bandHoopStress({
        radius: 1,
        width: 1,
        thickness: 1,
        density: 1,
        carriedMass: 1,
        massRadius: 1,
        speed: 0,
      }),
    ).toBe(0)
    expect(shearStress({ force: 0, area: 1 })).toBe(0)
  })
  test('refusals', () => {
    expect(() => centrifugalForce({ mass: -1, radius: 1, speed: 1 })).toThrow('below-minimum')
    expect(() => shearStress({ force: 1, area: 0 })).toThrow('below-minimum')
    expect(() => pocketWallStress({ force: 1, length: 0, width: 1, thickness: 1, modulus: 1 })).toThrow(
      'below-minimum',
    )
    expect(() =>
      bandHoopStress({
        radius: 1,
        width: 1,
        thickness: 0,
        density: 1,
        carriedMass: 1,
        massRadius: 1,
        speed: 0,
      }),
    ).toThrow('below-minimum')
  })
})

describe('agrees: inertia by integration', () => {
  test('ring: shells', () => {
    const { nodes, weights } = gaussLegendreOn(4, 0.03, 0.1)
    let first = 0
    let second = 0
    nodes.forEach((r, i) => {
      first += weights[i]! * 2 * Math.PI * r
      second += weights[i]! * 2 * Math.PI * r ** 3
    })
    expect(ringInertia({ mass: 2, inner: 0.03, outer: 0.1 })).toBeCloseTo((2 * second) / first, 14)
  })
  test('block: points', () => {
    const x = gaussLegendreOn(3, 0.1, 0.14)
    const y = gaussLegendreOn(3, -0.01, 0.01)
    let sum = 0
    x.nodes.forEach((px, i) => {
      y.nodes.forEach((py, j) => {
        sum += (x.weights[i]! * y.weights[j]! * (px * px + py * py)) / (0.04 * 0.02)
      })
    })
    expect(blockInertia({ mass: 0.06, length: 0.04, width: 0.02, radius: 0.12 })).toBeCloseTo(0.06 * sum, 14)
  })
  test('blade: straight pieces by Gauss', () => {
    const radii = [0.1, 0.3, 0.7, 0.75]
    const massPerLength = [2, 1.2, 0.5, 0]
    let [mass, moment, inertia] = [0, 0, 0]
    for (let i = 1; i < radii.length; i++) {
      const rule = gaussLegendreOn(3, radii[i - 1]!, radii[i]!)
      rule.nodes.forEach((r, k) => {
        const share = (r - radii[i - 1]!) / (radii[i]! - radii[i - 1]!)
        const μ = massPerLength[i - 1]! + share * (massPerLength[i]! - massPerLength[i - 1]!)
        mass += rule.weights[k]! * μ
        moment += rule.weights[k]! * μ * r
        inertia += rule.weights[k]! * μ * r * r
      })
    }
    const blade = bladeInertia({ radii, massPerLength })
    expect(blade.mass).toBeCloseTo(mass, 13)
    expect(blade.inertia).toBeCloseTo(inertia, 13)
    expect(blade.centre).toBeCloseTo(moment / mass, 13)
  })
})

describe('law: inertia', () => {
  test('a hoop has m r², a disc half of it, a far block m r²', () => {
    expect(ringInertia({ mass: 3, inner: 2, outer: 2 })).toBe(12)
    expect(ringInertia({ mass: 3, inner: 0, outer: 2 })).toBe(6)
    expect(blockInertia({ mass: 1, length: 0, width: 0, radius: 5 })).toBe(25)
    expect(bladeInertia({ radii: [0, 1], massPerLength: [0, 0] })).toEqual({
      mass: 0,
      inertia: 0,
      centre: 0.5,
    })
  })
  test('more stations on the same line change nothing', () => {
    const coarse = bladeInertia({ radii: [0.2, 1], massPerLength: [4, 0.8] })
    const fine = bladeInertia({ radii: [0.2, 0.4, 0.6, 0.8, 1], massPerLength: [4, 3.2, 2.4, 1.6, 0.8] })
    expect(fine.inertia).toBeCloseTo(coarse.inertia, 12)
    expect(fine.centre).toBeCloseTo(coarse.centre, 12)
  })
  test('refusals', () => {
    expect(() => ringInertia({ mass: 1, inner: 2, outer: 1 })).toThrow('below-minimum')
    expect(() => blockInertia({ mass: 1, length: -1, width: 1, radius: 1 })).toThrow('below-minimum')
    expect(() => bladeInertia({ radii: [1, 1], massPerLength: [1, 1] })).toThrow('not-increasing')
    expect(() => bladeInertia({ radii: [1], massPerLength: [1] })).toThrow('wrong-length')
    expect(() => bladeInertia({ radii: [0, 1], massPerLength: [1] })).toThrow('wrong-length')
  })
})

describe('agrees: gap stack, its two sums by assembling every corner', () => {
  test('all corners of three tolerances: least is the worst case, root mean square of the spread is theirs', () => {
    const contributions = [
      { closing: 1e-4, halfWidth: 2e-4 },
      { closing: -5e-5, halfWidth: 1e-4 },
      { halfWidth: 4e-4 },
    ]
    const corners: number[] = []
    for (let mask = 0; mask < 8; mask++)
      corners.push(
        2e-3 -
          contributions.reduce(
            (sum, { closing = 0, halfWidth }, i) =>
              sum + closing + (mask & (1 << i) ? halfWidth : -halfWidth),
            0,
          ),
      )
    const { mean, worst, likely, largest } = runningClearance({ nominal: 2e-3, contributions })
    expect(Math.min(...corners)).toBeCloseTo(worst, 15)
    expect(corners.reduce((sum, c) => sum + c, 0) / 8).toBeCloseTo(mean, 15)
    const rms = Math.sqrt(corners.reduce((sum, c) => sum + (c - mean) ** 2, 0) / 8)
    expect(mean - rms).toBeCloseTo(likely, 15)
    expect(largest).toBe(2)
  })
})

describe('law: gap stack', () => {
  test('worst ≤ likely ≤ mean; one tolerance alone makes both the same', () =>
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1e-2, noNaN: true }), { maxLength: 12 }), (halves) => {
        const { worst, likely, mean } = runningClearance({
          nominal: 1e-3,
          contributions: halves.map((halfWidth) => ({ halfWidth })),
        })
        expect(worst).toBeLessThanOrEqual(likely + 1e-15)
        expect(likely).toBeLessThanOrEqual(mean)
        if (halves.length === 1) expect(worst).toBeCloseTo(likely, 15)
      }),
    ))
  test('nothing in the stack, and refusals', () => {
    expect(runningClearance({ nominal: 1e-3, contributions: [] })).toEqual({
      mean: 1e-3,
      worst: 1e-3,
      likely: 1e-3,
      largest: -1,
    })
    expect(() => runningClearance({ nominal: -1, contributions: [] })).toThrow('below-minimum')
    expect(() => runningClearance({ nominal: 1, contributions: [{ halfWidth: -1 }] })).toThrow(
      'below-minimum',
    )
    expect(() => runningClearance({ nominal: 1, contributions: [{ closing: Number.NaN }] })).toThrow(
      'not-finite',
    )
  })
})

describe('agrees: thermal growth, copper by 60 K, and a restrained layer by equal strains', () => {
  check(
    '0.1 m of copper, mm',
    thermalGrowth({ length: 0.1, expansion: 17e-6, temperatureDifference: 60 }) * 1000,
    '0.102',
  )
  test('strain of the layer under its two-way stress undoes its free growth', () => {
    const σ = restrainedStress({
      modulus: 3e9,
      poisson: 0.3,
      expansionDifference: 5e-5,
      temperatureDifference: 60,
    })
    expect((σ - 0.3 * σ) / 3e9).toBeCloseTo(5e-5 * 60, 15)
  })
})

describe('law: thermal expansion', () => {
  test('signs, nought, refusals', () => {
    expect(thermalGrowth({ length: 1, expansion: 1e-5, temperatureDifference: -10 })).toBeCloseTo(-1e-4, 18)
    expect(restrainedStress({ modulus: 1e9, expansionDifference: 0, temperatureDifference: 60 })).toBe(0)
    expect(() => thermalGrowth({ length: -1, expansion: 1, temperatureDifference: 1 })).toThrow(
      'below-minimum',
    )
    expect(() =>
      restrainedStress({ modulus: 1, poisson: 0.5, expansionDifference: 1, temperatureDifference: 1 }),
    ).toThrow('below-minimum')
  })
})
