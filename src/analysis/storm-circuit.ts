/** The electrical side of a storm: what is connected, what flows at a speed, what charges and warms. */
import type { Load } from '../machine/supply-side.ts'
import { refuse } from '../refusal/require.ts'
import { chargeAtRest, restVoltage } from './battery-charge.ts'
import type { BusState, HotBus } from './bus-current.ts'
import { type Bus, converterBus, loadCurrent, type Store, settledBus } from './storm-bus.ts'
import type { StormCase } from './storm-case.ts'
import type { HotShort, StormMachine } from './storm-machine.ts'

/** What is connected; the switches of a storm change it. */
export interface Connected {
  battery: boolean
  load: boolean
  dump: 'gone' | 'off' | 'on'
  converter: boolean
  short: 'none' | 'leads' | 'far end' | 'bridge'
  diodes: 'sound' | 'open' | 'shorted'
  windingOpen: boolean
}

export interface StormCircuit {
  readonly is: Connected
  /** What flows; written by `settle`. */
  readonly state: BusState
  /** Mixes the tables of the copper's temperature anew [K]; after a switch too. */
  readonly retable: (copperTemperature: number) => void
  /** What flows at a speed: the bus, or undefined where no current leaves the bridge. */
  readonly settle: (speed: number) => Bus | undefined
  /** Volts that the battery's, the dump's and the converter's electronics see. */
  readonly sensed: (bus: Bus | undefined, speed: number) => number
  /** Lets the battery or the capacitor take what flows for `h` seconds. */
  readonly charge: (bus: Bus | undefined, speed: number, h: number) => void
  readonly dumpOhms: () => number
}

/** Time constants of a capacitor and what draws on it shorter than this follow the bus at once [s]. */
const quickCapacitor = 0.2

/** The battery as it stands, or full: then at the voltage that its charger holds at the end. */
const batteryOf = (load: Load, full: boolean): (Store & { charge: number }) | undefined =>
  load.kind === 'battery'
    ? {
        voltage: full ? load.band[1] : load.voltage,
        resistance: load.resistance,
        charge: full ? 1 : chargeAtRest(load, load.voltage),
      }
    : undefined

const none = () => 0

