/** Volts and amps that conductors, switches and fuses meet: in work, in a storm, without load, shorted. */
import type { Machine } from '../machine/machine.ts'
import type { Chain } from './compute.ts'
import { settledSpeed } from './match.ts'
import { hottest, limiterWind } from './power-curve.ts'
import { shortCircuit } from './short-circuit.ts'
import type { Watts } from './watts.ts'

export interface Duty {
  readonly wind: number
  /** [rad/s] */
  readonly speed: number
  /** Behind the bridge, mean [V], [A]. */
  readonly directVoltage: number
  readonly directCurrent: number
  /** Largest of the line wires, rms [A]. */
  readonly lineCurrent: number
  readonly loadVoltage: number
  readonly loadCurrent: number
  /** What arrives behind the cable: the power that a dump load must take in the load's place [W]. */
  readonly power: number
}

/** Whether a mechanical limiter holds the rotor in the storm, if it does not stick. */
export const mechanicalHolds = (machine: Machine): boolean =>
  machine.protection.mechanical !== 'none' && limiterWind(machine) < machine.site.stormWind

/** Current of a line wire over that of a phase. */
export const lineShare = ({ stator }: Machine, phases: number): number =>
  stator.connection === 'delta' && phases > 1 ? Math.sqrt(3) : 1

interface Electric {
  readonly watts: Watts
  readonly dcCurrent: number
  readonly loadCurrent: number
  readonly loadVoltage: number
  readonly phaseCurrent: number
}

function dutyOf({ machine, voltage }: Wound, wind: number, speed: number, state: Electric): Duty {
  const { watts, dcCurrent, loadCurrent, loadVoltage, phaseCurrent } = state
  const power = watts.useful + watts.battery + watts.converter
  const behind = power + (machine.cable.place === 'after bridge' ? watts.cable : 0)
  return {
    wind,
    speed,
    directVoltage: dcCurrent > 0 ? behind / dcCurrent : loadVoltage,
    directCurrent: dcCurrent,
    lineCurrent: lineShare(machine, voltage.phases.length) * phaseCurrent,
    loadVoltage,
    loadCurrent,
    power,
  }
}

type Wound = Pick<Chain, 'machine' | 'voltage'>

/** The greatest of each over all winds, the limiter at work; undefined where no current ever flows. */
export function workingDuty(chain: Wound & Pick<Chain, 'rows'>): Duty | undefined {
  let most: Duty | undefined
  for (const row of chain.rows) {
    if (!(row.dcCurrent > 0) || !Number.isFinite(row.dcCurrent)) continue
    const here = dutyOf(chain, row.wind, row.speed, row)
    if (most === undefined) {
      most = here
      continue
    }
    // the wind is that of the most power
    const { wind } = here.power > most.power ? here : most
    const before: Duty = most
    const greater = (key: keyof Duty) => Math.max(before[key], here[key])
    most = {
      wind,
      speed: greater('speed'),
      directVoltage: greater('directVoltage'),
      directCurrent: greater('directCurrent'),
      lineCurrent: greater('lineCurrent'),
      loadVoltage: greater('loadVoltage'),
      loadCurrent: greater('loadCurrent'),
      power: greater('power'),
    }
  }
  return most
}

/** The storm with the load connected and the mechanical limiter stuck; undefined where none could stick. */
export function stuckDuty(chain: Wound & Pick<Chain, 'rows' | 'blades' | 'generator'>): Duty | undefined {
  const { machine, blades, generator, rows } = chain
  if (!mechanicalHolds(machine)) return undefined
  const wind = machine.site.stormWind
  const copper = rows.reduce((most, row) => Math.max(most, row.copperTemperature), machine.site.ambient)
  const temperature = Math.min(copper, hottest)
  const speed = settledSpeed(
    (at) => blades.power(wind, at),
    (at) => generator.shaftPower(at, temperature),
    { from: rows.reduce((most, row) => Math.max(most, row.speed), 0), fastest: blades.fastest(wind) },
  )
  return dutyOf(chain, wind, speed, generator.at(speed, temperature))
}

/** Mean behind a bridge whose output is shorted, over the rms of a line: three phases and one. */
const shortedBridge = (phases: number): number =>
  phases >= 3 ? (3 * Math.SQRT2) / Math.PI : (2 * Math.SQRT2) / Math.PI

export interface ShortedDuty {
  readonly lineCurrent: number
  /** Through a short behind the bridge, mean, the diodes' drop left out [A]. */
  readonly directCurrent: number
}

/** The steady short at the speed without load in the storm, copper as cold as the air: the most amps. */
export function shortedDuty(chain: Wound & Pick<Chain, 'runaway'>): ShortedDuty {
  const { machine, voltage, runaway } = chain
  const behind = machine.protection.short.place === 'after the bridge'
  const at = shortCircuit(machine, voltage, behind ? 'far end' : 'leads')
  const { phaseCurrent } = at(runaway.speed, machine.site.ambient)
  const phases = voltage.phases.length
  const lineCurrent = lineShare(machine, phases) * phaseCurrent
  return { lineCurrent, directCurrent: shortedBridge(phases) * lineCurrent }
}
