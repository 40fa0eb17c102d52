/** What a machine comes to for its match: the figures by which remedies are weighed, read off a computed chain. */
import type { Chain } from '../compute.ts'

export interface MatchFigures {
  /** Of a year [J]. */
  readonly energy: number
  /** Into the load in the wind that is told [W]. */
  readonly usefulPower: number
  /** Winds of the table in which a rising wind ends in stall. */
  readonly stalledWinds: number
  /** [m/s]; infinite where never. */
  readonly startWind: number
  readonly cutInWind: number
  /** Hottest copper of any wind [K]. */
  readonly hottestCopper: number
  /** Load lost in the storm [rad/s], [V]. */
  readonly runawaySpeed: number
  readonly runawayVolts: number
  /** Copper of winding and cable together [kg]. */
  readonly copperMass: number
  /** Burnt in cable and resistor in the wind that is told, and in the hardest wind [W]. */
  readonly cablePower: number
  readonly greatestCablePower: number
  /** In the converter, likewise [W]. */
  readonly converterPower: number
  readonly greatestConverterPower: number
  /** Codes of what blocks the design's class, and of its warnings. */
  readonly blocking: readonly string[]
  readonly warnings: readonly string[]
}

const copperDensity = 8890

/** Conductors that the cable has: one a line before the bridge, plus and minus after it. */
export function cableConductors({ machine, voltage }: Pick<Chain, 'machine' | 'voltage'>): number {
  if (machine.cable.place === 'after bridge') return 2
  const { connection } = machine.stator
  return connection === 'star' || connection === 'delta' ? voltage.phases.length : 2 * voltage.phases.length
}

export function matchFigures(chain: Chain, wind: number): MatchFigures {
  const { machine, rows } = chain
  const row = chain.rowAt(wind)
  const { length, area } = machine.cable
  const codes = (severity: 'blocking' | 'warning') =>
    chain.concerns.filter((each) => each.severity === severity).map(({ code }) => code)
  return {
    energy: chain.year.energy,
    usefulPower: row.watts.useful,
    stalledWinds: rows.filter(({ state }) => state === 'stalled').length,
    startWind: chain.startWind,
    cutInWind: chain.cutInWind,
    hottestCopper: Math.max(...rows.map(({ copperTemperature }) => copperTemperature)),
    runawaySpeed: chain.runaway.speed,
    runawayVolts: chain.runaway.directVoltage,
    copperMass: chain.wound.copperMass + cableConductors(chain) * length * area * copperDensity,
    cablePower: row.watts.cable,
    greatestCablePower: Math.max(...rows.map(({ watts }) => watts.cable)),
    converterPower: row.watts.converter,
    greatestConverterPower: Math.max(...rows.map(({ watts }) => watts.converter)),
    blocking: codes('blocking'),
    warnings: codes('warning'),
  }
}
