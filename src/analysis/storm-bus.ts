/** What hangs on the direct-current side in a storm, and the volts at which it and the generator agree. */
import type { Machine } from '../machine/machine.ts'
import type { Converter, Load, Protection } from '../machine/supply-side.ts'
import { filamentResistance } from '../physics/electrics/hot-resistance.ts'
import { curvePower, plainLoad } from './load-balance.ts'

/** Dump load as the document or a guess states it. */
export type Dump = NonNullable<Protection['dump']>

/** Amps that the plain loads draw at a voltage, rising with it. */
export function loadCurrent(load: Load): (voltage: number) => number {
  if (load.kind === 'resistor') return (U) => U / load.resistance
  if (load.kind === 'heater') {
    const { cold, hot, ratedPower } = load
    const k = (hot - cold) / ratedPower
    // R² − R_cold R − k U² = 0
    return (U) => (2 * U) / (cold + Math.sqrt(Math.max(0, cold * cold + 4 * k * U * U)))
  }
  if (load.kind === 'lamp' && load.lamp === 'filament') {
    const cold = filamentResistance(load, 0)
    const { ratedPower, ratedVoltage } = load
    return (U) => Math.min(U / cold, (ratedPower / ratedVoltage) * (Math.max(U, 0) / ratedVoltage) ** 0.55)
  }
  if (load.kind === 'lamp') {
    const plain = plainLoad(load)
    if (plain?.kind === 'battery') return (U) => Math.max(0, (U - plain.voltage) / plain.resistance)
  }
  return () => 0
}

/** A source behind a resistance: a battery that also gives, or a charged capacitor. */
export interface Store {
  /** [V] */
  voltage: number
  /** [Ω] */
  readonly resistance: number
}

export interface BusLoads {
  readonly store: Store | undefined
  /** Drawn by the plain load, and by the dump where it is on. */
  readonly plain: (voltage: number) => number
  readonly dump: number
}

export interface Bus {
  /** [V] */
  readonly voltage: number
  /** From the generator [A]. */
  readonly current: number
}

/** Shares of the open voltage and of the store's volts to which the balance is found. */
const closeEnough = 1e-6
const mostSteps = 40

/** Falling f between `low` and `high` with f(low) ≥ 0 ≥ f(high): Illinois' false position, from a guess. */
function crossing(f: (x: number) => number, low: number, high: number, guess: number): number {
  let a = low
  let b = high
  let fa = f(a)
  if (fa <= 0) return a
  let fb = f(b)
  if (fb >= 0) return b
  const width = closeEnough * Math.max(high, 1e-12)
  let x = guess > a && guess < b ? guess : (a * fb - b * fa) / (fb - fa)
  let side = 0
  for (let step = 0; step < mostSteps && b - a > width; step++) {
    const fx = f(x)
    if (fx === 0) return x
    const before = x
    if (fx > 0) {
      a = x
      fa = fx
      if (side === 1) fb /= 2
      side = 1
    } else {
      b = x
      fb = fx
      if (side === -1) fa /= 2
      side = -1
    }
    x = (a * fb - b * fa) / (fb - fa)
    if (!(x > a && x < b)) x = (a + b) / 2
    if (Math.abs(x - before) < width) return x
  }
  return x
}

/**
 * The bus where generator and loads agree. `current` is what the generator gives at a voltage; `open` its volts with
 * nothing connected; `guess` where the search begins [V].
 */
export function settledBus(
  current: (voltage: number) => number,
  open: number,
  { store, plain, dump }: BusLoads,
  guess: number,
): Bus {
  const drawn = dump > 0 ? (U: number) => plain(U) + U / dump : plain
  if (store !== undefined && store.resistance <= 0)
    return { voltage: store.voltage, current: current(store.voltage) }
  const surplus =
    store === undefined
      ? (U: number) => current(U) - drawn(U)
      : (U: number) => current(U) - drawn(U) - (U - store.voltage) / store.resistance
  const voltage = crossing(surplus, 0, Math.max(open, store?.voltage ?? 0), guess)
  return { voltage, current: current(voltage) }
}

/**
 * Input of a converter at a speed: the highest volts at which the generator gives the power asked for beside a dump on
 * the same side, or nearly the most that it can give. Undefined where it stands still.
 */
export function converterBus(
  current: (voltage: number) => number,
  open: number,
  {
    converter,
    speed,
    dump,
  }: { readonly converter: Converter; readonly speed: number; readonly dump: number },
): Bus | undefined {
  const wanted = curvePower(converter, speed)
  if (!(wanted > 0) || open <= converter.leastInput) return undefined
  const left = (U: number) => current(U) - (dump > 0 ? U / dump : 0)
  const surplus = (U: number) => U * Math.min(left(U), converter.greatestInputCurrent) - wanted
  const middle = Math.max(0.55 * open, converter.leastInput)
  const voltage = surplus(middle) > 0 ? crossing(surplus, middle, open, 0.8 * open) : middle
  return { voltage, current: current(voltage) }
}

/** Whether electronics inside the battery take it off when it must not be charged: said, or usual for lithium cells. */
export const hasDisconnect = ({ load }: Pick<Machine, 'load'>): boolean =>
  load.kind === 'battery' && (load.disconnect !== undefined || load.chemistry.startsWith('Li'))
