/** Checks of the currents that never leave the winding. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { computeDesign } from './compute.ts'
import { loadPoint } from './load-point.ts'

const chainWith = (change: (document: ReturnType<typeof fixedDocument>) => void) => {
  const document = fixedDocument('twoDiscs')
  change(document)
  return computeDesign(designOf(document))
}

describe('law: currents inside the winding', () => {
  test('a star of alike coils in series has none', () => {
    const { circulating } = exampleChain('boathouse-two-disc')
    expect(circulating.branches(40)).toBe(0)
    expect(circulating.delta(40)).toBe(0)
  })
  test('unlike parallel branches burn power with the square of the speed, load or not', () => {
    // nine coils on eight poles: the three coils of a phase are 20° apart, so parallel branches pull against each other
    const { circulating, generator, voltage } = chainWith((document) => {
      document.rotor.poleCount = 8
      document.stator.winding.parallelGroups = 3
    })
    expect(voltage.phases[0]!.branchMismatch).toBeGreaterThan(0.1)
    const slow = circulating.branches(5)
    expect(slow).toBeGreaterThan(0)
    expect(circulating.branches(10) / slow).toBeCloseTo(4, 1)
    expect(generator.at(5, 300).watts.winding).toBeCloseTo(slow, 9)
  })
})

describe('agrees: a closed delta, loop current by phasors and by the rectifier’s solution with nothing connected', () => {
  const chain = chainWith((document) => {
    document.stator.connection = 'delta'
  })
  test('loss below cut-in', () => {
    const speed = 0.6 * chain.generator.cutIn
    const open = loadPoint(chain.machine, chain.voltage, {
      speed,
      copperTemperature: 293.15,
      load: { kind: 'open' },
    })
    expect(chain.circulating.delta(speed)).toBeGreaterThan(0)
    expect(chain.circulating.delta(speed) / open.power.winding).toBeCloseTo(1, 2)
    expect(chain.generator.at(speed, 293.15).watts.winding).toBeCloseTo(chain.circulating.delta(speed), 9)
  })
  test('current begins where the lines, without what the loop takes, reach the battery', () => {
    const { generator, machine, voltage } = chain
    const at = (share: number) =>
      loadPoint(machine, voltage, { speed: share * generator.cutIn, copperTemperature: 293.15 }).dcCurrent
    expect(at(0.99)).toBe(0)
    expect(at(1.02)).toBeGreaterThan(0)
  })
})
