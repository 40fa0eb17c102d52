/** The results that carry a spread, and how each is read off a chain. */
import { hottest, type PowerCurve, type WindRow, windStep } from './power-curve.ts'
import type { SampledChain } from './sampled-chain.ts'

/** What stays the same from draw to draw, so that one question is asked of all. */
export interface AskedWinds {
  /** For which the machine is told [m/s]. */
  readonly telling: number
  /** Of the table of winds, next to the site's mean wind and to twice as much [m/s]. */
  readonly mean: number
  readonly strong: number
}

/** A draw of the chain, and which of two states it is in where the wind leaves it both: −1 falling winds' … 1 rising winds'. */
export interface Draw {
  readonly chain: SampledChain
  readonly asked: AskedWinds
  readonly way: number
}

const rowOf = ({ rising, rowAt }: PowerCurve, wind: number): WindRow =>
  rising.find((row) => Math.abs(row.wind - wind) < 1e-9) ?? rowAt(wind)

/** Useful power in each of these winds, a rising one [W]. */
export const usefulCurve = ({ chain: { curve } }: Pick<Draw, 'chain'>, winds: readonly number[]): number[] =>
  winds.map((wind, k) => {
    const row = curve.rising[k]
    return (row !== undefined && Math.abs(row.wind - wind) < 1e-9 ? row : rowOf(curve, wind)).watts.useful
  })

/** Of the table, between its ends [m/s]. */
export function tableWind(wind: number, stormWind: number): number {
  const rows = Math.ceil(stormWind / windStep - 1e-9)
  return windStep * Math.min(Math.max(Math.round(wind / windStep), 1), rows)
}

/** Their names and how to read them off a draw, in SI units; infinite where it never happens. */
export const spreadOutputs = {
  energy: ({ chain: { energy }, way }: Draw) =>
    (energy.rising + energy.falling) / 2 + (way * (energy.rising - energy.falling)) / 2,
  usefulPower: ({ chain: { curve }, asked }: Draw) => rowOf(curve, asked.telling).watts.useful,
  meanWindPower: ({ chain: { curve }, asked }: Draw) => rowOf(curve, asked.mean).watts.useful,
  strongWindPower: ({ chain: { curve }, asked }: Draw) => rowOf(curve, asked.strong).watts.useful,
  startWind: ({ chain }: Draw) => chain.startWind,
  cutInSpeed: ({ chain }: Draw) => chain.generator.cutIn,
  cutInWind: ({ chain }: Draw) => chain.cutInWind,
  phaseVoltage: ({ chain }: Draw) => chain.voltage.phases[0]!.rms,
  copperTemperature: ({ chain: { curve }, asked }: Draw) => rowOf(curve, asked.telling).copperTemperature,
  hottestCopper: ({ chain: { curve } }: Draw) =>
    Math.min(hottest, Math.max(...curve.rising.map(({ copperTemperature }) => copperTemperature))),
  runawaySpeed: ({ chain }: Draw) => chain.runaway.speed,
  runawayVoltage: ({ chain }: Draw) => chain.runaway.directVoltage,
  magnetForce: ({ chain }: Draw) => chain.runaway.magnetForce,
} as const satisfies Record<string, (draw: Draw) => number>

export type SpreadOutput = keyof typeof spreadOutputs

export const spreadOutputNames = Object.keys(spreadOutputs) as readonly SpreadOutput[]
