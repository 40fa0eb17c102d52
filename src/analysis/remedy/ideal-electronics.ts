/** The bound that no electronics pass: in every wind the best speed, currents in step with the volts, nothing lost behind. */
import type { Chain } from '../compute.ts'
import { copperRatio } from '../load-point.ts'
import { hottest, limiterWind, type WindRow } from '../power-curve.ts'
import { noWatts } from '../watts.ts'
import { year } from '../year.ts'

type IdealChain = Pick<
  Chain,
  | 'machine'
  | 'blades'
  | 'voltage'
  | 'drag'
  | 'circulating'
  | 'cooling'
  | 'startWind'
  | 'rows'
  | 'fallingRows'
  | 'rowAt'
  | 'generator'
>

const speedCount = 60
const copperRounds = 4

/**
 * Watts out of the winding at a speed when the shaft brings `shaft`: the copper burns least, P²/Σ(E²/R), when every
 * phase carries current in step with its EMF and in proportion to E/R.
 */
function windingPower(chain: IdealChain, speed: number, shaft: number): number {
  const { machine, voltage, drag, circulating, cooling } = chain
  const { friction, eddy, parts } = drag.at(speed)
  const inner = shaft - friction - eddy - parts - circulating.branches(speed)
  if (!(inner > 0)) return 0
  const cold = voltage.phases.reduce((sum, { rms, resistance }) => sum + (rms * speed) ** 2 / resistance, 0)
  if (!(cold > 0)) return 0
  let temperature = machine.site.ambient
  let copper = 0
  for (let round = 0; round < copperRounds; round++) {
    copper = (inner ** 2 * copperRatio(machine, temperature)) / cold
    temperature = Math.min(machine.site.ambient + cooling.resistance(speed) * (copper + eddy), hottest)
  }
  return Math.max(0, inner - copper)
}

export interface IdealPoint {
  /** [rad/s] */
  readonly speed: number
  /** From the blades, and out of the winding [W]. */
  readonly shaft: number
  readonly power: number
}

/** Where blades and winding together give most in a wind; faster than the blades' best where the copper burns much. */
export function idealPoint(chain: IdealChain, wind: number): IdealPoint {
  const fastest = chain.blades.fastest(wind)
  let most: IdealPoint = { speed: 0, shaft: 0, power: 0 }
  for (let k = 1; k < speedCount; k++) {
    const speed = (fastest * k) / speedCount
    const shaft = chain.blades.power(wind, speed)
    const power = windingPower(chain, speed, shaft)
    if (power > most.power) most = { speed, shaft, power }
  }
  return most
}

/** None below the wind that starts the rotor. */
const idealPower = (chain: IdealChain, wind: number): number =>
  wind < chain.startWind ? 0 : idealPoint(chain, wind).power

export interface IdealFigures {
  /** Of a year [J], and in the wind asked for [W]. */
  readonly energy: number
  readonly power: number
}

export function idealElectronics(chain: IdealChain, wind: number): IdealFigures {
  const { machine } = chain
  const limit = machine.protection.mechanical === 'none' ? Number.POSITIVE_INFINITY : limiterWind(machine)
  const at = (each: number) => idealPower(chain, Math.min(each, limit))
  const rising = chain.rows.map((row): WindRow => ({ ...row, watts: { ...noWatts, useful: at(row.wind) } }))
  return {
    energy: year(machine, { rising, falling: rising, rowAt: chain.rowAt }).energy,
    power: at(wind),
  }
}
