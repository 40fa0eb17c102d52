/** Checks the estimated way of the heat, face by face. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { sampleMachine } from '../../test/sample-chain.ts'
import type { Machine } from '../machine/machine.ts'
import { conductorLayout } from './conductor-layout.ts'
import { statorCooling, thermalSpread } from './stator-cooling.ts'

const cooling = (machine: Machine) => statorCooling(machine, conductorLayout(machine))

const drumFields = {
  'rotor.arrangement': 'drum',
  'rotor.windingSide': 'outside',
  'rotor.pitchRadius_mm': 50,
  'rotor.magnet.length_mm': 60,
  'rotor.magnet.width_mm': 15,
  'rotor.magnet.thickness_mm': 5,
  'rotor.faceDistance_mm': undefined,
  'rotor.backIron': undefined,
  'rotor.cover_mm': 0.6,
  'site.ambient_degC': 20,
  'stator.support': 'epoxy',
  'stator.winding': {
    kind: 'serpentine',
    turns: 30,
    runLength_mm: 60,
    crownHeight_mm: 12,
    bundleWidth_mm: 8,
    bundleDepth_mm: 2.2,
    phases: [
      { offset_deg: 0, distance_mm: 3.6 },
      { offset_deg: 20, distance_mm: 5.9 },
      { offset_deg: 40, distance_mm: 8.2 },
    ],
  },
}
const drum = sampleMachine(drumFields)
const disc = sampleMachine({ 'rotor.arrangement': 'disc', 'rotor.faceDistance_mm': undefined })
const discs = sampleMachine()

describe('agrees: a drum by hand, air of 40 °C as printed (k 0.0266, ν 1.70e-5, α 2.35e-5, cengel2015 table A-15)', () => {
  // far face: cylinder of 123.6 mm, 40 K warmer: Ra = 9.81 · 40/313 · 0.1236³/(1.70e-5 · 2.35e-5)
  const Ra = ((9.81 * 40) / 313) * (0.1236 ** 3 / (1.7e-5 * 2.35e-5))
  const Nu = (0.6 + (0.387 * Ra ** (1 / 6)) / (1 + (0.559 / 0.726) ** (9 / 16)) ** (8 / 27)) ** 2
  const shine = (ε: number) => (ε * 5.67e-8 * (333.15 ** 4 - 293.15 ** 4)) / 40
  const still = (D: number) => (Nu * (D / 0.1236) ** 0.75 * 0.0266) / D + shine(0.9)
  const cover = 1e-3 / drum.stator.support.conductivity
  const far = (Math.PI * 0.1236 * 0.084) / (cover + 1 / still(0.1236))
  // near face, 2.5 mm before the magnets: 0.9 mm of air, then the drum and its other side
  const gap = 0.0266 / 0.0009 + shine(1 / (2 / 0.9 - 1))
  const near = (Math.PI * 0.11 * 0.084) / (cover + 1 / gap + 1 / still(0.11))
  check('K/W at rest', cooling(drum).resistance(0), (1 / (near + far)).toFixed(3), { relative: 0.03 })
})

describe('law: the ways of the heat', () => {
  test('a drum’s speed hardly counts below the first vortices; a disc’s does', () => {
    const of = cooling(drum)
    expect(of.resistance(60)).toBe(of.resistance(0))
    expect(of.resistance(600)).toBeLessThan(of.resistance(0))
    // even air stirred without end leaves the drum’s other side and the far face
    expect(of.resistance(1e4)).toBeGreaterThan(0.75 * of.resistance(0))
    for (const machine of [disc, discs]) {
      let last = cooling(machine).resistance(0)
      for (const speed of [5, 30, 60, 300]) {
        const here = cooling(machine).resistance(speed)
        expect(here).toBeLessThan(last)
        last = here
      }
    }
  })
  test('no vortices where the outer wall turns', () => {
    const inside = sampleMachine({ ...drumFields, 'rotor.windingSide': 'inside' })
    const of = cooling(inside)
    expect(of.resistance(600)).toBe(of.resistance(0))
  })
  test('two discs stir both faces, one disc only its own', () => {
    const one = cooling(disc)
    const two = cooling(discs)
    expect(two.resistance(100)).toBeLessThan(one.resistance(100))
    // the one face in still air gains nothing however fast the disc turns
    expect(one.resistance(1e6)).toBeGreaterThan(0)
    expect(one.resistance(100) / one.resistance(0)).toBeGreaterThan(two.resistance(100) / two.resistance(0))
  })
  test('steel opposite a single disc shuts the far face in', () => {
    const steel = { ...disc, rotor: { ...disc.rotor, opposite: disc.rotor.backIron, faceDistance: 0.018 } }
    expect(cooling(steel).resistance(0)).toBeGreaterThan(cooling(disc).resistance(0))
  })
  test('a gap drawn shut, a huge and a tiny machine stay finite', () => {
    for (const rotor of [
      { ...drum.rotor, cover: 0.02 },
      { ...drum.rotor, pitchRadius: 5 },
      { ...drum.rotor, pitchRadius: 0.004 },
    ])
      for (const speed of [0, 100, 1e5]) {
        const R = cooling({ ...drum, rotor }).resistance(speed)
        expect(Number.isFinite(R) && R > 0).toBe(true)
      }
  })
  test('a factor scales an estimate, a measured resistance stands', () => {
    const layout = conductorLayout(drum)
    expect(statorCooling(drum, layout, 1.5).resistance(30)).toBeCloseTo(
      1.5 * cooling(drum).resistance(30),
      12,
    )
    expect(cooling(drum).spread).toBe(thermalSpread)
    const measured = { ...drum, stator: { ...drum.stator, thermalResistance: 0.8 } }
    expect(statorCooling(measured, layout, 1.5).resistance(30)).toBe(0.8)
    expect(statorCooling(measured, layout, 1.5).spread).toBe(0)
  })
})
