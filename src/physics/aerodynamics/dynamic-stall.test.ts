/** Checks of the parts of the streamtubes: finite span, separation and its lag, flow curvature, arms. */
import { describe, expect, test } from 'vitest'
import { sections } from '../../data/airfoil/index.ts'
import { attachedShare, readDynamicSection } from './dynamic-stall.ts'
import { finiteSpanPolar } from './finite-span.ts'
import { flowCurvatureAngle } from './flow-curvature.ts'
import type { Polar } from './polar.ts'
import { readSection, sectionTable } from './section-table.ts'
import { strutTorqueCoefficient } from './strut-drag.ts'

const rad = Math.PI / 180
const polars: Polar[] = sections['NACA 0018'].map(({ rows, reynolds }) => ({
  angle: Float64Array.from(rows, ([α]) => α * rad),
  lift: Float64Array.from(rows, ([, lift]) => lift),
  drag: Float64Array.from(rows, ([, , drag]) => drag),
  reynolds,
}))
const line: Polar = {
  angle: Float64Array.of(-0.2, 0, 0.2),
  lift: Float64Array.of(-0.2, 0, 0.2).map((α) => 2 * Math.PI * α),
  drag: Float64Array.of(0.01, 0.01, 0.01),
  reynolds: 1e5,
}

describe('agrees: finite span, lift slope 2π / (1 + 2/AR) of the lifting line', () => {
  for (const aspectRatio of [2, 6, 20])
    test(`AR ${aspectRatio}`, () => {
      const { angle, lift } = finiteSpanPolar(line, { aspectRatio })
      expect(lift[2]! / angle[2]!).toBeCloseTo((2 * Math.PI) / (1 + 2 / aspectRatio), 10)
    })
})

describe('law: finite span', () => {
  test('an endless blade is its section', () => {
    const { angle, drag } = finiteSpanPolar(polars[2]!, { aspectRatio: 1e12 })
    angle.forEach((α, i) => {
      expect(α).toBeCloseTo(polars[2]!.angle[i]!, 4)
      expect(drag[i]).toBeCloseTo(polars[2]!.drag[i]!, 10)
    })
  })
  test('angles rise and stay on the circle for any aspect ratio', () => {
    for (const aspectRatio of [0.05, 0.5, 3, 30])
      for (const polar of polars) {
        const { angle } = finiteSpanPolar(polar, { aspectRatio })
        angle.forEach((α, i) => {
          expect(Math.abs(α)).toBeLessThanOrEqual(Math.PI)
          if (i > 0) expect(α).toBeGreaterThan(angle[i - 1]!)
        })
      }
  })
})

describe('agrees: the attached share is the inverse of Kirchhoff’s lift, C_L = C_Lα α ((1 + √f) / 2)²', () => {
  for (const f of [0, 0.1, 0.5, 0.9, 1])
    test(`f = ${f}`, () => {
      const attached = 1.3
      const lift = attached * ((1 + Math.sqrt(f)) / 2) ** 2
      expect(attachedShare({ lift, attached })).toBeCloseTo(f, 10)
    })
})

describe('law: the lag of the stall', () => {
  const table = sectionTable(polars, 20)
  const logReynolds = Math.log(160_000)
  const still = { lift: 0, drag: 0 }
  const moving = { lift: 0, drag: 0 }
  test('after many chords the curve at rest is back, at any angle', () => {
    for (let α = -3.1; α <= 3.1; α += 0.05) {
      readSection(table, logReynolds, α, still)
      readDynamicSection(table, logReynolds, α, α > 0 ? 1 : 0, 1e4, moving)
      expect(moving.lift).toBeCloseTo(still.lift, 9)
      expect(moving.drag).toBeCloseTo(still.drag, 9)
    }
  })
  test('at once a blade carried past its stall lifts as if attached, and drags less than at rest', () => {
    const α = 17 * rad
    readSection(table, logReynolds, α, still)
    expect(readDynamicSection(table, logReynolds, α, 1, 0, moving)).toBe(1)
    expect(moving.lift).toBeCloseTo(table.slope * Math.sin(α - table.zeroLift), 6)
    expect(moving.lift).toBeGreaterThan(1.5 * still.lift)
    expect(moving.drag).toBeLessThan(still.drag)
  })
  test('after the lag 37 % of the difference is left', () => {
    const α = 17 * rad
    const rest = readDynamicSection(table, logReynolds, α, 1, 1e9, moving)
    const share = readDynamicSection(table, logReynolds, α, 1, 4, moving)
    expect((share - rest) / (1 - rest)).toBeCloseTo(Math.exp(-1), 10)
  })
})

describe('law: flow curvature', () => {
  test('none for a blade mounted at three quarters of its chord, and none at rest', () => {
    expect(flowCurvatureAngle({ chordOverRadius: 0.1, mount: 0.75, tipSpeedRatio: 3, airSpeed: 3 })).toBe(0)
    expect(flowCurvatureAngle({ chordOverRadius: 0.1, mount: 0.25, tipSpeedRatio: 0, airSpeed: 1 })).toBe(0)
  })
})

describe('agrees: flow curvature, geometry of the chord on its circle', () => {
  test('the angle between the tangents at mounting and at three quarters of a short chord', () => {
    // a fast rotor without wind: the air comes along the circle
    const chord = 0.02
    const x = (0.75 - 0.25) * chord
    const angle = flowCurvatureAngle({ chordOverRadius: chord, mount: 0.25, tipSpeedRatio: 5, airSpeed: 5 })
    expect(angle).toBeCloseTo(Math.atan(x), 5)
  })
})

describe('agrees: arms of a fast rotor, ∫ r³ dr in closed form', () => {
  test('C_q = −n t C_d λ² / (8H)', () => {
    const struts = { count: 4, thickness: 0.02, dragCoefficient: 1.1 }
    const at = { tipSpeedRatio: 50, radius: 2, height: 3, windRatio: 0 }
    const exact = (-4 * 0.02 * 1.1 * 50 ** 2) / (8 * 3)
    expect(strutTorqueCoefficient(struts, at) / exact).toBeCloseTo(1, 2)
  })
})

describe('law: arms', () => {
  test('they do not turn a rotor at rest', () => {
    const at = { tipSpeedRatio: 0, radius: 1, height: 1, windRatio: 1 }
    expect(strutTorqueCoefficient({ count: 3, thickness: 0.01, dragCoefficient: 1 }, at)).toBeCloseTo(0, 12)
  })
})
