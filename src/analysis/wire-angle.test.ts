/** Checks of the volts per metre of a leaning wire against the textbook skew factor. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { skewFactor } from '../physics/winding/winding-factor.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { voltageAlongWire } from './voltage-along-wire.ts'
import { woundMachine } from './winding.ts'
import { wireAngleCurve } from './wire-angle.ts'

type Change = (document: ReturnType<typeof exampleDocument>) => void

const machineOf = (name: string, change: Change = () => {}) => {
  const document = exampleDocument(name)
  change(document)
  return resolveDesign(designOf(document))
}

const curveOf = (name: string, change?: Change) => {
  const machine = machineOf(name, change)
  return wireAngleCurve(machine, rotorField(machine), {
    distance: conductorLayout(machine).shapes[0]!.distance,
    base: machine.rotor.polePairs,
  })
}

describe('agrees: the textbook skew factor, sin(s/2)/(s/2)', () => {
  test('magnets so long that their ends do not count', () => {
    const { lean, perMetre, textbook } = curveOf('hen-house-drum', ({ rotor }) => {
      rotor.magnet.length_mm = 400
    })
    lean.forEach((β, k) => {
      if (β < 0.5) expect(Math.abs(perMetre[k]! - textbook[k]!)).toBeLessThan(0.01 * perMetre[0]!)
    })
  })
  test('a little lean on the examples’ own magnets', () => {
    for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan']) {
      const { lean, perMetre, textbook } = curveOf(name)
      lean.forEach((β, k) => {
        if (β < 0.35) expect(Math.abs(perMetre[k]! / textbook[k]! - 1)).toBeLessThan(0.012)
      })
    }
  })
  test('the leaning runs of a whole wave against straight ones', () => {
    const runs = (slant: number) => {
      const machine = machineOf('hen-house-drum', ({ rotor, stator }) => {
        rotor.magnet.length_mm = 120
        stator.winding.runLength_mm = 110
        stator.winding.slant_deg = slant
      })
      const field = rotorField(machine)
      const layout = conductorLayout(machine)
      const wound = woundMachine(machine, layout)
      const voltage = openCircuitVoltage(machine, field, layout, wound)
      const { parts } = voltageAlongWire({ machine, field, layout, wound, voltage }).phases[0]!
      return parts.find(({ part }) => part !== 'crown')!.volts
    }
    for (const slant of [6, 12, 20]) {
      const skew = (6 * slant * Math.PI) / 180
      expect(Math.abs(runs(slant) / runs(0) - skewFactor({ skew, harmonic: 1 }))).toBeLessThan(0.01)
    }
  })
})

describe('law: the cosine is the most that a lean leaves', () => {
  for (const name of ['hen-house-drum', 'boathouse-two-disc', 'class-room-fan'])
    test(name, () => {
      const { lean, perMetre, cosine } = curveOf(name)
      expect(cosine[0]).toBe(perMetre[0])
      lean.forEach((β, k) => {
        expect(perMetre[k]!).toBeLessThanOrEqual(cosine[k]! * 1.0001)
        expect(cosine[k]! / cosine[0]!).toBeCloseTo(Math.cos(β), 12)
      })
    })
})