/** As the storm finds it: `voltage` of a capacitor [V], the copper at `copperTemperature` [K]. */
export function stormCircuit(
  parts: StormMachine,
  { event, dump }: StormCase,
  begin: { readonly voltage: number; readonly copperTemperature: number },
): StormCircuit {
  const { load, converter } = parts.chain.machine
  const { openVoltage } = parts.bus
  const full = event === 'battery full'
  const is: Connected = {
    battery: load.kind === 'battery',
    load: load.kind !== 'open',
    dump: dump === undefined ? 'gone' : 'off',
    converter: converter !== undefined && load.kind === 'battery',
    short: 'none',
    diodes: 'sound',
    windingOpen: false,
  }
  const battery = batteryOf(load, full)
  const capacitor =
    load.kind === 'capacitor' && load.capacitance * load.drawn > quickCapacitor
      ? { ...load, voltage: Math.max(0, begin.voltage) }
      : undefined
  const ownDraw =
    load.kind !== 'capacitor'
      ? loadCurrent(load)
      : capacitor === undefined
        ? (U: number) => U / (load.resistance + load.drawn)
        : none
  const state: BusState = { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 }
  let hot!: HotBus
  let shorted: HotShort | undefined
  const retable = (T: number) => {
    const bus =
      is.diodes === 'sound' ? parts.bus : is.diodes === 'open' ? parts.openDiode : parts.shortedDiode
    if (bus === undefined)
      refuse({
        name: 'tables',
        condition: 'made for a bridge out of order',
        value: is.diodes,
        code: 'missing-key',
      })
    hot = bus.at(T)
    shorted = is.short === 'leads' || is.short === 'far end' ? parts.short[is.short](T) : undefined
  }
  retable(begin.copperTemperature)
  const dumpOhms = () => (is.dump === 'on' && dump !== undefined ? dump.resistance : 0)
  let guess = begin.voltage

  /** With electronics between bridge and battery: they draw, or let through what is above the battery's volts. */
  const throughConverter = (current: (U: number) => number, open: number, speed: number): Bus | undefined => {
    const inner = dump?.place === 'at the battery' ? 0 : dumpOhms()
    const drawn =
      converter === undefined || battery === undefined
        ? undefined
        : converterBus(current, open, { converter, speed, dump: inner })
    if (
      battery !== undefined &&
      open > battery.voltage &&
      !(drawn !== undefined && drawn.voltage <= battery.voltage)
    ) {
      const through = settledBus(current, open, { store: battery, plain: none, dump: dumpOhms() }, guess)
      if (through.current > 0) return through
    }
    if (drawn !== undefined || inner === 0) return drawn
    return settledBus(current, open, { store: undefined, plain: none, dump: inner }, guess)
  }

  const settle = (speed: number): Bus | undefined => {
    state.dcCurrent = 0
    state.torque = 0
    state.windingLoss = 0
    state.phaseCurrent = 0
    if (is.windingOpen || !(speed > 0)) return undefined
    if (shorted !== undefined) {
      shorted(state, speed)
      return { voltage: 0, current: 0 }
    }
    if (is.short === 'bridge') {
      hot.fill(state, speed, 0)
      return { voltage: 0, current: state.dcCurrent }
    }
    const open = openVoltage(speed)
    const current = (U: number) => hot.current(speed, U)
    const store = is.battery ? battery : is.load ? capacitor : undefined
    const plain = is.load ? ownDraw : none
    let bus: Bus | undefined
    if (is.converter) bus = throughConverter(current, open, speed)
    else if (store !== undefined || plain !== none || dumpOhms() > 0)
      bus = settledBus(current, open, { store, plain, dump: dumpOhms() }, guess)
    hot.fill(state, speed, bus?.voltage ?? open)
    if (bus !== undefined) guess = bus.voltage
    return bus
  }

  const sensed = (bus: Bus | undefined, speed: number) =>
    bus?.voltage ?? (is.battery && battery !== undefined ? battery.voltage : openVoltage(speed))

  const charge = (bus: Bus | undefined, speed: number, h: number) => {
    if (
      battery !== undefined &&
      is.battery &&
      !full &&
      load.kind === 'battery' &&
      load.capacity !== undefined
    ) {
      // what a converter passes on takes days to show
      const into = is.converter
        ? 0
        : (bus?.current ?? 0) - (dumpOhms() > 0 ? battery.voltage / dumpOhms() : 0)
      const before = restVoltage(load, battery.charge)
      battery.charge = Math.min(1, Math.max(0, battery.charge + (into * h) / load.capacity))
      battery.voltage += restVoltage(load, battery.charge) - before
    }
    if (capacitor === undefined || !is.load) return
    const open = openVoltage(speed)
    const held = { voltage: 0, resistance: capacitor.resistance }
    const gained = (U: number) => {
      held.voltage = U
      const { voltage, current } = settledBus(
        (V) => hot.current(speed, V),
        open,
        { store: held, plain: none, dump: dumpOhms() },
        U,
      )
      const into = capacitor.resistance > 0 ? (voltage - U) / capacitor.resistance : current
      return ((into - U / capacitor.drawn) * h) / capacitor.capacitance
    }
    // backward Euler: its root lies between rest and the most that can be
    let low = 0
    let high = Math.max(open, capacitor.voltage)
    for (let k = 0; k < 24; k++) {
      const middle = (low + high) / 2
      if (capacitor.voltage + gained(middle) > middle) low = middle
      else high = middle
    }
    capacitor.voltage = (low + high) / 2
  }
  return { is, state, retable, settle, sensed, charge, dumpOhms }
}
