/** Checks of discs that bend under their own pull. */
import { describe, expect, test } from 'vitest'
import { sampleMachine } from '../../../test/sample-chain.ts'
import { rotorField } from '../air-gap-field.ts'
import { discBending } from './disc-bending.ts'

const bent = (fields: Readonly<Record<string, unknown>> = {}) => {
  const machine = sampleMachine(fields)
  return discBending(machine, rotorField(machine, 293.15))!
}
const hub = { 'rotor.hubRadius_mm': 40 }
const printed = (thickness_mm: number) => ({
  ...hub,
  'rotor.backIron': { kind: 'none' },
  'rotor.carrier': { material: 'ABS', thickness_mm },
})

describe('agrees: a cantilever cut out of the disc bends more, and by not much more', () => {
  test('bending of the order of F b³/(3 E I) over the mean circumference', () => {
    const { disc, pull, modulus, thickness } = bent(hub)
    // clamped at 40 mm, loaded about 120 mm: a strip of the mean circumference, cut free all along
    const reach = 0.08
    const second = (2 * Math.PI * 0.08 * thickness ** 3) / 12
    const strip = (pull.pull * reach ** 3) / (3 * modulus * second)
    expect(disc.still / strip).toBeGreaterThan(0.4)
    expect(disc.still / strip).toBeLessThan(1)
  })
})

describe('law: discs', () => {
  test('thicker bends less, a larger hub as well, near the cube and without a guess', () => {
    const [thin, thick] = [
      bent({ ...hub, 'rotor.backIron': { kind: 'steel', thickness_mm: 5 } }),
      bent({ ...hub, 'rotor.backIron': { kind: 'steel', thickness_mm: 10 } }),
    ]
    const ratio = (thin.disc.still * thick.pull.pull) / (thick.disc.still * thin.pull.pull)
    expect(ratio).toBeCloseTo(8, 6)
    expect(bent({ 'rotor.hubRadius_mm': 60 }).disc.rim).toBeLessThan(bent(hub).disc.rim!)
    expect(bent(hub).hubKnown).toBe(true)
    const guessed = bent()
    expect(guessed.hubKnown).toBe(false)
    expect(guessed.ends[0].rim).toBeGreaterThan(guessed.disc.rim!)
    expect(guessed.ends[1].rim).toBeLessThan(guessed.disc.rim!)
  })
  test('the growth of the pull adds to it, and a thin print snaps', () => {
    const { disc } = bent(printed(14))
    expect(disc.amplification).toBeGreaterThan(1)
    expect(disc.deflection).toBeCloseTo(disc.still * disc.amplification!, 12)
    const thin = bent(printed(4))
    expect(thin.disc.closeness).toBeGreaterThan(1)
    expect(thin.disc.rim).toBeUndefined()
    expect(thin.plastic).toBe(true)
  })
  test('undefined where nothing is known of what carries the magnets; nothing bends inside a hub', () => {
    const machine = sampleMachine({ 'rotor.backIron': { kind: 'none' } })
    expect(discBending(machine, rotorField(machine, 293.15))).toBeUndefined()
    expect(bent({ 'rotor.hubRadius_mm': 142 }).disc.rim).toBe(0)
  })
})
