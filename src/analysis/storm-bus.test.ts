/** Checks of what hangs on the bus: in a steady wind the storm must come to the chain's own steady state. */
import { describe, expect, test } from 'vitest'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { computeDesign } from './compute.ts'
import { loadPoint } from './load-point.ts'
import { finished } from './step.ts'
import { storm } from './storm.ts'
import { settledBus } from './storm-bus.ts'
import { stormMachine } from './storm-machine.ts'
import { stormWind } from './storm-wind.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will
const loads: readonly [name: string, base: FixedName, wind: number, change: (document: any) => void][] = [
  ['a resistor', 'disc', 6, () => {}],
  [
    'a heater',
    'disc',
    6,
    (document) => {
      document.load = { kind: 'heater', ratedVoltage_V: 6, ratedPower_W: 5 }
    },
  ],
  [
    'a filament lamp',
    'disc',
    6,
    (document) => {
      document.load = { kind: 'lamp', lamp: 'filament', ratedVoltage_V: 6, ratedPower_W: 3 }
    },
  ],
  [
    'a string of LEDs',
    'disc',
    6,
    (document) => {
      document.load = { kind: 'lamp', lamp: 'LED', ratedVoltage_V: 3, ratedPower_W: 0.5 }
    },
  ],
  [
    'a capacitor',
    'disc',
    6,
    (document) => {
      document.load = {
        kind: 'capacitor',
        capacitance_F: 0.5,
        ratedVoltage_V: 16,
        resistance_mohm: 50,
        drawn_ohm: 40,
      }
    },
  ],
  [
    'a converter',
    'twoDiscs',
    7,
    (document) => {
      document.load.voltage_V = 50.4
      document.converter = {
        curve: [
          { speed_rpm: 150, power_W: 0 },
          { speed_rpm: 300, power_W: 40 },
          { speed_rpm: 500, power_W: 200 },
        ],
      }
    },
  ],
]

describe('agrees: where the storm settles in a steady wind, the circuit solved there takes what the blades give, within 1.5 %', () => {
  for (const [name, base, wind, change] of loads)
    test(name, () => {
      const document = fixedDocument(base)
      change(document)
      const parsed = parseDesign(document)
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
      const chain = computeDesign(parsed.design)
      const parts = finished(stormMachine(chain, chain.machine.site.stormWind, ['sound']))
      const given = {
        event: 'nothing',
        at: 0,
        limiterWorks: true,
        shortWorks: true,
        dumpWorks: true,
        dump: undefined,
      } as const
      const row = chain.rowAt(wind)
      const from = { speed: 1.2 * row.speed, copperTemperature: row.copperTemperature }
      const run = finished(storm(parts, stormWind(chain.machine, 'steady storm', wind), given, { from }))
      const { speed, copperTemperature } = run.last
      const point = loadPoint(chain.machine, chain.voltage, { speed, copperTemperature })
      const drag = chain.drag.at(speed)
      const taken = point.power.shaft + drag.friction + drag.eddy + drag.parts
      expect(point.dcCurrent).toBeGreaterThan(0)
      expect(run.trace.current.at(-1)! / point.dcCurrent).toBeCloseTo(1, 1)
      expect(Math.abs(taken / chain.blades.power(wind, speed) - 1)).toBeLessThan(0.015)
    })
})

describe('agrees: the balance of a bus and the same circuit by hand', () => {
  test('10 V behind 2 Ω into a 4 V battery of 1 Ω and a dump of 3 Ω', () => {
    // (10 − U)/2 = (U − 4)/1 + U/3
    const { voltage, current } = settledBus(
      (U) => Math.max(0, (10 - U) / 2),
      10,
      { store: { voltage: 4, resistance: 1 }, plain: () => 0, dump: 3 },
      9,
    )
    expect(voltage).toBeCloseTo(9 / (1 / 2 + 1 + 1 / 3), 4)
    expect(current).toBeCloseTo((10 - voltage) / 2, 9)
  })
})
