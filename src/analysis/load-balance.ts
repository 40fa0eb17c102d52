/** What heaters, lamps, capacitors and converters settle at: the point where the circuit and the load agree. */
import type { Machine } from '../machine/machine.ts'
import type { Converter, Load } from '../machine/supply-side.ts'
import { root } from '../numerics/root.ts'
import type { RectifierLoad, RectifierMeans, RectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import { converterOutput } from '../physics/electrics/converter.ts'
import { filamentResistance, heaterResistance } from '../physics/electrics/hot-resistance.ts'

/** What the circuit tells: its means, and where waveforms were asked for those and the extremes. */
export type CircuitPoint = RectifierMeans & Partial<RectifierPoint>

/** A point of the circuit with what stands behind the bridge in balance. */
export interface LoadPoint extends Omit<CircuitPoint, 'power'> {
  readonly power: CircuitPoint['power'] & {
    /** Lost in the converter [W]. */
    readonly converter: number
  }
  /** Mean into the load; behind a converter another than the bridge's [A]. */
  readonly loadCurrent: number
}

/** The circuit at one speed with a load of the simple kinds. */
export type CircuitOf = (load: RectifierLoad) => CircuitPoint

/** An LED lamp's string asks for this share of its label's volts before it shines: common practice, no source. */
const ledThresholdShare = 0.75

/** Shares of the load's own scale to which balances are found. */
const closeEnough = 1e-6

/** The load as the circuit knows it, where nothing has to be balanced first. */
export function plainLoad(load: Load): RectifierLoad | undefined {
  if (load.kind === 'battery' || load.kind === 'resistor' || load.kind === 'open') return load
  if (load.kind !== 'lamp' || load.lamp !== 'LED') return undefined
  const { ratedVoltage, ratedPower } = load
  const series = ((1 - ledThresholdShare) * ratedVoltage ** 2) / ratedPower
  return { kind: 'battery', voltage: ledThresholdShare * ratedVoltage, resistance: series }
}

/** Voltage that must be passed before current flows [V]. */
export function loadThreshold({ load, converter }: Pick<Machine, 'load' | 'converter'>): number {
  if (converter !== undefined) return converter.leastInput
  const plain = plainLoad(load)
  return plain?.kind === 'battery' ? plain.voltage : 0
}

/** Mean power of what behaves as a resistance that its own power sets. */
function warmed(circuit: CircuitOf, resistanceAt: (power: number) => number): CircuitPoint {
  const solved = (resistance: number) => circuit({ kind: 'resistor', resistance })
  const miss = (resistance: number) => resistanceAt(solved(resistance).power.load) - resistance
  let low = resistanceAt(0)
  let high = low
  for (let k = 0; k < 40 && miss(high) > 0; k++) {
    low = high
    high *= 1.6
  }
  return solved(high > low ? root(miss, [low, high], closeEnough * high) : low)
}

/** Volts that a capacitor holds when as much is drawn as arrives. */
function charged(circuit: CircuitOf, load: Load & { kind: 'capacitor' }, peak: number): CircuitPoint {
  const { resistance: esr, drawn } = load
  const share = drawn / (drawn + esr)
  const behind = (volts: number) =>
    circuit({ kind: 'battery', voltage: share * volts, resistance: share * esr })
  const surplus = (volts: number) => behind(volts).dcCurrent - volts / drawn
  if (!(peak > 0) || surplus(0) <= 0) return behind(0)
  const volts = root(surplus, [0, peak], closeEnough * peak)
  const point = behind(volts)
  const { power, dcCurrent, dcCurrentRms } = point
  const taken = power.load + power.batteryResistance
  const ripple = Math.max(0, dcCurrentRms ** 2 - dcCurrent ** 2)
  const useful = Math.min(taken, (volts ** 2 + (share * esr) ** 2 * ripple) / drawn)
  return {
    ...point,
    loadVoltage: volts,
    power: { ...power, load: useful, batteryResistance: taken - useful },
  }
}

/** Power that the curve asks for at a speed [W]; as at its last point beyond it. */
export function curvePower({ curve }: Converter, speed: number): number {
  const after = curve.findIndex((point) => point.speed > speed)
  if (after === 0) return 0
  if (after < 0) return curve[curve.length - 1]!.power
  const [a, b] = [curve[after - 1]!, curve[after]!]
  return a.power + ((b.power - a.power) * (speed - a.speed)) / (b.speed - a.speed)
}

/** Brackets narrower than this share of the volts are not searched further for the most power. */
const peakWidth = 0.02

/**
 * The input of a converter: at the highest volts at which the bridge gives the power asked for, or the most that it
 * can give. Above the battery's volts a boost converter lets the current through by itself.
 */
function drawnInput(
  circuit: CircuitOf,
  converter: Converter,
  { speed, peak, batteryVoltage }: { speed: number; peak: number; batteryVoltage: number },
): { readonly point: CircuitPoint; readonly voltage: number } | undefined {
  const at = (voltage: number) => circuit({ kind: 'battery', voltage, resistance: 0 })
  const asked = (voltage: number) =>
    Math.min(curvePower(converter, speed), voltage * converter.greatestInputCurrent)
  if (peak > batteryVoltage) {
    const through = at(batteryVoltage)
    if (through.power.load >= asked(batteryVoltage) && through.power.load > 0)
      return { point: through, voltage: batteryVoltage }
  }
  const top = Math.min(peak, batteryVoltage)
  const least = Math.max(converter.leastInput, 1e-3 * peak)
  if (!(top > least) || curvePower(converter, speed) <= 0) return undefined
  const surplus = (voltage: number) => at(voltage).power.load - asked(voltage)
  // power over volts has one top, near half of the open circuit's
  let [low, high] = [least, top]
  let middle = Math.max(least, 0.5 * peak)
  if (middle >= top) middle = (least + top) / 2
  let most = surplus(middle)
  while (most < 0 && high - low > peakWidth * top) {
    const [left, right] = [(low + middle) / 2, (middle + high) / 2]
    const [atLeft, atRight] = [surplus(left), surplus(right)]
    if (atLeft > most && atLeft >= atRight) {
      high = middle
      middle = left
      most = atLeft
    } else if (atRight > most) {
      low = middle
      middle = right
      most = atRight
    } else {
      low = left
      high = right
    }
  }
  const voltage = most > 0 && surplus(top) < 0 ? root(surplus, [middle, top], closeEnough * top) : middle
  return { point: at(voltage), voltage }
}

function converted(
  machine: Machine,
  converter: Converter,
  circuit: CircuitOf,
  speed: number,
  peak: number,
): LoadPoint {
  const battery = machine.load
  if (battery.kind !== 'battery') throw new RangeError('a converter stands before a battery')
  const drawn = drawnInput(circuit, converter, { speed, peak, batteryVoltage: battery.voltage })
  if (drawn === undefined) {
    const open = circuit({ kind: 'open' })
    return { ...open, loadVoltage: battery.voltage, power: { ...open.power, converter: 0 }, loadCurrent: 0 }
  }
  const { point, voltage } = drawn
  const input = point.power.load
  const output = input > 0 ? converterOutput(converter.loss, { voltage, power: input }) : 0
  const { voltage: U, resistance: R } = battery
  // U I + R I² = output
  const current = R > 0 ? (Math.sqrt(U * U + 4 * R * output) - U) / (2 * R) : output / U
  return {
    ...point,
    loadVoltage: U + R * current,
    loadCurrent: current,
    power: {
      ...point.power,
      converter: input - output,
      batteryResistance: R * current * current,
      load: U * current,
    },
  }
}

/** The machine's own load in balance. `peak` is the highest direct voltage with nothing connected [V]. */
export function balancedPoint(
  machine: Machine,
  circuit: CircuitOf,
  { speed, peak }: { readonly speed: number; readonly peak: number },
): LoadPoint {
  const { load, converter } = machine
  if (converter !== undefined) return converted(machine, converter, circuit, speed, peak)
  const whole = (point: CircuitPoint): LoadPoint => ({
    ...point,
    power: { ...point.power, converter: 0 },
    loadCurrent: point.dcCurrent,
  })
  const plain = plainLoad(load)
  if (plain !== undefined) {
    const point = circuit(plain)
    if (load.kind !== 'lamp') return whole(point)
    const { power } = point
    return whole({
      ...point,
      power: { ...power, load: power.load + power.batteryResistance, batteryResistance: 0 },
    })
  }
  if (load.kind === 'capacitor') return whole(charged(circuit, load, peak))
  return whole(
    warmed(circuit, (power) =>
      load.kind === 'heater'
        ? heaterResistance(load, power)
        : filamentResistance(load as Load & { kind: 'lamp' }, power),
    ),
  )
}
