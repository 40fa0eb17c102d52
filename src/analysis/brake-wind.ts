/** Up to which wind a shorted winding stops the rotor, keeps it stopped, and how hot the copper gets meanwhile. */
import { brakedShare, parkedSpeed, unloadedSpeed } from './braked-rotor.ts'
import { type Steps, within } from './step.ts'
import { storm } from './storm.ts'
import type { StormMachine } from './storm-machine.ts'
import type { StormWind } from './storm-wind.ts'

export interface BrakeEnd {
  /** Speed that it began at, and what it is after ten minutes [rad/s]. */
  readonly from: number
  readonly speed: number
  readonly holds: boolean
  /** Hottest of the ten minutes [K]. */
  readonly copperTemperature: number
  /** Greatest amps of a phase, rms [A]. */
  readonly phaseCurrent: number
}

export interface BrakeRow {
  readonly wind: number
  /** Shorted while it works, shorted after it has lost its load, and shorted while it stood. */
  readonly working: BrakeEnd
  readonly unloaded: BrakeEnd
  readonly parked: BrakeEnd
}

export interface BrakeStudy {
  readonly rows: readonly BrakeRow[]
  /** The highest wind up to which the working, the unloaded and the parked rotor are all held [m/s]; 0 for none. */
  readonly stops: number
  readonly stopsUnloaded: number
  readonly parks: number
}

/** As long as a brake is watched closely, and then for the sake of the copper [s]. */
const watched = 20
const soak = 580
/** Speed of a rotor that the wind just nudges, as a share of its unloaded speed. */
const nudge = 0.01

const steady = (wind: number): StormWind => ({
  kind: 'steady storm',
  words: 'a steady storm',
  at: () => wind,
  top: wind,
  rise: 0,
  duration: watched,
})

function* end(parts: StormMachine, wind: number, from: number): Steps<BrakeEnd> {
  const { chain } = parts
  const row = chain.rowAt(Math.min(wind, chain.machine.site.stormWind))
  const given = {
    event: 'nothing',
    at: 0,
    limiterWorks: false,
    shortWorks: true,
    dumpWorks: true,
    shortAt: 0,
    dump: undefined,
  } as const
  const run = yield* storm(parts, steady(wind), given, {
    from: { speed: from, copperTemperature: row.copperTemperature },
    soak,
  })
  const { speed } = run.last
  const parked = parkedSpeed(chain, wind)
  return {
    from,
    speed,
    holds: speed <= parked && (from <= parked || speed <= brakedShare * from),
    copperTemperature: run.most.copperTemperature,
    phaseCurrent: run.most.phaseCurrent,
  }
}

/** Every whole metre per second up to the storm, the mechanical limiter left out. Yields the fraction done. */
export function* brakeStudy(parts: StormMachine): Steps<BrakeStudy> {
  const { chain } = parts
  const top = chain.machine.site.stormWind
  const count = Math.max(1, Math.ceil(top - 1e-9))
  const rows: BrakeRow[] = []
  for (let k = 1; k <= count; k++) {
    const wind = Math.min(k, top)
    const width = 1 / count / 3
    const at = (k - 1) / count
    const unloadedFrom = unloadedSpeed(chain, wind)
    rows.push({
      wind,
      working: yield* within(end(parts, wind, chain.rowAt(wind).speed), at, width),
      unloaded: yield* within(end(parts, wind, unloadedFrom), at + width, width),
      parked: yield* within(end(parts, wind, nudge * unloadedFrom), at + 2 * width, width),
    })
  }
  const upTo = (which: 'working' | 'unloaded' | 'parked') => {
    const fails = rows.findIndex((row) => !row[which].holds)
    return fails < 0 ? top : fails === 0 ? 0 : rows[fails - 1]!.wind
  }
  return { rows, stops: upTo('working'), stopsUnloaded: upTo('unloaded'), parks: upTo('parked') }
}
