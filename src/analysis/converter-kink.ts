/** Speeds at which a machine behind a converter changes its way of working: a table must have them among its nodes. */
import type { Machine } from '../machine/machine.ts'
import { root } from '../numerics/root.ts'
import { curvePower } from './load-balance.ts'
import { loadPoint } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

const scanSteps = 12

/**
 * Points of the curve of power, and where the battery begins to take more by itself than the curve asks for, in
 * `range` [rad/s]; none without a converter.
 */
export function converterKinks(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  {
    range: [slowest, fastest],
    copperTemperature,
  }: { range: readonly [number, number]; copperTemperature: number },
): number[] {
  const { converter, load, diode } = machine
  if (converter === undefined || load.kind !== 'battery') return []
  const battery = { kind: 'battery', voltage: load.voltage, resistance: 0 } as const
  const surplus = (speed: number) =>
    loadPoint(machine, voltage, { speed, copperTemperature, load: battery }).power.load -
    curvePower(converter, speed)
  const opens = Math.max(slowest, (2 * diode.threshold + load.voltage) / voltage.greatestLinePeak)
  const through: number[] = []
  let before = opens
  let left = -1
  for (let k = 1; k <= scanSteps && opens < fastest; k++) {
    const speed = opens + (fastest - opens) * (k / scanSteps) ** 2
    const right = surplus(speed)
    if (left < 0 !== right < 0) through.push(root(surplus, [before, speed], 1e-4 * fastest))
    before = speed
    left = right
  }
  return [...converter.curve.map(({ speed }) => speed), opens, ...through].filter(
    (speed) => speed > slowest && speed < fastest,
  )
}
