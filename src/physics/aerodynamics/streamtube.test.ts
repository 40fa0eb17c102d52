/** Checks of the double-multiple streamtubes: measured rotors, a closed form, energy, limits. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { type SectionName, sections } from '../../data/airfoil/index.ts'
import { monotoneCubic } from '../../numerics/interpolate.ts'
import type { Polar } from './polar.ts'
import { delftNormal, delftTangential, rm2ArmsAlone, rm2Towed, rvatTowed } from './streamtube.published.ts'
import { type StraightBladeRotor, straightBladeTurn } from './streamtube.ts'
import { strutTorqueCoefficient } from './strut-drag.ts'

const rad = Math.PI / 180
const polarsOf = (name: SectionName): Polar[] =>
  sections[name].map(({ rows, reynolds }) => ({
    angle: Float64Array.from(rows, ([α]) => α * rad),
    lift: Float64Array.from(rows, ([, lift]) => lift),
    drag: Float64Array.from(rows, ([, , drag]) => drag),
    reynolds,
  }))
const water = { windSpeed: 1, kinematicViscosity: 1e-6 }

/** Greatest power coefficient between two tip-speed ratios, in steps of 0.1. */
function peakOf(rotor: StraightBladeRotor, air: typeof water, from: number, to: number) {
  let best = { power: Number.NEGATIVE_INFINITY, tipSpeedRatio: 0 }
  for (let λ = from; λ <= to; λ += 0.1) {
    const { power } = straightBladeTurn(rotor, λ, air)
    if (power > best.power) best = { power, tipSpeedRatio: λ }
  }
  return best
}

const delft: StraightBladeRotor = {
  bladeCount: 2,
  radius: 0.5,
  height: 1,
  chord: 0.06,
  pitch: 0,
  mount: 0.4,
  // the polar of this very blade, with its tape
  polars: polarsOf('NACA 0018').slice(2, 3),
  struts: undefined,
}

describe('source: rogowski2025, loads of the two-bladed rotor at λ = 4.5 as digitised in irmb/virtualfluids, Python/actuator_line_vawt/data/validation/loads, commit 77ee8c3', () => {
  // per ½ρv²R: the files name no unit, and C_P from their tangential force, 0.29, fits this one
  const turn = straightBladeTurn(delft, 4.5, { windSpeed: 9.3, kinematicViscosity: 1.56e-5 }, { tubes: 90 })
  const azimuth = Array.from(turn.azimuth, (θ) => θ / rad + 90)
  const tangential = monotoneCubic(
    azimuth,
    turn.bladeTorque.map((q) => 2 * q),
  )
  const normal = monotoneCubic(
    azimuth,
    turn.bladeThrust.map(
      (x, i) => (2 * (x - turn.bladeTorque[i]! * Math.sin(turn.azimuth[i]!))) / Math.cos(turn.azimuth[i]!),
    ),
  )
  // an eighth of the greatest force, a fifth at the sides: streamtubes neither widen nor turn the wind
  for (const [at, printed] of delftNormal)
    check(`normal at ${at}°`, normal(at), printed, { absolute: at < 45 || at > 320 ? 0.45 : 0.3 })
  for (const [at, printed] of delftTangential)
    check(`tangential at ${at}°`, tangential(at), printed, { absolute: 0.07 })
  check('greatest normal force', Math.max(...azimuth.map(normal)), '2.406', { relative: 0.05 })
})

const rm2: StraightBladeRotor = {
  bladeCount: 3,
  radius: 0.5375,
  height: 0.807,
  // 67 mm at the middle, 40 mm at the ends
  chord: 0.0535,
  pitch: 0,
  mount: 0.5,
  polars: polarsOf('NACA 0021'),
  // drag on the 60 mm chord, from the run without blades at λ = 3.1
  struts: { count: 3, thickness: 0.06, dragCoefficient: 0.0185 },
}

