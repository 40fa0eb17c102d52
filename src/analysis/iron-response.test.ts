/** Checks that steel enters the chain's field and linkages as the laws of iron say. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { harmonicAmplitude } from '../numerics/fourier.ts'
import { gapProfile, rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { rotorLinkage } from './flux-linkage.ts'

type Change = (document: ReturnType<typeof exampleDocument>) => void

function caseOf(name: string, change: Change = () => {}) {
  const document = exampleDocument(name)
  change(document)
  const machine = resolveDesign(designOf(document))
  const field = rotorField(machine)
  const shape = conductorLayout(machine).shapes[0]!
  const gap = gapProfile(machine, field, shape.distance)
  const { flux, base } = rotorLinkage(machine, field, shape, 9)
  return { machine, field, gap, linkage: harmonicAmplitude(flux, machine.rotor.polePairs / base) }
}

const discs =
  (thickness_mm: number, rest: object = {}): Change =>
  (document) => {
    document.rotor.backIron = { kind: 'steel', thickness_mm, ...rest }
  }

describe('law: plates of a two-disc machine', () => {
  const thick = caseOf('boathouse-two-disc', discs(30))
  test('thick plates are the ideal ones', () => {
    expect(thick.field.iron!.strength).toBeGreaterThan(0.995)
    expect(thick.field.iron!.strength).toBeLessThanOrEqual(1.0005)
  })
  test('thinner plates never raise field or linkage, and carry denser flux', () => {
    let last = thick
    for (const thickness of [10, 6, 4, 2.5, 1.5]) {
      const next = caseOf('boathouse-two-disc', discs(thickness))
      expect(next.gap.fundamental).toBeLessThanOrEqual(last.gap.fundamental * (1 + 1e-6))
      expect(next.linkage).toBeLessThanOrEqual(last.linkage * (1 + 1e-6))
      const [now, before] = [next, last].map(({ field }) => field.iron!.steel[0]!)
      expect(now!.fluxDensity).toBeGreaterThan(before!.fluxDensity)
      expect(now!.backFlux).toBeGreaterThanOrEqual(before!.backFlux)
      last = next
    }
    expect(last.gap.fundamental / thick.gap.fundamental).toBeLessThan(0.9)
    expect(last.field.iron!.steel[0]!.pastKnee).toBe(true)
  })
  test('field and linkage fall together', () => {
    const thin = caseOf('boathouse-two-disc', discs(2))
    const byField = thin.gap.fundamental / thick.gap.fundamental
    expect(thin.linkage / thick.linkage / byField).toBeCloseTo(1, 2)
  })
  test('without steel there is no steel to tell of', () => {
    const plain = caseOf('boathouse-two-disc', (document) => {
      document.rotor.backIron = { kind: 'none' }
    })
    expect(plain.field.iron).toBeUndefined()
    expect(plain.gap.fundamental).toBeLessThan(thick.gap.fundamental)
  })
})

describe('law: one disc with a plain plate', () => {
  const one =
    (backIron: object, opposite: object): Change =>
    (document) => {
      const { faceDistance_mm, ...rotor } = document.rotor
      document.rotor = {
        ...rotor,
        arrangement: 'disc',
        backIron,
        opposite: { faceDistance_mm, ...opposite },
      }
    }
  const steel = (thickness_mm: number) => ({ kind: 'steel', thickness_mm })
  test('a thin plate opposite saturates before a thick one behind', () => {
    const { steel: states } = caseOf('boathouse-two-disc', one(steel(20), steel(1.5))).field.iron!
    expect(states.map(({ place }) => place)).toEqual(['behind', 'opposite'])
    expect(states[1]!.fluxDensity).toBeGreaterThan(states[0]!.fluxDensity)
  })
  test('a plate opposite alone, seen from below: thick enough it is ideal', () => {
    const thick = caseOf('boathouse-two-disc', one({ kind: 'none' }, steel(20)))
    expect(thick.field.iron!.strength).toBeGreaterThan(0.99)
    expect(thick.field.iron!.steel.map(({ place }) => place)).toEqual(['opposite'])
    const thin = caseOf('boathouse-two-disc', one({ kind: 'none' }, steel(0.8)))
    expect(thin.field.iron!.strength).toBeLessThan(thick.field.iron!.strength)
  })
})

describe('law: steel round a drum', () => {
  const open = caseOf('hen-house-drum')
  const ring =
    (thickness_mm: number): Change =>
    (document) => {
      document.rotor.backIron = { kind: 'steel', thickness_mm }
    }
  const sleeve =
    (distance_mm: number): Change =>
    (document) => {
      document.rotor.sleeve = { distance_mm, thickness_mm: 3, motion: 'turns' }
    }
  test('a ring behind the magnets raises field and volts alike; a thin one raises them less', () => {
    const thick = caseOf('hen-house-drum', ring(8))
    const thin = caseOf('hen-house-drum', ring(1))
    expect(thick.gap.fundamental).toBeGreaterThan(1.1 * open.gap.fundamental)
    expect(thin.gap.fundamental).toBeLessThan(thick.gap.fundamental)
    expect(thin.gap.fundamental).toBeGreaterThan(open.gap.fundamental)
    const [byField, byLinkage] = [thick.gap.fundamental / open.gap.fundamental, thick.linkage / open.linkage]
    expect(byLinkage / byField).toBeCloseTo(1, 1)
    expect(thick.field.workingPoint.polarization).toBeGreaterThan(open.field.workingPoint.polarization)
  })
  test('a sleeve beyond the winding raises it, a farther one less', () => {
    const near = caseOf('hen-house-drum', sleeve(14))
    const far = caseOf('hen-house-drum', sleeve(40))
    expect(near.linkage).toBeGreaterThan(1.03 * open.linkage)
    expect(far.linkage).toBeLessThan(near.linkage)
    expect(far.linkage).toBeGreaterThanOrEqual(open.linkage * 0.999)
  })
})
