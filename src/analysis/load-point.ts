/** The machine at one speed and copper temperature with its bridge, cable and load: amps, volts and watts. */
import type { Machine } from '../machine/machine.ts'
import { fourierSeries } from '../numerics/fourier.ts'
import { type RectifierInput, rectifierMeans, rectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import { resistanceRatio } from '../physics/electrics/resistance.ts'
import { openingSpeed } from './bridge-opening.ts'
import { balancedPoint, type CircuitPoint, type LoadPoint, loadThreshold, plainLoad } from './load-balance.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import { loopLosses, seenCircuit } from './turn-loop.ts'

/** R at `temperature` over R at 20 °C. */
export const copperRatio = ({ stator }: Machine, temperature: number): number =>
  resistanceRatio({
    temperature,
    coefficient: stator.wire.temperatureCoefficient,
  })

export interface LoadPointRequest {
  /** Ω of the shaft [rad/s]. */
  readonly speed: number
  /** [K] */
  readonly copperTemperature: number
  /** In place of the machine's own load. */
  readonly load?: RectifierInput['load']
  /** Points of the waveforms; without, the means alone are told. */
  readonly samples?: number
}

/** The rectifier's view of the machine. */
export function rectifierInput(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { speed, copperTemperature, load }: LoadPointRequest,
): RectifierInput {
  const { cable, diode, stator } = machine
  const ratio = copperRatio(machine, copperTemperature)
  const loop = stator.connection === 'single' || stator.connection === 'separate'
  const before = cable.place === 'before bridge'
  const { emf, resistance, inductance } = seenCircuit(voltage, { speed, copperRatio: ratio })
  return {
    connection: stator.connection,
    emf,
    frequency: (voltage.base * speed) / (2 * Math.PI),
    resistance,
    inductance,
    lineResistance: before ? cable.conductorResistance * (loop ? 2 : 1) : 0,
    dcResistance: (before ? 0 : 2 * cable.conductorResistance) + cable.seriesResistance,
    diode: { threshold: diode.threshold, slope: diode.slope },
    diodeFaults: machine.defects.diodeFaults,
    load: load ?? plainLoad(machine.load) ?? { kind: 'open' },
  }
}

/** Samples of a working period, and orders of it, that tell what the phases' currents do to shorted turns. */
const loopSamples = 128
const loopOrders = 40

/** Puts the heat of shorted turns, as they carry it, in the place of what the phases saw of it. */
function withLoops(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { speed, copperTemperature }: LoadPointRequest,
  point: CircuitPoint,
): CircuitPoint {
  const state = { speed, copperRatio: copperRatio(machine, copperTemperature) }
  const { reflected } = seenCircuit(voltage, state)
  const current = point.waveforms!.phaseCurrent.map((samples) =>
    fourierSeries(samples, loopOrders * voltage.order),
  )
  const seen = point.phaseCurrentRms.reduce((sum, I, k) => sum + I * I * reflected[k]!, 0)
  const heat = loopLosses(voltage, state, current).reduce((sum, loss) => sum + loss, 0) - seen
  const { power } = point
  return { ...point, power: { ...power, shaft: power.shaft + heat, winding: power.winding + heat } }
}

/** The machine with a load of the simple kinds: the one asked for. */
function circuitPoint(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  request: LoadPointRequest,
): CircuitPoint {
  const input = rectifierInput(machine, voltage, request)
  const { samples } = request
  if (voltage.loops.length === 0 || !(request.speed > 0))
    return samples === undefined ? rectifierMeans(input) : rectifierPoint(input, { samples })
  const fine = rectifierPoint(input, { samples: loopSamples * voltage.order })
  const point = withLoops(machine, voltage, request, fine)
  const { waveforms: _, ...bare } = point
  return samples === undefined ? bare : { ...point, waveforms: rectifierPoint(input, { samples }).waveforms! }
}

/** The machine with its own load in balance, or with the load asked for. */
export function loadPoint(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  request: LoadPointRequest,
): LoadPoint {
  if (request.load !== undefined) {
    const point = circuitPoint(machine, voltage, request)
    return { ...point, power: { ...point.power, converter: 0 }, loadCurrent: point.dcCurrent }
  }
  const peak = Math.max(0, voltage.greatestLinePeak * request.speed - 2 * machine.diode.threshold)
  return balancedPoint(machine, (load) => circuitPoint(machine, voltage, { ...request, load }), {
    speed: request.speed,
    peak,
  })
}

/**
 * Speed at which the first diode opens: the line's peak reaches the load's threshold and two of the diodes. A
 * converter waits for its curve as well [rad/s].
 */
export function cutInSpeed(machine: Machine, voltage: OpenCircuitVoltage): number {
  const byVolts = openingSpeed(machine, voltage, loadThreshold(machine))
  const { converter, load } = machine
  if (converter === undefined || load.kind !== 'battery') return byVolts
  const asks = converter.curve.findIndex(({ power }) => power > 0)
  const byCurve = asks < 0 ? Number.POSITIVE_INFINITY : converter.curve[Math.max(0, asks - 1)]!.speed
  const through = openingSpeed(machine, voltage, load.voltage)
  return Math.min(Math.max(byVolts, byCurve), through)
}
