/** A battery's state of charge by its voltage at rest, and the other way round. */
import type { Load } from '../machine/supply-side.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'

export type Battery = Load & { readonly kind: 'battery' }

/** Voltage at rest at a state of charge from 0 to 1 [V]; outside, that of the end. */
export const restVoltage = ({ rest }: Battery, charge: number): number =>
  piecewiseLinear(
    rest.map((point) => point.charge),
    rest.map((point) => point.voltage),
  )(Math.min(1, Math.max(0, charge)))

/** State of charge from 0 to 1 of a battery that stands at a voltage; empty below the table, full above it. */
export function chargeAtRest({ rest }: Battery, voltage: number): number {
  const volts = rest.map((point) => point.voltage)
  const bounded = Math.min(volts[volts.length - 1]!, Math.max(volts[0]!, voltage))
  return piecewiseLinear(
    volts,
    rest.map((point) => point.charge),
  )(bounded)
}
