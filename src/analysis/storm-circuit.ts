/** The electrical side of a storm: what is connected, what flows at a speed, what charges and warms. */
import { refuse } from '../refusal/require.ts'
import type { BusState, HotBus } from './bus-current.ts'
import { batteryCurrent, batteryOf, chargeBattery } from './storm-battery.ts'
import { type Bus, converterBus, loadCurrent, settledBus } from './storm-bus.ts'
import type { StormCase } from './storm-case.ts'
import type { StormMachine } from './storm-machine.ts'
import type { HotShort, StormDrag, WindingState, WindingTables } from './storm-winding.ts'
import { weakenedBus, weakenedShort } from './weakened-bus.ts'

/** What is connected; the switches of a storm change it. */
export interface Connected {
  battery: boolean
  load: boolean
  dump: 'gone' | 'off' | 'on'
  converter: boolean
  short: 'none' | 'leads' | 'far end' | 'bridge'
  winding: WindingState | 'open'
}

export interface StormCircuit {
  readonly is: Connected
  /** What flows; written by `settle`. */
  readonly state: BusState
  /** Mixes the tables of the copper's temperature [K] and the magnets' strength anew; after a switch too. */
  readonly retable: (copperTemperature: number, strength: number) => void
  /** What flows at a speed: the bus, or undefined where no current leaves the bridge. */
  readonly settle: (speed: number) => Bus | undefined
  /** Volts behind the bridge, as electronics there see them. */
  readonly sensed: (bus: Bus | undefined, speed: number) => number
  /** Volts at the battery's terminals; undefined where it is not connected. */
  readonly atBattery: (bus: Bus | undefined) => number | undefined
  /** Lets the battery or the capacitor take what flows for `h` seconds. */
  readonly charge: (bus: Bus | undefined, speed: number, h: number) => void
  readonly dumpOhms: () => number
  /** What brakes without any current outside, and the volts that stand on open terminals, as things are. */
  readonly drag: () => StormDrag
  readonly openVoltage: (speed: number) => number
}

/** Time constants of a capacitor and what draws on it shorter than this follow the bus at once [s]. */
const quickCapacitor = 0.2

const none = () => 0

/** As the storm finds it: `voltage` of a capacitor [V], the copper at `copperTemperature` [K], the magnets' strength over that in cold air. */
export function stormCircuit(
  parts: StormMachine,
  { event, dump }: StormCase,
  begin: { readonly voltage: number; readonly copperTemperature: number; readonly strength: number },
): StormCircuit {
  const { load, converter } = parts.chain.machine
  const full = event === 'battery full'
  const is: Connected = {
    battery: load.kind === 'battery',
    load: load.kind !== 'open',
    dump: dump === undefined ? 'gone' : 'off',
    converter: converter !== undefined && load.kind === 'battery',
    short: 'none',
    winding: 'sound',
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
  const tables = (): WindingTables => {
    const known = is.winding === 'open' ? parts.open : parts.winding[is.winding]
    if (known === undefined)
      refuse({
        name: 'tables',
        condition: 'made for this state of the winding',
        value: is.winding,
        code: 'missing-key',
      })
    return known
  }
  const openVoltage = (speed: number) => tables().bus.openVoltage(speed)
  const threshold = 2 * parts.chain.machine.diode.threshold
  const retable = (T: number, strength: number) => {
    const { bus, short } = tables()
    hot = weakenedBus(bus.at(T), threshold, strength)
    shorted =
      is.short === 'leads' || is.short === 'far end' ? weakenedShort(short[is.short](T), strength) : undefined
  }
  retable(begin.copperTemperature, begin.strength)
  const dumpOhms = () => (is.dump === 'on' && dump !== undefined ? dump.resistance : 0)
  let guess = begin.voltage
  /** A converter that has nothing to do lets the current through to the battery. */
  let passesThrough = false

  /** With electronics between bridge and battery: they draw, or let through what is above the battery's volts. */
  const throughConverter = (current: (U: number) => number, open: number, speed: number): Bus | undefined => {
    const inner = dump?.place === 'at the battery' ? 0 : dumpOhms()
    passesThrough = false
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
      passesThrough = through.current > 0
      if (passesThrough) return through
    }
    if (drawn !== undefined || inner === 0) return drawn
    return settledBus(current, open, { store: undefined, plain: none, dump: inner }, guess)
  }

  const settle = (speed: number): Bus | undefined => {
    state.dcCurrent = 0
    state.torque = 0
    state.windingLoss = 0
    state.phaseCurrent = 0
    if (is.winding === 'open' || !(speed > 0)) return undefined
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

  const intoBattery = (bus: Bus | undefined): number => {
    if (battery === undefined) return 0
    const behind = dump?.place === 'at the battery' || !is.converter || passesThrough
    return batteryCurrent(battery, {
      bus,
      converter: is.converter && !passesThrough ? converter : undefined,
      inputDump: behind ? 0 : dumpOhms(),
      batteryDump: behind ? dumpOhms() : 0,
    })
  }

  const atBattery = (bus: Bus | undefined): number | undefined =>
    battery === undefined || !is.battery ? undefined : battery.voltage + battery.resistance * intoBattery(bus)

  const sensed = (bus: Bus | undefined, speed: number) =>
    bus?.voltage ??
    (is.battery && battery !== undefined ? battery.voltage : is.winding === 'open' ? 0 : openVoltage(speed))

  const charge = (bus: Bus | undefined, speed: number, h: number) => {
    if (battery !== undefined && is.battery && !full) chargeBattery(battery, load, intoBattery(bus), h)
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
  return {
    is,
    state,
    retable,
    settle,
    sensed,
    atBattery,
    charge,
    dumpOhms,
    drag: () => tables().drag,
    openVoltage,
  }
}
