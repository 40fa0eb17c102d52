/** Every failure in its turn through the same storm: how fast, how many volts, how hot, what holds, what breaks. */
import type { Machine } from '../machine/machine.ts'
import { centrifugalForce } from '../physics/mechanics/retention.ts'
import type { Severity } from './concern/concern.ts'
import { dumpResistance } from './concern/load-loss.ts'
import { retentionFactor } from './concern/magnet-retention.ts'
import { heatMargin } from './concern/stator-heat.ts'
import { askedCases, type FailureCase, stormCase } from './failure-case.ts'
import { type Steps, within } from './step.ts'
import { type Storm, storm } from './storm.ts'
import type { Dump } from './storm-bus.ts'
import type { StormChain, StormMachine } from './storm-machine.ts'
import type { StormWind } from './storm-wind.ts'

/** kept: with room to spare; near: within the margin that should stay; passed: beyond what it may bear. */
export type LimitState = 'kept' | 'near' | 'passed'

export interface LimitCheck {
  readonly name: string
  readonly value: number
  readonly limit: number
  /** Suffix of the unit of both. */
  readonly unit: string
  readonly state: LimitState
}

/**
 * held: something limits the rotor and every limit is kept with its margin. survived: a margin is eaten. damaged: a
 * limit is passed. runs away: at the end nothing but the blades' own drag limits the rotor.
 */
export type Outcome = 'held' | 'survived' | 'damaged' | 'runs away'

export interface FailureRow {
  readonly failure: FailureCase
  readonly storm: Storm
  /** On one magnet at the greatest speed, and what holds it without glue [N]. */
  readonly magnetForce: number
  readonly tipSpeed: number
  readonly limits: readonly LimitCheck[]
  /** What still limits the rotor at the end, in words. */
  readonly limitedBy: string
  readonly outcome: Outcome
  /** By the outcome and the class of use; undefined where all is well. */
  readonly severity: Severity | undefined
}

export interface FailureTable {
  readonly name: string
  readonly wind: StormWind
  readonly inertia: StormMachine['inertia']
  readonly safetyClass: Machine['safetyClass']
  /** The dump as it was reckoned with, and whether it was guessed. */
  readonly dump: Dump | undefined
  readonly dumpGuessed: boolean
  readonly copperLimit: { readonly name: string; readonly temperature: number }
  readonly rows: readonly FailureRow[]
}

/** The copper is followed for ten minutes in all, in the wind that the storm ends with [s]. */
const watched = 600

/** Reverse volts of a diode should stay below this share of its rating: common practice, no source. */
const diodeShare = 0.5
/** Watts of a dump should stay below this share of its rating for hours: common practice, no source. */
const dumpShare = 0.8
/** For seconds a resistor of wire bears this many times its watts: common practice, no source. */
const dumpPeak = 2

/** The weaker of the enamel and what holds the winding. */
function copperLimit({ stator: { wire, support } }: Machine): FailureTable['copperLimit'] {
  return wire.highestTemperature <= support.softening
    ? { name: `enamel of class ${wire.insulationClass}`, temperature: wire.highestTemperature }
    : { name: support.name, temperature: support.softening }
}

