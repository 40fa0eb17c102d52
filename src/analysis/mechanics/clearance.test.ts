/** Checks of the air that is left between rotor and stator. */
import { describe, expect, test } from 'vitest'
import { sampleChain, sampleMachine } from '../../../test/sample-chain.ts'
import { rotorField } from '../air-gap-field.ts'
import { clearances, tightestSide } from './clearance.ts'
import { cornerRise, drawnGap } from './drawn-gap.ts'

const chain = (fields: Readonly<Record<string, unknown>> = {}) =>
  sampleChain(fields, ({ machine }) => ({ field: rotorField(machine, 293.15) }))
const loss = (fields: Readonly<Record<string, unknown>>, name: string) =>
  clearances(chain(fields))[0]!.losses.find((one) => one.name.includes(name))

describe('agrees: sums and Pythagoras by hand', () => {
  test('corners of flat blocks on a drum stand out', () => {
    const rotor = { ...sampleMachine().rotor, arrangement: 'drum' as const, pitchRadius: 0.05 }
    const magnet = { ...rotor.magnet, thickness: 0.005, width: 0.015 }
    expect(cornerRise({ rotor: { ...rotor, magnet } })).toBeCloseTo(Math.hypot(0.0525, 0.0075) - 0.0525, 12)
    expect(cornerRise({ rotor: { ...rotor, magnet, windingSide: 'inside' } })).toBe(0)
    expect(cornerRise(sampleMachine())).toBe(0)
  })
  test('the drawing: 9 mm to the middle of a bundle 12 mm deep, 18 mm between faces', () => {
    const { inner, outer } = drawnGap(sampleMachine())
    expect(inner).toBeCloseTo(3e-3, 9)
    expect(outer).toBeCloseTo(3e-3, 9)
  })
  test('worst and likely', () => {
    const entered = { print_mm: 0.3, bearing_mm: 0.1, warp_mm: 0.3, deflection_mm: 0.2 }
    const [side] = clearances(sampleChain({ 'bench.clearanceLosses': entered }))
    const { losses, clearance, drawn } = side!
    const closing = losses.reduce((sum, one) => sum + one.closing, 0)
    const half = losses.reduce((sum, one) => sum + one.halfWidth, 0)
    expect(clearance.worst).toBeCloseTo(drawn - closing - half, 12)
    expect(clearance.likely).toBeCloseTo(
      drawn - closing - Math.hypot(...losses.map((one) => one.halfWidth)),
      12,
    )
    expect(losses.filter(({ known }) => known === 'measured')).toHaveLength(4)
  })
})

describe('law: what was measured stands in place of what is computed or guessed', () => {
  test('bending', () => {
    expect(loss({}, 'bending')).toMatchObject({ known: 'computed' })
    expect(loss({}, 'bending')!.closing).toBeGreaterThan(1e-6)
    const entered = loss({ 'bench.clearanceLosses.deflection_mm': 0.25 }, 'bending')!
    expect(entered).toMatchObject({ known: 'measured', closing: 0.25e-3, halfWidth: 0 })
  })
  test('play: of the bench before that of the shaft before a guess', () => {
    const bearings = {
      spacing_mm: 80,
      bladeOverhang_mm: 90,
      magnetOverhang_mm: 30,
      axialPlay_mm: 0.22,
    }
    expect(loss({}, 'play')).toMatchObject({ known: 'guessed', halfWidth: 0.1e-3 })
    expect(loss({ 'shaft.bearings': bearings }, 'play')!.halfWidth).toBeCloseTo(0.22e-3, 12)
    const both = { 'shaft.bearings': bearings, 'bench.clearanceLosses.bearing_mm': 0.05 }
    expect(loss(both, 'play')!.halfWidth).toBeCloseTo(0.05e-3, 12)
  })
  test('a hotter winding and a plastic that drinks leave less', () => {
    const heat = { winding: 400, rotor: 285, bearings: 285, how: 'given' }
    const worst = (fields: Readonly<Record<string, unknown>>, warm?: typeof heat) =>
      tightestSide(clearances(chain(fields), warm)).clearance.worst
    expect(worst({}, heat)).toBeLessThan(worst({}, { ...heat, winding: 300 }))
    expect(worst({ 'stator.support': 'nylon' }, heat)).toBeLessThan(worst({ 'stator.support': 'PC' }, heat))
  })
  test('discs that snap leave nothing', () => {
    const weak = {
      'rotor.backIron': { kind: 'none' },
      'rotor.carrier': { material: 'PLA', thickness_mm: 3 },
    }
    expect(tightestSide(clearances(chain(weak))).clearance.worst).toBeLessThan(0)
  })
})