describe('source: bachant2016-rm2, data of the towing tank (UNH-CORE/RM2-tow-tank, Data/Processed/Perf-1.0.csv and Perf-1.0-no-blades.csv, commit 062e681)', () => {
  const peak = peakOf(rm2, water, 2.5, 5)
  // the tank is blocked to a tenth, which lifts what was measured; the section's tables stall too early at Re 160 000
  check('greatest C_P', peak.power, rm2Towed[4][1], { relative: 0.1 })
  check('its tip-speed ratio', peak.tipSpeedRatio, '3.1', { absolute: 1 })
  for (const [λ, , thrust] of rm2Towed.slice(4))
    check(`C_T at λ = ${λ}`, straightBladeTurn(rm2, λ, water).thrust, thrust, { relative: 0.3 })
  for (const [λ, power] of rm2ArmsAlone)
    check(
      `arms alone at λ = ${λ}`,
      λ *
        strutTorqueCoefficient(rm2.struts!, {
          tipSpeedRatio: λ,
          radius: 0.5375,
          height: 0.807,
          windRatio: 1,
        }),
      power,
      // one drag coefficient for all Reynolds numbers, fitted in the middle
      { relative: 0.35 },
    )
})

describe('source: bachant2016-re, data of the towing tank (UNH-CORE/RVAT-Re-dep, Data/Processed/Perf-1.0.csv, commit 14ffa05); 3 blades of 0.14 m, D = H = 1 m', () => {
  // chord 0.28 R, the end of the range; NACA 0021 for its NACA 0020, drag of its arms unknown and left out
  const rvat = { ...rm2, radius: 0.5, height: 1, chord: 0.14, struts: undefined }
  check('greatest C_P', peakOf(rvat, water, 1, 3).power, rvatTowed[2][1], { relative: 0.2 })
  for (const [λ, , thrust] of rvatTowed)
    check(`C_T at λ = ${λ}`, straightBladeTurn(rvat, λ, water).thrust, thrust, { relative: 0.3 })
})

describe('source: kjellin2011, abstract: “the power coefficient peaked at 0.29 for a tip speed ratio equal to 3.3”; a visible limit', () => {
  // dimensions from memory: 3 blades NACA 0021 of 0.25 m, radius 3 m, height 5 m, 2° outward; its arms guessed
  const rotor = {
    ...rm2,
    radius: 3,
    height: 5,
    chord: 0.25,
    pitch: 2 * rad,
    struts: { count: 6, thickness: 0.2, dragCoefficient: 0.015 },
  }
  const peak = peakOf(rotor, { windSpeed: 6, kinematicViscosity: 1.45e-5 }, 2, 5)
  // gusts, tapered tips and true arms cost what the theory does not know of
  check('greatest C_P', peak.power, '0.29', { relative: 0.45 })
  check('its tip-speed ratio', peak.tipSpeedRatio, '3.3', { absolute: 0.8 })
})

/** C_L = 2π sin α, no drag, endless span, mounted where the curvature does not count. */
const ideal = (chord: number): StraightBladeRotor => {
  const angle = Float64Array.from({ length: 721 }, (_, k) => -Math.PI + (k * Math.PI) / 360)
  return {
    bladeCount: 3,
    radius: 1,
    height: 1e6,
    chord,
    pitch: 0,
    mount: 0.75,
    polars: [
      { angle, lift: angle.map((α) => 2 * Math.PI * Math.sin(α)), drag: angle.map(() => 0), reynolds: 1e6 },
    ],
    struts: undefined,
  }
}
const air = { windSpeed: 6, kinematicViscosity: 1.5e-5 }

describe('agrees: blades without drag and with C_L = 2π sin α have a closed form', () => {
  // W² C_x = 2π v λ cos²θ, so that a w = k |cos θ| with k = B c λ / (4R): v = 1 − k |cos θ|, then 1 − 3k |cos θ|
  for (const [chord, λ] of [
    [0.01, 4],
    [0.05, 3],
    [0.08, 2],
    [0.001, 0.5],
  ] as const) {
    const k = (3 * chord * λ) / 4
    const turn = straightBladeTurn(ideal(chord), λ, air, { tubes: 180, dynamicStall: false })
    test(`wind at the blades, chord ${chord}, λ = ${λ}`, () => {
      turn.azimuth.forEach((θ, i) => {
        const slowed = (i < 180 ? 1 : 3) * k * Math.abs(Math.cos(θ))
        expect(turn.windRatio[i]).toBeCloseTo(1 - slowed, 4)
      })
    })
    test(`C_Q, chord ${chord}, λ = ${λ}`, () => {
      const exact = ((Math.PI * 3 * chord) / 2) * (1 - (32 * k) / (3 * Math.PI) + (15 * k * k) / 4)
      expect(turn.torque / exact).toBeCloseTo(1, 3)
    })
  }
})

