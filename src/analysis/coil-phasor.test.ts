/** Checks of the coils' phasors: they add up to the volts of their phase, and stand where the wire of the plan says. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../../test/example.ts'
import { coilPhasors } from './coil-phasor.ts'
import { type Chain, computeDesign } from './compute.ts'
import { voltageHarmonics } from './voltage-harmonics.ts'
import { windingPlan } from './winding-plan.ts'

/** Examples, and windings that none of them has. */
const chains: Record<string, () => Chain> = {
  ...Object.fromEntries(exampleNames.map((name) => [name, () => exampleChain(name)])),
  'parallel groups': () => {
    const document = exampleDocument('garden-vertical')
    document.stator.winding.parallelGroups = 2
    return computeDesign(designOf(document))
  },
  'coils and a phase reversed': () => {
    const document = exampleDocument('boathouse-two-disc')
    Object.assign(document.stator.winding, { reversedCoils: [2, 4], reversedPhases: [3] })
    return computeDesign(designOf(document))
  },
  'two phases swapped': () => {
    const document = exampleDocument('hen-house-drum')
    document.defects = [{ kind: 'swapped phases', phase: 1, other: 2 }]
    return computeDesign(designOf(document))
  },
}
const made = new Map<string, Chain>()
const chainNamed = (name: string): Chain => {
  const known = made.get(name) ?? chains[name]!()
  made.set(name, known)
  return known
}

describe('law: the phasors of the coils add up to the volts of their phase', () => {
  for (const name of Object.keys(chains))
    test(name, () => {
      const chain = chainNamed(name)
      const { phases } = coilPhasors(chain)
      expect(phases.flatMap(({ coils }) => coils)).toHaveLength(chain.layout.coils.length)
      phases.forEach(({ coils, size, lead, inStep }, phase) => {
        const sum = (part: (angle: number) => number) =>
          coils.reduce((total, coil) => total + coil.size * part(coil.lead), 0)
        const whole = coils.reduce((total, coil) => total + coil.size, 0)
        expect(sum(Math.cos) / whole).toBeCloseTo((size * Math.cos(lead)) / whole, 9)
        expect(sum(Math.sin) / whole).toBeCloseTo((size * Math.sin(lead)) / whole, 9)
        expect(size / whole).toBeCloseTo(chain.voltage.phases[phase]!.fundamental / whole, 9)
        expect(inStep).toBeLessThanOrEqual(1 + 1e-12)
      })
    })
})

describe('agrees: the sides of the drawn coils tell the phase of the computed linkage', () => {
  for (const name of Object.keys(chains))
    test(name, () => {
      const chain = chainNamed(name)
      const { coils, polePairs } = windingPlan(chain)
      const { coils: computed, order, base } = chain.voltage
      const drawn = coils.map(({ sides }) => {
        const part = (of: (angle: number) => number) =>
          sides.reduce((sum, { direction, angle }) => sum + direction * of(polePairs * angle), 0)
        return Math.atan2(part(Math.sin), part(Math.cos))
      })
      expect(order * base).toBe(polePairs)
      coils.forEach(({ sense, phase, number }, k) => {
        expect(sense).toBe(computed[k]!.coil.sense)
        expect(phase).toBe(computed[k]!.coil.phase)
        const off = drawn[k]! - drawn[0]! - computed[k]!.phaseAngle
        expect(Math.cos(off), `coil ${number}`).toBeGreaterThan(1 - 1e-4)
      })
    })
})

describe('law: a coil turned round works against its phase', () => {
  test('one of three, and by so much the phase is less', () => {
    const document = exampleDocument('boathouse-two-disc')
    document.stator.winding.reversedCoils = [4]
    const turned = coilPhasors(computeDesign(designOf(document))).phases[0]!
    const sound = coilPhasors(exampleChain('boathouse-two-disc')).phases[0]!
    expect(turned.coils.filter(({ against }) => against).map(({ number }) => number)).toEqual([4])
    expect(turned.size / sound.size).toBeCloseTo(1 / 3, 6)
    expect(turned.inStep).toBeCloseTo(1 / 3, 6)
  })
  test('coils that cancel have no direction', () => {
    const phases = coilPhasors(exampleChain('many-faults')).phases
    expect(phases[1]).toMatchObject({ size: 0, inStep: 0, lead: 0 })
    expect(phases[1]!.coils.some(({ against }) => against)).toBe(false)
  })
})

describe('law: what three alike phases have in common does not show between the lines', () => {
  test('orders divisible by three cancel, all others keep their share', () => {
    const { rows } = voltageHarmonics(exampleChain('boathouse-two-disc'))
    const third = rows.find(({ order }) => order === 3)!
    expect(third.phaseShare).toBeGreaterThan(0.02)
    expect(third.cancels).toBe(true)
    for (const { order, phaseShare, lineShare, cancels } of rows)
      if (order % 3 !== 0) {
        expect(cancels).toBe(false)
        expect(lineShare).toBeCloseTo(phaseShare, 6)
      } else expect(lineShare).toBeLessThan(1e-6)
  })
  test('unlike phases leave some of it', () => {
    const { rows } = voltageHarmonics(exampleChain('hen-house-drum'))
    expect(rows.find(({ order }) => order === 3)).toMatchObject({ cancels: false })
  })
  test('phases that are not joined have no lines', () => {
    const document = exampleDocument('boathouse-two-disc')
    document.stator.connection = 'separate'
    const { rows, lineDistortion } = voltageHarmonics(computeDesign(designOf(document)))
    expect(lineDistortion).toBeUndefined()
    expect(rows.every(({ line, cancels }) => line === undefined && !cancels)).toBe(true)
  })
})

describe('agrees: distortion by orders and by rms', () => {
  for (const name of exampleNames)
    test(name, () => {
      const chain = exampleChain(name)
      const { phaseDistortion } = voltageHarmonics(chain)
      const { rms, fundamental, emf } = chain.voltage.phases[0]!
      const mean = emf.cos[0]!
      const expected = Math.sqrt(
        Math.max(0, rms ** 2 - mean ** 2 - fundamental ** 2 / 2) / (fundamental ** 2 / 2),
      )
      expect(phaseDistortion).toBeCloseTo(expected, 9)
    })
})
