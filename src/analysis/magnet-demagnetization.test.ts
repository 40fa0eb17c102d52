/** Checks how near the magnets of whole machines come to their knee. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { sampleMachine } from '../../test/sample-chain.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { normalCoercivity } from '../physics/magnetics/demagnetization.ts'
import { magnetAxis, magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { magnetDemagnetization } from './magnet-demagnetization.ts'
import { magnetLoad } from './magnet-load.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { woundMachine } from './winding.ts'

const μ0 = 4e-7 * Math.PI

const range = { coldest: 253.15, hottest: 313.15, hottestAtWork: 333.15 }

function partsOf(fields: Readonly<Record<string, unknown>> = {}, speed = 60) {
  const machine = sampleMachine(fields)
  const field = rotorField(machine, machine.site.ambient)
  const layout = conductorLayout(machine)
  const voltage = openCircuitVoltage(machine, field, layout, woundMachine(machine, layout))
  return { machine, field, voltage, magnetLoad: magnetLoad(machine, field, layout), runaway: { speed } }
}

const found = (fields: Readonly<Record<string, unknown>> = {}, temperatures = range, speed = 60) =>
  magnetDemagnetization(partsOf(fields, speed), temperatures)!

const ferrite = { 'rotor.magnet.grade': 'Y30', 'rotor.magnet.recoilPermeability': 1.1 }

describe('source: ferrite-sheet-a and ferrite-sheet-b — Hcb from the row’s Br, Hcj and squareness', () => {
  // The squareness was taken from these very rows and rounded to a hundredth: the check is of the table.
  for (const grade of magnetGrades.filter(({ family }) => family === 'ferrite'))
    check(
      grade.name,
      () =>
        normalCoercivity({
          remanence: grade.remanence_T,
          recoilPermeability: grade.recoilPermeability,
          intrinsicCoercivity: 1000 * grade.intrinsicCoercivity_kA_per_m,
          squareness: grade.squareness,
        }) / 1000,
      String(grade.coercivity_kA_per_m),
      { relative: 0.01 },
    )
})

describe('agrees: working point of the circuit', () => {
  for (const [name, fields] of [
    ['two discs on iron', {}],
    ['two discs without iron', { 'rotor.backIron': { kind: 'none' } }],
    ['ferrite', ferrite],
  ] as const)
    test(`${name}: mean J and temperature scaling`, () => {
      const parts = partsOf(fields)
      const { ambient } = parts.machine.site
      const at = magnetDemagnetization(parts, { coldest: ambient, hottest: ambient, hottestAtWork: ambient })!
      const { polarization } = parts.field.workingPoint
      expect(Math.abs(at.rest.cold.polarization / polarization - 1)).toBeLessThan(2e-3)
    })
})

describe('agrees: the field close under the pole faces, densely', () => {
  test('the few points reach within 4 % of the densest grid’s worst', () => {
    const parts = partsOf()
    const [magnet] = parts.field.magnets
    if (magnet === undefined || !('size' in magnet)) throw new Error('a block was expected')
    const { ambient } = parts.machine.site
    const at = magnetDemagnetization(parts, { coldest: ambient, hottest: ambient, hottestAtWork: ambient })!
    const points: number[] = []
    for (let i = -20; i <= 20; i++)
      for (let j = -20; j <= 20; j++)
        for (const z of [-0.9995, 0.9995])
          for (let axis = 0; axis < 3; axis++)
            points.push(
              magnet.centre[axis]! +
                0.4999 *
                  ((i / 20) * magnet.size[0] * magnet.frame[0][axis]! +
                    (j / 20) * magnet.size[1] * magnet.frame[1][axis]! +
                    z * magnet.size[2] * magnet.frame[2][axis]!),
            )
    const B = magnetFluxDensity(parts.field.sources, Float64Array.from(points))
    const [x, y, z] = magnetAxis(magnet)
    let worst = 0
    for (let i = 0; i < B.length; i += 3)
      worst = Math.min(worst, (B[i]! * x + B[i + 1]! * y + B[i + 2]! * z - magnet.polarization) / μ0)
    expect(at.rest.cold.worstField / worst).toBeGreaterThan(0.96)
    expect(at.rest.cold.worstField / worst).toBeLessThan(1.01)
  })
})

describe('law: neodymium', () => {
  const usual = found()
  test('cool and at rest nothing is lost', () => {
    expect(usual.rest.cold.irreversibleLoss).toBeLessThan(1e-6)
    expect(usual.rest.cold.kneeRatio).toBeLessThan(0.6)
    expect(usual.limit.side).toBe('hot')
  })
  test('heat and currents each bring the knee nearer, the grade’s low end is nearer still', () => {
    expect(usual.rest.hot.kneeRatio).toBeGreaterThan(usual.rest.cold.kneeRatio)
    expect(usual.short.cold.kneeRatio).toBeGreaterThan(usual.rest.cold.kneeRatio)
    expect(usual.limit.short).toBeLessThan(usual.limit.rest)
    for (const each of [usual.rest.cold, usual.rest.hot, usual.short.cold, usual.short.hot])
      expect(each.greatestRatio).toBeGreaterThan(each.kneeRatio)
    expect(usual.armature.worstField).toBeLessThan(0)
  })
  test('at the limit itself the worst point stands at the knee', () => {
    const at = found({}, { ...range, hottest: usual.limit.rest, hottestAtWork: usual.limit.short })
    // the limit is told from the reversible line; near the knee the magnet gives way a little and eases its field
    for (const { kneeRatio } of [at.rest.hot, at.short.hot]) {
      expect(kneeRatio).toBeLessThan(1.0001)
      expect(kneeRatio).toBeGreaterThan(0.98)
    }
  })
  test('a grade for heat and thicker magnets stand more', () => {
    expect(found({ 'rotor.magnet.grade': 'N42SH' }).limit.rest).toBeGreaterThan(usual.limit.rest + 30)
    expect(found({ 'rotor.magnet.thickness_mm': 15 }).limit.rest).toBeGreaterThan(usual.limit.rest)
    expect(found({ 'rotor.backIron': { kind: 'none' } }).limit.rest).toBeLessThan(usual.limit.rest)
  })
  test('without turning the short is no load; faster is not milder', () => {
    const still = found({}, range, 0)
    expect(still.short.cold).toEqual(still.rest.cold)
    expect(still.armature).toEqual({ speed: 0, steadyCurrent: 0, worstField: 0 })
    expect(found({}, range, 200).short.cold.kneeRatio).toBeGreaterThan(usual.short.cold.kneeRatio)
  })
  test('far past the knee the loss is large and finite', () => {
    const burnt = found({}, { ...range, hottest: 440, hottestAtWork: 2000 })
    expect(burnt.rest.hot.irreversibleLoss).toBeGreaterThan(0.2)
    for (const value of Object.values(burnt.short.hot)) expect(Number.isFinite(value)).toBe(true)
  })
})

describe('law: ferrite', () => {
  test('the cold is the danger', () => {
    const cold = found(ferrite, { ...range, coldest: 233.15 })
    expect(cold.limit.side).toBe('cold')
    expect(cold.rest.cold.kneeRatio).toBeGreaterThan(cold.rest.hot.kneeRatio)
    expect(cold.limit.short).toBeGreaterThan(cold.limit.rest)
  })
})

describe('law: machines without an answer, and odd ones', () => {
  test('without a grade nothing is known of the knee', () => {
    const parts = partsOf({ 'rotor.magnet.grade': undefined, 'rotor.magnet.polarization_T': 1.3 })
    expect(magnetDemagnetization(parts, range)).toBeUndefined()
  })
  test('poles that do not alternate bear more', () => {
    const two = found({ 'rotor.poleSequence': 'NNSSNNSSNNSS' })
    expect(two.rest.cold.kneeRatio).toBeGreaterThan(found().rest.cold.kneeRatio)
  })
  test('a winding off the middle is told by the nearer disc', () => {
    const near = found({ 'stator.winding.distance_mm': 7.5, 'stator.winding.bundleDepth_mm': 10 })
    const far = found({ 'stator.winding.distance_mm': 10.5, 'stator.winding.bundleDepth_mm': 10 })
    expect(far.armature.worstField / near.armature.worstField).toBeCloseTo(1, 2)
  })
})
