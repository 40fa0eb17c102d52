/** Checks of the battery in a storm: what reaches it through a converter, and what its electronics make of it. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { converterOutput } from '../physics/electrics/converter.ts'
import { restVoltage } from './battery-charge.ts'
import { computeDesign } from './compute.ts'
import { loadPoint } from './load-point.ts'
import { finished } from './step.ts'
import { storm } from './storm.ts'
import { batteryCurrent, batteryOf, chargeBattery } from './storm-battery.ts'
import { stormMachine } from './storm-machine.ts'
import { stormWind } from './storm-wind.ts'

// biome-ignore lint/suspicious/noExplicitAny: checks change documents at will
const designWith = (change: (document: any) => void = () => {}) => {
  const document = fixedDocument('twoDiscs')
  document.load.voltage_V = 50.4
  document.load.capacity_Ah = 20
  document.converter = {
    curve: [
      { speed_rpm: 150, power_W: 0 },
      { speed_rpm: 300, power_W: 40 },
      { speed_rpm: 500, power_W: 200 },
    ],
  }
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return parsed.design
}

const machine = resolveDesign(designWith())
const { load, converter } = machine
const nothing = { inputDump: 0, batteryDump: 0 }

describe('agrees: amps into the battery, and the watts that the converter gives', () => {
  const battery = batteryOf(load, false)!
  const bus = { voltage: 30, current: 5 }
  test('volts times amps, the heat in the battery with them, are the converter’s output', () => {
    const I = batteryCurrent(battery, { bus, converter, ...nothing })
    const output = converterOutput(converter!.loss, { voltage: 30, power: 150 })
    expect(I * (battery.voltage + battery.resistance * I)).toBeCloseTo(output, 9)
    expect(output).toBeLessThan(150)
  })
  test('without a converter the bridge’s own amps arrive, less those of a dump', () => {
    expect(batteryCurrent(battery, { bus, converter: undefined, ...nothing })).toBe(5)
    const dumped = batteryCurrent(battery, { bus, converter: undefined, inputDump: 0, batteryDump: 10 })
    expect(dumped).toBeCloseTo(5 - battery.voltage / 10, 12)
    expect(batteryCurrent(battery, { bus: undefined, converter, inputDump: 0, batteryDump: 10 })).toBeCloseTo(
      -battery.voltage / 10,
      12,
    )
  })
})

describe('law: charge', () => {
  test('an ampere for an hour into 20 Ah is a twentieth, and the volts follow the rest volts', () => {
    if (load.kind !== 'battery') throw new Error('a battery is asked for')
    const battery = batteryOf(load, false)!
    const { charge, voltage } = battery
    chargeBattery(battery, load, 1, 3600)
    expect(battery.charge - charge).toBeCloseTo(1 / 20, 9)
    expect(battery.voltage - voltage).toBeCloseTo(
      restVoltage(load, charge + 1 / 20) - restVoltage(load, charge),
      9,
    )
    chargeBattery(battery, load, 1000, 3600)
    expect(battery.charge).toBe(1)
  })
})

describe('agrees: a storm behind a converter, and the load’s own balance', () => {
  // steady wind of 7 m/s, where the balance of the chain gives the amps
  const chain = computeDesign(designWith())
  const row = chain.rowAt(7)
  const point = loadPoint(chain.machine, chain.voltage, row)
  const volts = (above: number) => {
    const guarded = computeDesign(
      designWith((document) => {
        document.load.disconnect = { above_V: above, below_degC: -40 }
      }),
    )
    const parts = finished(stormMachine(guarded, guarded.machine.site.stormWind, []))
    const given = {
      event: 'nothing',
      at: 0,
      limiterWorks: true,
      shortWorks: true,
      dumpWorks: true,
      dump: undefined,
    } as const
    return finished(storm(parts, stormWind(guarded.machine, 'steady storm', 7), given)).happened
  }
  test('its electronics leave just below the volts that the balance gives, and stay above', () => {
    expect(volts(point.loadVoltage - 0.02).map(({ words }) => words)).toContain(
      'the battery takes itself off above its limit',
    )
    expect(volts(point.loadVoltage + 0.2)).toEqual([])
  })
})
