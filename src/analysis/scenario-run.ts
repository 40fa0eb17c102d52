/** One scenario run on a machine: its wind, its moment, the storm that it is, and what its guesses would change. */
import { constants } from '../data/constant.ts'
import type { Machine } from '../machine/machine.ts'
import { sweptArea } from '../machine/swept-area.ts'
import { centrifugalForce } from '../physics/mechanics/retention.ts'
import { throwDistance } from '../physics/mechanics/throw-distance.ts'
import { dumpResistance } from './concern/load-loss.ts'
import { bladeMap } from './match.ts'
import { limiterWind } from './power-curve.ts'
import { type Scenario, stormCase, winterAir } from './scenario.ts'
import { copperLimit } from './scenario-limit.ts'
import { type Steps, within } from './step.ts'
import { type Storm, storm } from './storm.ts'
import type { Dump } from './storm-bus.ts'
import type { StormChain } from './storm-chain.ts'
import type { StormMachine } from './storm-machine.ts'
import { gustAbout, risingWind, type StormWind, steadyWind, stormWind } from './storm-wind.ts'
import { tellingWind } from './telling-wind.ts'

/** A magnet on its way: mass of it, or of the pieces of one pole, speed, energy, and how far without air at the most. */
export interface Flight {
  readonly mass: number
  readonly speed: number
  readonly energy: number
  readonly distance: number
}

/** What a rotor without one of its magnets is. */
export interface Unbalanced {
  /** Greatest force round with the rotor [N], at this speed [rad/s]. */
  readonly force: number
  readonly speed: number
  /** Undefined where it was missing from the start. */
  readonly flight: Flight | undefined
  /** Largest line volts over those of the whole rotor [1]. */
  readonly volts: number
  /** Strongest order below the working one, of a phase, over the working one [1]. */
  readonly subharmonic: number
}

export interface ScenarioRun {
  readonly storm: Storm
  readonly unbalanced: Unbalanced | undefined
}

/** The copper is followed for ten minutes in all, in the wind that the storm ends with; at work for two hours [s]. */
const watched = 600
const worked = 7200

/** The dump as the document states it; where it only says that there is one, a resistor for the most useful watts. */
export function dumpOf(chain: StormChain): { readonly dump: Dump | undefined; readonly guessed: boolean } {
  const { protection, load } = chain.machine
  if (protection.dump !== undefined) return { dump: protection.dump, guessed: false }
  if (protection.electrical !== 'dump load' || load.kind !== 'battery')
    return { dump: undefined, guessed: false }
  const power = Math.max(...chain.rows.map(({ watts }) => watts.useful), 1)
  const on = load.band[1]
  return {
    dump: {
      resistance: dumpResistance({ voltage: on, power }),
      power,
      on,
      off: Math.max(load.voltage, 0.95 * on),
      place: 'behind the bridge',
      withoutPower: 'off',
      ownFuse: true,
    },
    guessed: true,
  }
}

/** Past the wind that starts it and the wind in which current begins, by this factor. */
const pastCutIn = 1.25

/** Steady wind of its work: where its mechanical limiter acts, else the one that it is best told by [m/s]. */
export function ratedWind(chain: StormChain): number {
  const { machine } = chain
  const acts = machine.protection.mechanical === 'none' ? Number.POSITIVE_INFINITY : limiterWind(machine)
  return acts < machine.site.stormWind ? acts : tellingWind(chain).row.wind
}

export function scenarioWind(chain: StormChain, { wind }: Scenario, asked: StormWind): StormWind {
  const { machine, startWind, cutInWind } = chain
  const { stormWind: top } = machine.site
  switch (wind) {
    case 'storm':
      return asked
    case 'rising':
      return risingWind(Math.min(top, pastCutIn * Math.max(startWind, cutInWind, 1)))
    case 'rated':
      return steadyWind(ratedWind(chain))
    case 'operating gust':
      return gustAbout(machine, ratedWind(chain))
    case 'extreme gust':
      return stormWind(machine, 'extreme gust', top)
  }
}

