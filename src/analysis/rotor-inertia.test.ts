/** Checks of the inertia of all that turns. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { rotorCurve } from './blade-rotor.ts'
import { rotorInertia } from './rotor-inertia.ts'

const inertiaOf = (change: (document: ReturnType<typeof fixedDocument>) => void = () => {}) => {
  const document = fixedDocument('twoDiscs')
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  const machine = resolveDesign(parsed.design)
  return rotorInertia(machine, rotorCurve(machine))
}

describe('agrees: two discs of steel and 24 magnets by hand', () => {
  const { parts, inertia } = inertiaOf()
  const part = (name: string) => parts.find((one) => one.name === name)!
  test('steel: 2 · 7850 kg/m³ · π r² · 8 mm, r = 120 mm, and half of m r²', () => {
    const mass = 2 * 7850 * Math.PI * 0.12 ** 2 * 0.008
    expect(part('steel discs').mass).toBeCloseTo(mass, 6)
    expect(part('steel discs').inertia).toBeCloseTo((mass * 0.12 ** 2) / 2, 8)
  })
  test('magnets: 24 of 40 × 25 × 10 mm at 100 mm', () => {
    const { mass, inertia: J } = part('magnets')
    expect(J / mass).toBeCloseTo(0.1 ** 2 + (0.04 ** 2 + 0.025 ** 2) / 12, 8)
  })
  test('the parts make the whole, and the blades most of it', () => {
    expect(parts.reduce((sum, one) => sum + one.inertia, 0)).toBeCloseTo(inertia, 12)
    expect(part('blades').inertia).toBeGreaterThan(0.5 * inertia)
  })
})

describe('law: inertia', () => {
  test('of a measured rotor is what was measured', () => {
    const measured = inertiaOf((document) => {
      document.shaft.inertia_kg_m2 = 0.4
    })
    expect(measured).toEqual({ inertia: 0.4, spread: 0, parts: [] })
  })
  test('of blades of nearly like shape grows nearly with the fifth power of their size', () => {
    const bladesOf = (diameter: number) =>
      inertiaOf((document) => {
        document.blades.diameter_m = diameter
        document.blades.hubDiameter_mm = 140 * diameter
      }).parts.find(({ name }) => name === 'blades')!.inertia
    // small blades work at lower Reynolds numbers and are drawn a little wider
    const power = Math.log2(bladesOf(4) / bladesOf(2))
    expect(power).toBeGreaterThan(4.5)
    expect(power).toBeLessThan(5.6)
  })
  test('of a rotor known by its power alone is near that of its computed blades', () => {
    const shaped = inertiaOf().parts[0]!
    const guessed = inertiaOf((document) => {
      const shapedToo = parseDesign(document)
      if (!shapedToo.ok) throw new Error(JSON.stringify(shapedToo.faults))
      const { best } = rotorCurve(resolveDesign(shapedToo.design))
      document.blades = {
        kind: 'table',
        diameter_m: 1.9,
        bladeCount: 3,
        points: [0, 0.5, 1, 1.6].map((share, k) => ({
          tipSpeedRatio: share * best.tipSpeedRatio,
          powerCoefficient: [0, 0.3, best.power, 0][k],
        })),
      }
    }).parts[0]!
    expect(guessed.inertia / shaped.inertia).toBeGreaterThan(0.4)
    expect(guessed.inertia / shaped.inertia).toBeLessThan(2.5)
  })
})