const garden: StraightBladeRotor = { ...delft, bladeCount: 3, chord: 0.08, polars: polarsOf('NACA 0018') }

describe('law: what the tubes give', () => {
  test('force times wind at the blade is shaft power and drag loss, everywhere', () => {
    for (const λ of [0, 0.7, 2, 4, 6]) {
      const turn = straightBladeTurn(garden, λ, air)
      turn.bladeThrust.forEach((x, i) => {
        expect(x * turn.windRatio[i]!).toBeCloseTo(λ * turn.bladeTorque[i]! + turn.bladeLoss[i]!, 10)
      })
    }
  })
  test('C_P is λ times the mean torque of the turn', () => {
    const turn = straightBladeTurn({ ...garden, struts: rm2.struts }, 3, air)
    const mean = turn.rotorTorque.reduce((sum, q) => sum + q, 0) / turn.rotorTorque.length
    expect(turn.power).toBeCloseTo(3 * mean, 12)
  })
  test('without induction a symmetric blade pulls alike upwind and downwind', () => {
    const turn = straightBladeTurn(ideal(1e-6), 3, air)
    turn.bladeTorque.forEach((q, i) => {
      expect(q / turn.bladeTorque[turn.bladeTorque.length - 1 - i]!).toBeCloseTo(1, 4)
    })
  })
  test('thrust goes to zero with the chord, in proportion', () => {
    const [wide, narrow] = [1e-4, 1e-5].map((chord) => straightBladeTurn(ideal(chord), 3, air).thrust)
    expect(wide! / narrow!).toBeCloseTo(10, 1)
  })
  test('18 tubes lie within 0.015 of 144', () => {
    for (const λ of [1, 2, 3, 4, 5]) {
      const [few, many] = [18, 144].map((tubes) => straightBladeTurn(garden, λ, air, { tubes }).power)
      expect(Math.abs(few! - many!)).toBeLessThan(0.015)
    }
  })
  test('arms and drag only ever cost', () => {
    for (const λ of [1, 3, 5])
      expect(straightBladeTurn({ ...garden, struts: rm2.struts }, λ, air).power).toBeLessThan(
        straightBladeTurn(garden, λ, air).power,
      )
  })
  test('any rotor: numbers, and never more than two discs in a row can take, 16/25', () => {
    fc.assert(
      fc.property(
        fc.record({
          bladeCount: fc.integer({ min: 1, max: 8 }),
          radius: fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
          slenderness: fc.double({ min: 0.05, max: 100, noNaN: true }),
          share: fc.double({ min: 1e-6, max: 0.8, noNaN: true }),
          pitch: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
          mount: fc.double({ min: 0, max: 1, noNaN: true }),
          λ: fc.double({ min: 0, max: 30, noNaN: true }),
          windSpeed: fc.double({ min: 1e-3, max: 100, noNaN: true }),
        }),
        ({ slenderness, share, λ, windSpeed, ...rest }) => {
          const rotor = { ...garden, ...rest, height: slenderness * rest.radius, chord: share * rest.radius }
          const turn = straightBladeTurn(rotor, λ, { windSpeed, kinematicViscosity: 1.5e-5 }, { tubes: 8 })
          for (const value of [
            turn.power,
            turn.thrust,
            turn.torque,
            ...turn.rotorTorque,
            ...turn.attackAngle,
          ])
            expect(Number.isFinite(value)).toBe(true)
          expect(turn.power).toBeLessThan(16 / 25)
        },
      ),
      { numRuns: 300 },
    )
  })
  test('what is no rotor is refused', () => {
    expect(() => straightBladeTurn({ ...garden, chord: 0 }, 3, air)).toThrow(RangeError)
    expect(() => straightBladeTurn({ ...garden, polars: [] }, 3, air)).toThrow(RangeError)
    expect(() => straightBladeTurn(garden, -1, air)).toThrow(RangeError)
    expect(() => straightBladeTurn(garden, 3, air, { tubes: 1 })).toThrow(RangeError)
  })
})
