/** Checks of loads that must be balanced against the circuit. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import type { Machine } from '../machine/machine.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { converterOutput } from '../physics/electrics/converter.ts'
import { filamentResistance } from '../physics/electrics/hot-resistance.ts'
import { computeDesign } from './compute.ts'
import { curvePower } from './load-balance.ts'
import { cutInSpeed, loadPoint } from './load-point.ts'
import { strengthBesideCopper, weakenedVoltage } from './magnet-strength.ts'

const state = { copperTemperature: 320 }

function designOf(fields: Record<string, unknown>) {
  const document = { ...fixedDocument('twoDiscs'), ...fields }
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return parsed.design
}

const sound = computeDesign(designOf({}))
const { voltage } = sound
const machineOf = (fields: Record<string, unknown>): Machine => resolveDesign(designOf(fields))
const speeds = [0.9, 1.3, 2, 3].map((share) => share * sound.generator.cutIn)

const spent = ({ power }: ReturnType<typeof loadPoint>) =>
  power.winding +
  power.line +
  power.dcCable +
  power.diodes +
  power.converter +
  power.batteryResistance +
  power.load

describe('law: circuit and load agree', () => {
  test('a filament has the resistance of its own power, and the energy closes', () => {
    const machine = machineOf({
      load: { kind: 'lamp', lamp: 'filament', ratedVoltage_V: 24, ratedPower_W: 60 },
    })
    let before = 0
    for (const speed of speeds) {
      const point = loadPoint(machine, voltage, { speed, ...state })
      const resistance = point.power.load / point.dcCurrentRms ** 2
      const wanted = filamentResistance({ ratedVoltage: 24, ratedPower: 60 }, point.power.load)
      expect(Math.abs(resistance / wanted - 1)).toBeLessThan(1e-4)
      expect(Math.abs(spent(point) / point.power.shaft - 1)).toBeLessThan(1e-3)
      expect(resistance).toBeGreaterThan(before)
      before = resistance
    }
  })
  test('a heater of the hot resistance alone is the resistor of that size', () => {
    const load = { kind: 'heater', ratedVoltage_V: 24, ratedPower_W: 200, coldResistance_ohm: 2.88 }
    const heater = machineOf({ load })
    const resistor = machineOf({ load: { kind: 'resistor', resistance_ohm: 2.88 } })
    for (const speed of speeds)
      expect(loadPoint(heater, voltage, { speed, ...state }).dcCurrent).toBeCloseTo(
        loadPoint(resistor, voltage, { speed, ...state }).dcCurrent,
        6,
      )
  })
  test('a capacitor holds the volts at which as much is drawn as arrives', () => {
    const machine = machineOf({
      load: { kind: 'capacitor', capacitance_F: 5, ratedVoltage_V: 60, drawn_ohm: 20, resistance_mohm: 100 },
    })
    for (const speed of speeds) {
      const point = loadPoint(machine, voltage, { speed, ...state })
      expect(Math.abs((point.dcCurrent * 20) / point.loadVoltage - 1)).toBeLessThan(1e-4)
      expect(Math.abs(spent(point) / point.power.shaft - 1)).toBeLessThan(1e-3)
      expect(point.power.load / (point.loadVoltage ** 2 / 20)).toBeGreaterThan(0.9999)
      expect(point.power.load / (point.loadVoltage ** 2 / 20)).toBeLessThan(1.001)
    }
  })
  test('next to nothing drawn: the capacitor stands at the peak less two thresholds', () => {
    const machine = machineOf({
      load: { kind: 'capacitor', capacitance_F: 5, ratedVoltage_V: 60, drawn_ohm: 1e6 },
    })
    const speed = speeds[2]!
    const { loadVoltage } = loadPoint(machine, voltage, { speed, ...state })
    const peak = voltage.greatestLinePeak * speed - 2 * machine.diode.threshold
    expect(Math.abs(loadVoltage / peak - 1)).toBeLessThan(2e-3)
  })
  test('an LED lamp shines from three quarters of its volts on', () => {
    const machine = machineOf({ load: { kind: 'lamp', lamp: 'LED', ratedVoltage_V: 24, ratedPower_W: 40 } })
    const cutIn = cutInSpeed(machine, voltage)
    expect(cutIn * voltage.greatestLinePeak).toBeCloseTo(18 + 2 * machine.diode.threshold, 9)
    expect(loadPoint(machine, voltage, { speed: 0.999 * cutIn, ...state }).power.load).toBe(0)
    const point = loadPoint(machine, voltage, { speed: 1.2 * cutIn, ...state })
    expect(point.power.batteryResistance).toBe(0)
    expect(Math.abs(spent(point) / point.power.shaft - 1)).toBeLessThan(1e-3)
  })
})

describe('law: a boost converter draws what its curve asks for', () => {
  const rpm = (speed: number) => (speed * 30) / Math.PI
  const { cutIn } = sound.generator
  const curve = [0.3, 0.6, 1, 1.6].map((share) => ({
    speed_rpm: rpm(share * cutIn),
    power_W: 40 * share ** 3,
  }))
  const machine = machineOf({ converter: { curve, leastInput_V: 4 } })
  const converter = machine.converter!
  const at = (speed: number) => loadPoint(machine, voltage, { speed, ...state })
  test('below the battery’s volts, where the direct way gives nothing', () => {
    for (const share of [0.5, 0.7, 0.9]) {
      const speed = share * cutIn
      const point = at(speed)
      const input = point.power.converter + point.power.batteryResistance + point.power.load
      expect(Math.abs(input / curvePower(converter, speed) - 1)).toBeLessThan(1e-4)
      expect(Math.abs(spent(point) / point.power.shaft - 1)).toBeLessThan(1e-3)
      // amps times volts at the battery are what comes out
      const inputVoltage = input / point.dcCurrent
      const out = converterOutput(converter.loss, { voltage: inputVoltage, power: input })
      expect(Math.abs((point.loadVoltage * point.loadCurrent) / out - 1)).toBeLessThan(1e-6)
    }
  })
  test('what the machine cannot give it does not draw: no direct volts give more', () => {
    const greedy = machineOf({
      converter: {
        curve: curve.map((point) => ({ ...point, power_W: 100 * point.power_W })),
        leastInput_V: 1,
      },
    })
    const speed = 0.7 * cutIn
    const point = loadPoint(greedy, voltage, { speed, ...state })
    const input = point.power.converter + point.power.batteryResistance + point.power.load
    let most = 0
    for (let V = 1; V < 25; V += 0.25)
      most = Math.max(
        most,
        loadPoint(greedy, voltage, { speed, ...state, load: { kind: 'battery', voltage: V, resistance: 0 } })
          .power.load,
      )
    expect(input / most).toBeGreaterThan(0.999)
    expect(input / most).toBeLessThan(1.0015)
  })
  test('past the curve the battery takes the current by itself', () => {
    const direct = machineOf({ load: { ...fixedDocument('twoDiscs').load, resistance_mohm: 0 } })
    const speed = 2.5 * cutIn
    expect(at(speed).dcCurrent).toBeCloseTo(loadPoint(direct, voltage, { speed, ...state }).dcCurrent, 6)
  })
  test('the whole chain charges in less wind with it', () => {
    const chain = computeDesign(designOf({ converter: { curve, leastInput_V: 4 } }))
    expect(chain.generator.cutIn).toBeLessThan(0.5 * sound.generator.cutIn)
    expect(chain.cutInWind).toBeLessThanOrEqual(sound.cutInWind)
    expect(chain.generator.residual).toBeLessThan(1e-3)
    for (const row of chain.rows) expect(row.watts.converter).toBeGreaterThanOrEqual(0)
  })
})

describe('agrees: the table with its kinks and the circuit at the very speed', () => {
  const { cutIn } = sound.generator
  const rpm = (share: number) => (share * cutIn * 30) / Math.PI
  const curve = [
    { speed_rpm: rpm(0.4), power_W: 0 },
    { speed_rpm: rpm(0.8), power_W: 40 },
    { speed_rpm: rpm(1.4), power_W: 200 },
  ]
  const chain = computeDesign(designOf({ converter: { curve } }))
  const strength = strengthBesideCopper(chain.machine, chain.heat.magnetShare)
  test('shaft watts and battery amps within 4 % from the first watt to three times cut-in', () => {
    for (let share = 0.55; share < 3; share += 0.083)
      for (const copperTemperature of [290, 340, 420]) {
        const speed = share * cutIn
        const table = chain.generator.at(speed, copperTemperature)
        const weaker = weakenedVoltage(chain.voltage, strength(copperTemperature))
        const point = loadPoint(chain.machine, weaker, { speed, copperTemperature })
        const losses = table.watts.friction + table.watts.eddy + table.watts.parts
        const shaft = chain.generator.shaftPower(speed, copperTemperature) - losses
        expect(Math.abs(shaft / point.power.shaft - 1), `${share} ${copperTemperature}`).toBeLessThan(0.04)
        expect(Math.abs(table.loadCurrent / point.loadCurrent - 1), `${share}`).toBeLessThan(0.03)
      }
  })
})

describe('law: a bridge of switched transistors is the diode bridge without its threshold', () => {
  test('more current at the same speed, and a lower cut-in', () => {
    const machine = machineOf({ bridge: { diode: 'synchronous 30 A 60 V' } })
    expect(cutInSpeed(machine, voltage)).toBeLessThan(sound.generator.cutIn)
    for (const speed of speeds.slice(1)) {
      const diodes = loadPoint(sound.machine, voltage, { speed, ...state })
      const point = loadPoint(machine, voltage, { speed, ...state })
      expect(point.dcCurrent).toBeGreaterThan(diodes.dcCurrent)
      expect(point.power.diodes).toBeLessThan(0.25 * diodes.power.diodes)
    }
  })
})