/** When the wind is highest [s]. */
function topTime(wind: StormWind): number {
  let best = 0
  for (let k = 0; k <= 400; k++) {
    const time = (wind.duration * k) / 400
    if (wind.at(time) > wind.at(best)) best = time
  }
  return Math.max(best, wind.rise)
}

/** The machine in winter's air: denser in proportion to its absolute temperature. */
function inWinter(parts: StormMachine): StormMachine {
  const { chain } = parts
  const { machine, rotor, airDensity } = chain
  const night = winterAir(machine)
  const cold: Machine = { ...machine, site: { ...machine.site, ambient: night } }
  const blades = bladeMap(rotor, {
    density: (airDensity * machine.site.ambient) / night,
    radius: machine.blades.radius,
    area: sweptArea(machine.blades),
  })
  return { ...parts, chain: { ...chain, machine: cold, blades } }
}

/** Volts and what stirs below their working order, once a magnet is gone. */
function missing({ winding, chain }: StormMachine): Pick<Unbalanced, 'volts' | 'subharmonic'> {
  const off = winding['magnet off']!.voltage
  const { voltage } = chain
  const most = (volts: typeof off) => Math.max(...volts.lines.map(({ rms }) => rms))
  let below = 0
  for (const { emf, fundamental } of off.phases)
    for (let h = 1; h < off.order; h++)
      below = Math.max(below, Math.hypot(emf.cos[h] ?? 0, emf.sin[h] ?? 0) / Math.max(fundamental, 1e-12))
  return { volts: most(voltage) > 0 ? most(off) / most(voltage) : 1, subharmonic: below }
}

function unbalancedOf(
  parts: StormMachine,
  { when }: Scenario,
  run: Storm,
  left: { readonly time: number; readonly speed: number },
): Unbalanced {
  const { machine, runaway } = parts.chain
  const { rotor, site } = machine
  const mass = runaway.magnetMass * rotor.piecesPerPole
  const { trace } = run
  let fastest = left.speed
  if (when === 'start') fastest = run.most.speed
  else
    for (let k = 0; k < trace.time.length; k++)
      if (trace.time[k]! >= left.time) fastest = Math.max(fastest, trace.speed[k]!)
  const v = left.speed * rotor.pitchRadius
  return {
    force: centrifugalForce({ mass, radius: rotor.pitchRadius, speed: fastest }),
    speed: fastest,
    flight:
      when === 'start'
        ? undefined
        : {
            mass,
            speed: v,
            energy: (mass * v * v) / 2,
            distance: throwDistance({
              speed: v,
              height: site.hubHeight,
              gravity: constants.standardGravity.value,
            }),
          },
    ...missing(parts),
  }
}

/** The scenario on this machine. Yields the fraction done. */
export function* scenarioRun(
  machine: StormMachine,
  scenario: Scenario,
  asked: StormWind,
): Steps<ScenarioRun> {
  const parts = scenario.cold ? inWinter(machine) : machine
  const { chain } = parts
  const { dump } = dumpOf(machine.chain)
  const wind = scenarioWind(chain, scenario, asked)
  const { ambient } = chain.machine.site
  const options = {
    copperLimit: copperLimit(chain.machine).temperature,
    soak: Math.max(0, (scenario.wind === 'rated' ? worked : watched) - wind.duration),
    ...(scenario.wind === 'rising' ? { from: { speed: 0, copperTemperature: ambient } } : {}),
  }
  const caseAt = (at: number, event = scenario.event) =>
    stormCase({ ...scenario, event }, { at, rise: wind.rise, top: topTime(wind), dump })
  const start = { rise: wind.rise, start: 0, fastest: wind.rise }[scenario.when]
  let left = { time: start, speed: 0 }
  if (scenario.when === 'fastest') {
    const whole = yield* within(
      storm(parts, wind, caseAt(start, 'nothing'), { copperLimit: options.copperLimit }),
      0,
      0.5,
    )
    left = { time: whole.most.speedAt, speed: whole.most.speed }
  }
  const run = yield* within(storm(parts, wind, caseAt(left.time), options), 0.5, 0.5)
  return {
    storm: run,
    unbalanced: scenario.event === 'magnet off' ? unbalancedOf(parts, scenario, run, left) : undefined,
  }
}