/** The dump as the document states it; where it only says that there is one, a resistor for the most useful watts. */
function dumpOf(chain: StormChain): { readonly dump: Dump | undefined; readonly guessed: boolean } {
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

const check = (
  name: string,
  unit: string,
  value: number,
  { limit, near }: { readonly limit: number; readonly near: number },
): LimitCheck => ({
  name,
  unit,
  value,
  limit,
  state: value > limit ? 'passed' : value > near ? 'near' : 'kept',
})

function limitsOf(chain: StormChain, run: Storm, dump: Dump | undefined, magnetForce: number): LimitCheck[] {
  const { machine, runaway } = chain
  const { rotor, diode, load, wiring, converter } = machine
  const copper = copperLimit(machine)
  const { most } = run
  const limits = [
    check(`copper, ${copper.name}`, 'degC', most.copperTemperature, {
      limit: copper.temperature,
      near: copper.temperature - heatMargin,
    }),
  ]
  // magnets inside a ring are pressed into it
  if (!(rotor.arrangement === 'drum' && rotor.windingSide === 'inside'))
    limits.unshift(
      check('pull on a magnet', 'N', magnetForce, {
        limit: runaway.magnetHold,
        near: runaway.magnetHold / retentionFactor,
      }),
    )
  if (diode.reverseVoltage !== undefined)
    limits.push(
      check('reverse volts of the diodes', 'V', most.directVoltage + diode.threshold, {
        limit: diode.reverseVoltage,
        near: diodeShare * diode.reverseVoltage,
      }),
    )
  if (load.kind === 'capacitor')
    limits.push(
      check('volts of the capacitor', 'V', most.directVoltage, {
        limit: load.ratedVoltage,
        near: 0.9 * load.ratedVoltage,
      }),
    )
  if (dump !== undefined && most.dumpPower > 0)
    limits.push(
      check('watts of the dump load for seconds', 'W', most.dumpPower, {
        limit: dumpPeak * dump.power,
        near: dump.power,
      }),
      check('watts of the dump load for minutes', 'W', most.dumpMean, {
        limit: dump.power,
        near: dumpShare * dump.power,
      }),
    )
  if (converter?.greatestInputVoltage !== undefined)
    limits.push(
      check('volts at the converter', 'V', most.directVoltage, {
        limit: converter.greatestInputVoltage,
        near: 0.9 * converter.greatestInputVoltage,
      }),
    )
  if (wiring.fuse !== undefined && load.kind === 'battery') {
    const fuse = check('amps through the fuse', 'A', most.directCurrent, {
      limit: wiring.fuse,
      near: 0.8 * wiring.fuse,
    })
    // a fuse that blows breaks nothing: it loses the load, which is a row of its own
    limits.push(fuse.state === 'passed' ? { ...fuse, state: 'near' } : fuse)
  }
  return limits
}

function limitedBy({ chain }: StormMachine, { last, given }: Storm): string {
  const { protection, load } = chain.machine
  const parts = [
    ...(last.short ? ['the shorted winding'] : []),
    ...(last.dump && last.current ? ['the dump load'] : []),
    ...(last.current && !last.short && !(last.dump && given.event !== 'nothing')
      ? [load.kind === 'battery' || load.kind === 'open' ? 'the current' : 'the load']
      : []),
    ...(last.limiter ? [`the ${protection.mechanical}`] : []),
  ]
  return parts.length === 0 ? 'the blades alone' : parts.join(' and ')
}

/** Ranked: what the class of use makes of an outcome. */
function severityOf(outcome: Outcome, passed: boolean, { safetyClass }: Machine): Severity | undefined {
  if (outcome === 'held') return undefined
  if (outcome === 'survived') return safetyClass === 'outdoor' ? 'warning' : 'note'
  if (safetyClass === 'outdoor') return 'blocking'
  return passed ? 'warning' : 'note'
}

function judged(parts: StormMachine, failure: FailureCase, run: Storm, dump: Dump | undefined): FailureRow {
  const { chain } = parts
  const { machine, runaway, blades } = chain
  const magnetForce = centrifugalForce({
    mass: runaway.magnetMass,
    radius: machine.rotor.pitchRadius,
    speed: run.most.speed,
  })
  const limits = limitsOf(chain, run, dump, magnetForce)
  const passed = limits.some(({ state }) => state === 'passed')
  const near = limits.some(({ state }) => state === 'near')
  const by = limitedBy(parts, run)
  const outcome: Outcome =
    by === 'the blades alone' ? 'runs away' : passed ? 'damaged' : near ? 'survived' : 'held'
  return {
    failure,
    storm: run,
    magnetForce,
    tipSpeed: run.most.speed * blades.radius,
    limits,
    limitedBy: by,
    outcome,
    severity: severityOf(outcome, passed, machine),
  }
}

/** One row of the table. Yields the fraction done. */
function* failureRow(parts: StormMachine, wind: StormWind, failure: FailureCase): Steps<FailureRow> {
  const { dump } = dumpOf(parts.chain)
  const given = stormCase(failure, { at: wind.rise, top: topTime(wind), dump })
  const run = yield* storm(parts, wind, given, {
    copperLimit: copperLimit(parts.chain.machine).temperature,
    soak: Math.max(0, watched - wind.duration),
  })
  return judged(parts, failure, run, dump)
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

/** The whole table, or the row of one key. Yields the fraction done. */
export function* failureTable(parts: StormMachine, wind: StormWind, only?: string): Steps<FailureTable> {
  const { chain } = parts
  const { machine } = chain
  const asked = askedCases(machine, only)
  const rows: FailureRow[] = []
  for (const [k, failure] of asked.entries())
    rows.push(yield* within(failureRow(parts, wind, failure), k / asked.length, 1 / asked.length))
  const { dump, guessed } = dumpOf(chain)
  return {
    name: machine.name,
    wind,
    inertia: parts.inertia,
    safetyClass: machine.safetyClass,
    dump,
    dumpGuessed: guessed,
    copperLimit: copperLimit(machine),
    rows,
  }
}
