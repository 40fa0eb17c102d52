/** Checks that an edit which leaves the ground of the pull alone leaves the pull alone. */
import { expect, test } from 'vitest'
import { rotorField } from '../../src/analysis/air-gap-field.ts'
import { discPull } from '../../src/analysis/mechanics/disc-pull.ts'
import { resolveDesign } from '../../src/index.ts'
import { designOf, exampleDocument } from '../../test/example.ts'
import { pullGround } from './pull-ground.ts'

const document = exampleDocument('boathouse-two-disc')
const pull = (of: unknown) => {
  const machine = resolveDesign(designOf(of))
  return discPull(machine, rotorField(machine, machine.site.ambient))!
}
const changed = (change: (copy: typeof document) => void) => {
  const copy = structuredClone(document)
  change(copy)
  return copy
}

test('law: the same ground, the same pull, whatever else is changed', () => {
  const other = changed((copy) => {
    copy.name = 'Another'
    copy.purpose.power_W = 100
    copy.site.meanWind_m_per_s = 7
    copy.blades.diameter_m = 1.2
    copy.protection.actsAt_m_per_s = 10
    copy.shaft.friction_mNm = 200
    copy.rotor.retention = { kind: 'pocket', wall_mm: 6, material: 'PLA' }
    copy.stator.wire.size = 1.2
    copy.stator.connection = 'delta'
    copy.cable.length_m = 60
    copy.bridge.diode = 'bridge 25 A'
    copy.load.voltage_V = 12.6
    copy.wiring.fuse_A = 10
  })
  expect(pullGround(other)).toBe(pullGround(document))
  expect(pull(other)).toEqual(pull(document))
})

test('law: what moves the pull moves its ground', () => {
  for (const change of [
    (copy: typeof document) => {
      copy.site.ambient_degC = 30
    },
    (copy: typeof document) => {
      copy.rotor.faceDistance_mm = 19
    },
    (copy: typeof document) => {
      copy.rotor.backIron.thickness_mm = 3
    },
    (copy: typeof document) => {
      copy.stator.winding.distance_mm = 8
    },
  ]) {
    const other = changed(change)
    expect(pullGround(other)).not.toBe(pullGround(document))
    expect(pull(other)).not.toEqual(pull(document))
  }
})
