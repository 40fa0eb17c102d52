/** Volts round the open corner of a delta, order by order: what drives current as soon as it is closed. */
import { harmonicAmplitude, seriesRms, seriesSum } from '../numerics/fourier.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

export interface CornerOrder {
  /** Of the working harmonic: 1 the fundamental, which only unlike phases leave; 3, 9, 15 … stand in step in all three. */
  readonly order: number
  /** Over the shaft's speed, rms [V·s/rad]. */
  readonly rms: number
}

export interface OpenCorner {
  /** All orders together, over the shaft's speed [V·s/rad]. */
  readonly rms: number
  /** The strongest, the strongest first. */
  readonly orders: readonly CornerOrder[]
}

/** Orders below this share of the corner's volts are left out. */
const leastShare = 0.01

export function openCorner({ phases, order }: Pick<OpenCircuitVoltage, 'phases' | 'order'>): OpenCorner {
  const sum = seriesSum(phases.map(({ emf }) => emf))
  const rms = seriesRms(sum)
  const orders = Array.from(sum.cos, (_, h) => ({
    order: h / order,
    rms: harmonicAmplitude(sum, h) / Math.SQRT2,
  }))
    .slice(1)
    .filter((one) => one.rms > leastShare * rms)
    .sort((a, b) => b.rms - a.rms)
  return { rms, orders }
}
