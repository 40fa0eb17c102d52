/** What a machine may bear in a scenario, and how near each limit it came. */
import type { Machine } from '../machine/machine.ts'
import { permissibleUnbalance } from '../physics/mechanics/balance-grade.ts'
import { retentionFactor } from './concern/magnet-retention.ts'
import { heatMargin } from './concern/stator-heat.ts'
import type { RotorInertia } from './rotor-inertia.ts'
import type { Storm } from './storm.ts'
import type { Dump } from './storm-bus.ts'
import type { StormChain } from './storm-chain.ts'

/** kept: with room to spare; near: within the margin that should stay; passed: beyond what it may bear. */
export type LimitState = 'kept' | 'near' | 'passed'

export interface LimitCheck {
  readonly name: string
  /** magnet: a magnet may be thrown out. */
  readonly kind: 'magnet' | 'copper' | 'unbalance' | 'part'
  readonly value: number
  readonly limit: number
  /** Suffix of the unit of both. */
  readonly unit: string
  readonly state: LimitState
}

/** Reverse volts of a diode should stay below this share of its rating: common practice, no source. */
const diodeShare = 0.5
/** Watts of a dump should stay below this share of its rating for hours: common practice, no source. */
const dumpShare = 0.8
/** For seconds a resistor of wire bears this many times its watts: common practice, no source. */
const dumpPeak = 2
/** Grade that small rotors are balanced to where none is said [m/s]: common practice, no source. */
const usualGrade = 16e-3

/** The weaker of the enamel and what holds the winding. */
export function copperLimit({ stator: { wire, support } }: Machine): {
  readonly name: string
  readonly temperature: number
} {
  return wire.highestTemperature <= support.softening
    ? { name: `enamel of class ${wire.insulationClass}`, temperature: wire.highestTemperature }
    : { name: support.name, temperature: support.softening }
}

const check = (
  name: string,
  unit: string,
  value: number,
  { limit, near, kind = 'part' }: { limit: number; near: number; kind?: LimitCheck['kind'] },
): LimitCheck => ({
  name,
  kind,
  unit,
  value,
  limit,
  state: value > limit ? 'passed' : value > near ? 'near' : 'kept',
})

/** It wears and is noticed before it breaks, or breaks nothing: passed counts as near. */
const warned = (limit: LimitCheck): LimitCheck =>
  limit.state === 'passed' ? { ...limit, state: 'near' } : limit

/** What becomes of a rotor out of balance, against the unbalance that its grade allows at that speed. */
function unbalanceLimit(
  { machine }: StormChain,
  { parts }: RotorInertia,
  speed: number,
  force: number,
): LimitCheck[] {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0)
  if (!(force > 0) || !(mass > 0) || !(speed > 0)) return []
  const grade = machine.shaft.balanceGrade ?? usualGrade
  const limit = permissibleUnbalance({ grade, mass, speed }).total * speed * speed
  return [warned(check('unbalance', 'N', force, { limit, near: limit, kind: 'unbalance' }))]
}

export interface Borne {
  readonly run: Storm
  readonly dump: Dump | undefined
  /** On one magnet [N]. */
  readonly magnetForce: number
  /** Round with the rotor [N], at this speed [rad/s]; 0 where it is in balance. */
  readonly unbalance: number
  readonly unbalanceSpeed: number
}

export function limitsOf(
  chain: StormChain,
  inertia: RotorInertia,
  { run, dump, magnetForce, unbalance, unbalanceSpeed }: Borne,
): LimitCheck[] {
  const { machine, runaway } = chain
  const { rotor, diode, load, wiring, converter } = machine
  const copper = copperLimit(machine)
  const { most } = run
  const limits = [
    check(`copper, ${copper.name}`, 'degC', most.copperTemperature, {
      limit: copper.temperature,
      near: copper.temperature - heatMargin,
      kind: 'copper',
    }),
    ...(rotor.magnet.highestTemperature === undefined
      ? []
      : [
          check(`magnets, grade ${rotor.magnet.grade}`, 'degC', most.magnetTemperature, {
            limit: rotor.magnet.highestTemperature,
            near: rotor.magnet.highestTemperature - heatMargin,
          }),
        ]),
    ...unbalanceLimit(chain, inertia, unbalanceSpeed, unbalance),
  ]
  // magnets inside a ring are pressed into it
  if (!(rotor.arrangement === 'drum' && rotor.windingSide === 'inside'))
    limits.unshift(
      check('pull on a magnet', 'N', magnetForce, {
        limit: runaway.magnetHold,
        near: runaway.magnetHold / retentionFactor,
        kind: 'magnet',
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
  if (wiring.fuse !== undefined && load.kind === 'battery')
    // a fuse that blows loses the load, which is a row of its own
    limits.push(
      warned(
        check('amps through the fuse', 'A', most.directCurrent, {
          limit: wiring.fuse,
          near: 0.8 * wiring.fuse,
        }),
      ),
    )
  return limits
}
