/** Checks of the pull between discs. */
import { describe, expect, test } from 'vitest'
import { sampleMachine } from '../../../test/sample-chain.ts'
import type { Machine } from '../../machine/machine.ts'
import type { BlockMagnet } from '../../physics/magnetics/block-magnet.ts'
import { magneticPull, pullAcrossPlane } from '../../physics/magnetics/magnetic-pull.ts'
import { rotorField } from '../air-gap-field.ts'
import { finished } from '../step.ts'
import { apart, discPull, discPullAt, distanceOfPull, pullTable } from './disc-pull.ts'

const temperature = 293.15
const fine = { under: 16, beyond: 10, angular: 10 }
const arrangements: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'two discs on steel': {},
  'two discs without steel': { 'rotor.backIron': { kind: 'none' } },
  'one disc before a plate': {
    'rotor.arrangement': 'disc',
    'rotor.faceDistance_mm': undefined,
    'rotor.opposite': { kind: 'steel', faceDistance_mm: 18, thickness_mm: 10 },
  },
  'wedges on steel': {
    'rotor.magnet': {
      shape: 'wedge',
      length_mm: 46,
      innerWidth_mm: 26,
      outerWidth_mm: 40,
      thickness_mm: 10,
      grade: 'N42',
    },
  },
}

const pullOf = (machine: Machine, distance: number, mesh = fine): number => {
  const moved = apart(machine, distance)
  return discPullAt(moved, rotorField(moved, temperature), distance, mesh)
}

/** −½ ∫ Br H dV: the energy of magnets of straight recoil, no currents about. */
function energy(machine: Machine, distance: number): number {
  const moved = apart(machine, distance)
  const { rings, magnet } = moved.rotor
  const { remanence, workingPoint } = rotorField(moved, temperature)
  return -0.5 * rings.flat().length * magnet.volume * remanence * workingPoint.fieldStrength
}

describe('agrees: Maxwell’s stress and the change of the field’s energy', () => {
  for (const [name, fields] of Object.entries(arrangements))
    for (const distance of [0.012, 0.018, 0.03])
      test(`${name}, ${1000 * distance} mm`, () => {
        const machine = sampleMachine(fields)
        const h = 0.05 * distance
        const work = (energy(machine, distance + h) - energy(machine, distance - h)) / (2 * h)
        // the energy takes one mean field for each magnet, and steel as ideal
        expect(Math.abs(pullOf(machine, distance) / work - 1)).toBeLessThan(0.03)
      })
})

describe('agrees: the stress over the whole plane, blocks summed one by one', () => {
  test('two discs without steel', () => {
    const machine = sampleMachine(arrangements['two discs without steel'])
    const field = rotorField(machine, temperature)
    const whole = pullAcrossPlane({
      magnets: field.sources as readonly BlockMagnet[],
      height: 0.019,
      outerRadius: 0.26,
      period: 12,
      radialOrder: 14,
      angularOrder: 20,
    })
    expect(Math.abs(discPullAt(machine, field, 0.018, fine) / whole - 1)).toBeLessThan(3e-3)
  })
  test('B²A/2μ0 with the mean square of the field that it tells', () => {
    const machine = sampleMachine()
    const own = discPull(machine, rotorField(machine, temperature))!
    const area = 12 * 0.046 * 0.03
    expect(magneticPull({ fluxDensity: own.fluxDensity, area }) / own.pull).toBeCloseTo(1, 9)
    expect(own.fluxDensity).toBeGreaterThan(0.3)
    expect(own.fluxDensity).toBeLessThan(1)
  })
  test('few points as many, and the slope with the polarisation held as with it solved anew', () => {
    for (const fields of Object.values(arrangements)) {
      const machine = sampleMachine(fields)
      const own = discPull(machine, rotorField(machine, temperature))!
      expect(Math.abs(own.pull / pullOf(machine, 0.018) - 1)).toBeLessThan(5e-3)
      const h = 0.001
      const slope = (pullOf(machine, 0.018 - h) - pullOf(machine, 0.018 + h)) / (2 * h)
      expect(Math.abs(own.stiffness / slope - 1)).toBeLessThan(0.03)
    }
  })
})

describe('law: pull against distance', () => {
  const machine = sampleMachine()
  const table = finished(pullTable(machine, temperature))
  test('falls all the way, and the work with it; their quotient of differences is the pull', () => {
    for (let k = 1; k < table.length; k++) {
      const [near, far] = [table[k - 1]!, table[k]!]
      expect(near.pull).toBeGreaterThan(far.pull)
      const mean = (near.work - far.work) / (far.distance - near.distance)
      expect(mean).toBeLessThan(near.pull)
      expect(mean).toBeGreaterThan(far.pull)
    }
  })
  test('where hands hold it', () => {
    const at = distanceOfPull(table, 100)!
    expect(pullOf(machine, at) / 100).toBeCloseTo(1, 1)
    expect(distanceOfPull(table, 1e6)).toBeUndefined()
  })
  test('nothing pulls at a disc that faces no iron, nor where no field is known', () => {
    const alone = sampleMachine({ 'rotor.arrangement': 'disc', 'rotor.faceDistance_mm': undefined })
    expect(discPull(alone, rotorField(alone, temperature))).toBeUndefined()
    expect(finished(pullTable(alone, temperature))).toEqual([])
  })
})
