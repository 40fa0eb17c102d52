/** Checks of what holds a magnet. */
import { describe, expect, test } from 'vitest'
import { sampleMachine } from '../../../test/sample-chain.ts'
import { magnetHold } from './magnet-hold.ts'

const machine = (retention: object, more: Readonly<Record<string, unknown>> = {}) =>
  sampleMachine({ 'rotor.retention': retention, ...more })
const pocket = (wall_mm: number, cover_mm = 0) =>
  machine({ kind: 'pocket', wall_mm, material: 'PC' }, { 'rotor.cover_mm': cover_mm })

describe('agrees: a band by the balance of one sector', () => {
  test('twelve magnets of 46 × 30 × 10 mm at 120 mm in a band of 3 mm', () => {
    const own = machine({ kind: 'band', wall_mm: 3, material: 'PC' })
    const { allowableStress, density } = own.rotor.retention
    // hoop tension T carries 2 sin(π/n) T outward on each of n magnets; between many of them 2π/n
    const still = magnetHold(own, 0).hold
    expect(still / (((2 * Math.PI) / 12) * allowableStress * 0.003 * 0.01)).toBeCloseTo(1, 9)
    expect(still).toBeGreaterThan(2 * Math.sin(Math.PI / 12) * allowableStress * 0.003 * 0.01)
    const speed = 200
    const lost = density * (speed * (0.143 + 0.0015)) ** 2
    expect(magnetHold(own, speed).hold / still).toBeCloseTo(1 - lost / allowableStress, 9)
  })
})

describe('law: walls', () => {
  test('bending holds with the square of the thickness, shear with the thickness; the weaker counts', () => {
    const [thin, thick] = [magnetHold(pocket(2), 0), magnetHold(pocket(4), 0)]
    const of = ({ ways }: typeof thin, name: string) => ways.find(({ way }) => way === name)!.hold
    expect(of(thick, 'wall bending') / of(thin, 'wall bending')).toBeCloseTo(4, 6)
    expect(of(thick, 'wall shear') / of(thin, 'wall shear')).toBeCloseTo(2, 9)
    for (const { hold, ways } of [thin, thick]) expect(hold).toBe(Math.min(...ways.map((one) => one.hold)))
  })
  test('a cover that ties the top of a pocket on a disc makes it hold more', () =>
    expect(magnetHold(pocket(3, 1), 0).hold).toBeGreaterThan(2 * magnetHold(pocket(3), 0).hold))
  test('glue counts for nothing, a test counts alone', () => {
    expect(magnetHold(machine({ kind: 'glue' }), 0)).toMatchObject({ hold: 0, way: undefined })
    expect(magnetHold(machine({ kind: 'pocket', wall_mm: 2, hold_N: 812 }), 0)).toMatchObject({
      hold: 812,
      way: 'a test',
    })
  })
  test('on a drum no more of a wall counts than fits before the winding', () => {
    const drum = (wall: number) => {
      const own = pocket(3)
      const rotor = {
        ...own.rotor,
        arrangement: 'drum' as const,
        retention: { ...own.rotor.retention, wall },
      }
      return magnetHold({ ...own, rotor }, 0)
    }
    // 9 mm to the middle of a bundle 12 mm deep
    expect(drum(0.003).fits).toBe(true)
    expect(drum(0.02)).toMatchObject({ fits: false, thickness: expect.closeTo(0.003, 12) })
    expect(drum(0.02).hold).toBeCloseTo(drum(0.003).hold, 6)
  })
})
