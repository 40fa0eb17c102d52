/** Checks of the generator as a bus of any voltage meets it. */
import { describe, expect, test } from 'vitest'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { type BusState, busCurrent } from './bus-current.ts'
import { computeDesign } from './compute.ts'
import { loadPoint } from './load-point.ts'
import { finished } from './step.ts'

const chainOfDocument = (name: FixedName) => {
  const parsed = parseDesign(fixedDocument(name))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}

const empty = (): BusState => ({ dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 })

describe('agrees: the table and the circuit solved on the spot', () => {
  for (const name of ['twoDiscs', 'drum'] as const)
    test(`${name}: within 1 % of the greatest at that speed, between the nodes of speed, volts and temperature`, () => {
      const { machine, voltage, runaway } = chainOfDocument(name)
      const bus = finished(busCurrent(machine, voltage, { fastest: runaway.speed }))
      for (const copperTemperature of [288, 415])
        for (const speed of [0.09, 0.23, 0.47, 0.93].map((share) => share * runaway.speed)) {
          const open = bus.openVoltage(speed)
          const hot = bus.at(copperTemperature)
          const solved = [0.02, 0.3, 0.65, 0.9, 0.99].map((share) => {
            const load = { kind: 'battery', voltage: share * open, resistance: 0 } as const
            const point = loadPoint(machine, voltage, { speed, copperTemperature, load })
            return {
              state: hot.fill(empty(), speed, load.voltage),
              alone: hot.current(speed, load.voltage),
              wanted: {
                dcCurrent: point.dcCurrent,
                torque: point.power.shaft / speed,
                windingLoss: point.power.winding,
                phaseCurrent: Math.max(...point.phaseCurrentRms),
              },
            }
          })
          for (const key of ['dcCurrent', 'torque', 'windingLoss', 'phaseCurrent'] as const) {
            const most = Math.max(...solved.map(({ wanted }) => wanted[key]))
            for (const { state, wanted } of solved)
              expect(Math.abs(state[key] - wanted[key]) / most, `${key} at ${speed}`).toBeLessThan(0.01)
          }
          for (const { state, alone } of solved) expect(alone).toBe(state.dcCurrent)
        }
    })
})

describe('law: the bus', () => {
  test('gets no current above the open-circuit voltage or from a rotor at rest, and none without volts', () => {
    const { machine, voltage, runaway } = chainOfDocument('disc')
    const bus = finished(busCurrent(machine, voltage, { fastest: runaway.speed }))
    const hot = bus.at(300)
    const speed = 0.6 * runaway.speed
    expect(hot.current(speed, 1.0001 * bus.openVoltage(speed))).toBe(0)
    expect(hot.current(0, 0)).toBe(0)
    const dead = finished(
      busCurrent(machine, { ...voltage, greatestLinePeak: 0 }, { fastest: runaway.speed }),
    )
    expect(dead.at(300).fill(empty(), speed, 0)).toEqual(empty())
  })
})
