/** The battery in a storm: what it takes, and the volts that its own electronics see. */
import type { Converter, Load } from '../machine/supply-side.ts'
import { converterOutput } from '../physics/electrics/converter.ts'
import { chargeAtRest, restVoltage } from './battery-charge.ts'
import type { Bus, Store } from './storm-bus.ts'

export interface StormBattery extends Store {
  /** State of charge, 0 to 1. */
  charge: number
}

/** The battery as it stands, or full: then at the voltage that its charger holds at the end. */
export const batteryOf = (load: Load, full: boolean): StormBattery | undefined =>
  load.kind === 'battery'
    ? {
        voltage: full ? load.band[1] : load.voltage,
        resistance: load.resistance,
        charge: full ? 1 : chargeAtRest(load, load.voltage),
      }
    : undefined

/** How the bridge reaches the battery. */
export interface BatteryFeed {
  readonly bus: Bus | undefined
  /** Undefined where the bridge is on the battery itself, or a converter lets the current through. */
  readonly converter: Converter | undefined
  /** Resistance of a dump that is on, on either side of the converter [Ω]; 0 for none. */
  readonly inputDump: number
  readonly batteryDump: number
}

/** Into the battery; below zero where a dump draws on it [A]. */
export function batteryCurrent(
  { voltage: U, resistance: R }: Store,
  { bus, converter, inputDump, batteryDump }: BatteryFeed,
): number {
  const drawn = batteryDump > 0 ? U / batteryDump : 0
  if (bus === undefined) return -drawn
  const left = bus.current - (inputDump > 0 ? bus.voltage / inputDump : 0)
  if (converter === undefined) return left - drawn
  const power = bus.voltage * left
  const output = power > 0 ? converterOutput(converter.loss, { voltage: bus.voltage, power }) : 0
  // U I + R I² = output
  const current = R > 0 ? (Math.sqrt(U * U + 4 * R * output) - U) / (2 * R) : output / U
  return current - drawn
}

/** Charge and rest volts after a current has flowed for a time. */
export function chargeBattery(battery: StormBattery, load: Load, current: number, duration: number): void {
  if (load.kind !== 'battery' || load.capacity === undefined) return
  const before = restVoltage(load, battery.charge)
  battery.charge = Math.min(1, Math.max(0, battery.charge + (current * duration) / load.capacity))
  battery.voltage += restVoltage(load, battery.charge) - before
}
