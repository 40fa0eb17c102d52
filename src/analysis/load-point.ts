/** The machine at one speed and copper temperature with its bridge, cable and load: amps, volts and watts. */
import type { Machine } from '../machine/machine.ts'
import { seriesScaled } from '../numerics/fourier.ts'
import {
  type RectifierInput,
  type RectifierPoint,
  rectifierPoint,
} from '../physics/electrics/bridge-rectifier.ts'
import { resistanceRatio } from '../physics/electrics/resistance.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

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
  /** Points of the waveforms; none without. */
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
  return {
    connection: stator.connection,
    emf: voltage.phases.map(({ emf }) => seriesScaled(emf, speed)),
    frequency: (voltage.base * speed) / (2 * Math.PI),
    resistance: voltage.phases.map(({ resistance }) => resistance * ratio),
    inductance: voltage.inductance,
    lineResistance: before ? cable.conductorResistance * (loop ? 2 : 1) : 0,
    dcResistance: before ? 0 : 2 * cable.conductorResistance,
    diode: { threshold: diode.threshold, slope: diode.slope },
    load: load ?? machine.load,
  }
}

export const loadPoint = (
  machine: Machine,
  voltage: OpenCircuitVoltage,
  request: LoadPointRequest,
): RectifierPoint =>
  rectifierPoint(
    rectifierInput(machine, voltage, request),
    request.samples === undefined ? {} : { samples: request.samples },
  )

/** Ideal diodes into a resistor conduct from rest on; their table begins at this [V]. */
const leastBarrier = 1e-3

/** Speed at which the first diode opens: the line's peak reaches the battery and two thresholds [rad/s]. */
export function cutInSpeed({ load, diode }: Machine, { greatestLinePeak }: OpenCircuitVoltage): number {
  const barrier = 2 * diode.threshold + (load.kind === 'battery' ? load.voltage : 0)
  return greatestLinePeak > 0 ? Math.max(barrier, leastBarrier) / greatestLinePeak : Number.POSITIVE_INFINITY
}
