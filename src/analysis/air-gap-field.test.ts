/** Checks of the field of a whole machine, from its document, against finite elements and by symmetry. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { discHeights, fieldAt, gapProfile, levelAbove, rotorField } from './air-gap-field.ts'

interface FiniteElementRun {
  readonly arc: { readonly angle_rad: readonly number[]; readonly Bz_T: readonly number[] }
}

const fixture = JSON.parse(
  readFileSync(new URL('../../test/reference/magnetics/disc-sector.json', import.meta.url), 'utf8'),
) as { readonly runs: Readonly<Record<string, FiniteElementRun>> }

/** The fixture's machine as a document: twelve blocks 40 × 20 × 10 mm a disc, J 1.28 T, 16 mm between faces. */
function fixtureMachine(change: (rotor: ReturnType<typeof exampleDocument>) => void) {
  const document = exampleDocument('boathouse-two-disc')
  Object.assign(document.rotor, { pitchRadius_mm: 90, faceDistance_mm: 16, cover_mm: 0 })
  document.rotor.magnet = {
    shape: 'block',
    length_mm: 40,
    width_mm: 20,
    thickness_mm: 10,
    polarization_T: 1.28,
  }
  Object.assign(document.stator.winding, { distance_mm: 8, bundleDepth_mm: 10 })
  change(document.rotor)
  return resolveDesign(designOf(document))
}

const machines = {
  'two-105-fine': fixtureMachine(() => {}),
  'two-100-fine': fixtureMachine((rotor) => {
    rotor.magnet.recoilPermeability = 1
  }),
  'plain-105-fine': fixtureMachine((rotor) => {
    rotor.arrangement = 'disc'
    rotor.opposite = { kind: 'steel', faceDistance_mm: rotor.faceDistance_mm }
    delete rotor.faceDistance_mm
  }),
  'single-105-fine': fixtureMachine((rotor) => {
    rotor.arrangement = 'disc'
    delete rotor.faceDistance_mm
  }),
}

describe('agrees: axial field over the pole at mid-gap, three-dimensional finite elements', () => {
  for (const [run, machine] of Object.entries(machines)) {
    const { angle_rad, Bz_T } = fixture.runs[run]!.arc
    // the fixture tells where it sampled: the angle nearest the pole's middle
    const at = angle_rad.reduce(
      (best, angle, k) => (Math.abs(angle) < Math.abs(angle_rad[best]!) ? k : best),
      0,
    )
    const θ = angle_rad[at]!
    const field = rotorField(machine)
    const z = levelAbove(machine, 0.008)
    const B = fieldAt(field, Float64Array.of(0.09 * Math.cos(θ), 0.09 * Math.sin(θ), z))
    check(`${run}, T`, Math.abs(B[2]!), Math.abs(Bz_T[at]!).toPrecision(5), { relative: 0.01 })
  }
})

describe('law: where things stand', () => {
  test('heights of a two-disc machine add up from the lower plate', () => {
    const machine = machines['two-105-fine']
    const { face, upperFace, upperPlane } = discHeights(machine)
    expect(face).toBeCloseTo(0.01, 12)
    expect(upperFace).toBeCloseTo(0.026, 12)
    expect(upperPlane).toBeCloseTo(0.036, 12)
    expect(levelAbove(machine, 0.008)).toBeCloseTo(0.018, 12)
  })
  test('a winding inside a drum lies as far inside the faces as one outside lies outside', () => {
    const document = exampleDocument('hen-house-drum')
    const outside = resolveDesign(designOf(document))
    document.rotor.windingSide = 'inside'
    const inside = resolveDesign(designOf(document))
    const radius = outside.rotor.pitchRadius
    expect(levelAbove(outside, 0.004) - radius).toBeCloseTo(radius - levelAbove(inside, 0.004), 12)
  })
  test('north faces the winding: the field over the first magnet is positive outward, or inward for one inside', () => {
    const document = exampleDocument('hen-house-drum')
    const outside = resolveDesign(designOf(document))
    expect(gapProfile(outside, rotorField(outside), 0.004).poleCentre).toBeGreaterThan(0)
    document.rotor.windingSide = 'inside'
    const inside = resolveDesign(designOf(document))
    expect(gapProfile(inside, rotorField(inside), 0.004).poleCentre).toBeLessThan(0)
  })
})

describe('law: temperature and iron', () => {
  test('magnets lose their reversible share, and the field follows', () => {
    const document = exampleDocument('boathouse-two-disc')
    const machine = resolveDesign(designOf(document))
    const cold = rotorField(machine, 293.15)
    const warm = rotorField(machine, 333.15)
    const share = 1 + 40 * machine.rotor.magnet.temperatureCoefficient
    expect(warm.remanence / cold.remanence).toBeCloseTo(share, 12)
    expect(warm.workingPoint.polarization / cold.workingPoint.polarization).toBeCloseTo(share, 9)
  })
})
