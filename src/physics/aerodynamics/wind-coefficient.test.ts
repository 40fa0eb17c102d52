/** Checks of the rotor's coefficients in several winds. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { anyRatio, variedBladeRotor } from '../../../test/varied-blade-rotor.ts'
import { sectionNames, sections } from '../../data/airfoil/index.ts'
import { sd2030 } from '../../data/airfoil/sd2030.ts'
import { type BladeRotor, rotorCoefficients, rotorTorqueAtRest } from './blade-element.ts'
import { elementStates } from './element-state.ts'
import { betzLimit } from './induction.ts'
import { optimumRotor } from './optimum-rotor.ts'
import { type Polar, polarAtReynolds } from './polar.ts'
import { completedPolars } from './section-family.ts'
import { windCoefficientTables } from './wind-coefficient.ts'

const rad = Math.PI / 180
const rows = sd2030[0]!.rows
const thin: Polar = {
  angle: Float64Array.from(rows, ([α]) => α * rad),
  lift: Float64Array.from(rows, ([, lift]) => lift),
  drag: Float64Array.from(rows, ([, , drag]) => drag),
  reynolds: 100002,
}
const small = optimumRotor({
  bladeCount: 3,
  radius: 0.75,
  hubRadius: 0.1,
  tipSpeedRatio: 6,
  polar: thin,
  greatestChord: 0.15,
})
const anyRotor = variedBladeRotor(thin)

const family = sd2030.map(
  ({ rows, reynolds }): Polar => ({
    angle: Float64Array.from(rows, ([α]) => α * rad),
    lift: Float64Array.from(rows, ([, lift]) => lift),
    drag: Float64Array.from(rows, ([, , drag]) => drag),
    reynolds,
  }),
)
const ν = 1.46e-5

const withFamily: BladeRotor = { ...small, polars: completedPolars(family) }
const tableIn = (rotor: BladeRotor, windSpeeds: number[]) =>
  windCoefficientTables(rotor, [0, 3, 6, 9], { windSpeeds, kinematicViscosity: ν })

describe('agrees: rotorCoefficients with one polar for the whole blade', () => {
  test('between two polars the answer lies near that of the polar in between', () => {
    // at 12 m/s and λ = 6 the rings work at 140 000 … 200 000
    const states = elementStates(withFamily, { tipSpeedRatio: 6, windSpeed: 12, kinematicViscosity: ν })
    const mean = states.reynolds[10]!
    const one = rotorCoefficients({ ...small, polar: polarAtReynolds(withFamily.polars!, mean) }, 6)
    const own = tableIn(withFamily, [12])[0]!
    expect(Math.abs(own.power[2]! / one.power - 1)).toBeLessThan(0.01)
  })
  test('one polar given as a family is that polar; without a family the wind does not matter', () => {
    const [plain, same] = [small, { ...small, polars: [thin] }].map((rotor) => tableIn(rotor, [3, 9]))
    for (const tables of [plain!, same!])
      tables.forEach((table) => {
        table.tipSpeedRatio.forEach((λ, k) => {
          expect(table.torque[k]!).toBeCloseTo(rotorCoefficients(small, λ).torque, 10)
        })
      })
  })
})

describe('law: each ring at its own Reynolds number', () => {
  test('more wind, more power; held beyond both ends', () => {
    const [slow, slower, low, high, storm, hurricane] = tableIn(withFamily, [1, 0.5, 6, 12, 200, 400])
    expect(low!.power[2]!).toBeLessThan(high!.power[2]!)
    for (let k = 0; k < 4; k++) {
      expect(slower!.power[k]!).toBeCloseTo(slow!.power[k]!, 6)
      expect(hurricane!.torque[k]!).toBeCloseTo(storm!.torque[k]!, 6)
    }
  })
  test('the search about the neighbouring wind finds what a search from nothing finds', () => {
    for (const wind of [3, 12]) {
      const about = tableIn(withFamily, [6, wind])[1]!
      const alone = tableIn(withFamily, [wind])[0]!
      about.power.forEach((power, k) => {
        expect(Math.abs(power - alone.power[k]!)).toBeLessThan(1e-6)
      })
    }
  })
  test('a rotor at rest keeps no lift by turning; a stalled one that turns gains torque', () => {
    const delayed = { ...small, stallDelay: true }
    expect(rotorTorqueAtRest(delayed)).toBe(rotorTorqueAtRest(small))
    expect(rotorCoefficients(delayed, 2).torque).toBeGreaterThan(rotorCoefficients(small, 2).torque)
  })
  test('any rotor of any section, stall delayed, in any wind: finite, never above Betz', () => {
    const anyFamily = fc.constantFrom(...sectionNames).map((name) =>
      completedPolars(
        sections[name].map(({ rows, reynolds }) => ({
          angle: Float64Array.from(rows, ([α]) => α * rad),
          lift: Float64Array.from(rows, ([, lift]) => lift),
          drag: Float64Array.from(rows, ([, , drag]) => drag),
          reynolds,
        })),
      ),
    )
    fc.assert(
      fc.property(
        anyRotor,
        anyFamily,
        anyRatio,
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (rotor, polars, λ, windSpeed) => {
          const stream = { windSpeed, kinematicViscosity: ν }
          const whole = { ...rotor, polars, polar: polars[0]!, stallDelay: true }
          const c = rotorCoefficients(whole, λ, { elements: 8, stream })
          if (!Number.isFinite(c.power + c.thrust + c.torque)) expect.fail(JSON.stringify(c))
          expect(c.power).toBeLessThanOrEqual(betzLimit)
        },
      ),
      { numRuns: 200 },
    )
  })
})
