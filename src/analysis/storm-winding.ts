/** Winding, magnets and bridge sound or with one part gone, each as tables that a storm reads from. */
import type { Machine } from '../machine/machine.ts'
import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'
import { rotorField } from './air-gap-field.ts'
import { type BusCurrent, type BusState, busCurrent, deadBus } from './bus-current.ts'
import { type Circulation, circulation } from './circulation.ts'
import { cubicWeights, speedNodes, tableTemperatures } from './hot-table.ts'
import { type OpenCircuitVoltage, openCircuitVoltage } from './open-circuit-voltage.ts'
import { openPhaseVoltage } from './open-phase.ts'
import { type ShortPlace, shortCircuit } from './short-circuit.ts'
import { type Steps, within } from './step.ts'
import type { StormChain } from './storm-chain.ts'

export const windingStates = ['sound', 'diode open', 'diode shorted', 'phase open', 'magnet off'] as const
export type WindingState = (typeof windingStates)[number]

/** The shorted winding at one copper temperature: torque, heat and amps, written into `state`. */
export type HotShort = (state: BusState, speed: number) => BusState

/** Torque of what brakes without any current outside [N·m]; bearings alone are there at rest. */
export interface StormDrag {
  /** With a load, and with nothing connected: currents inside a delta are in the load's own solution. */
  readonly loaded: (speed: number) => number
  readonly idle: (speed: number) => number
  /** Heat of it in the copper [W]. */
  readonly loadedHeat: (speed: number) => number
  readonly idleHeat: (speed: number) => number
}

export interface WindingTables {
  readonly voltage: OpenCircuitVoltage
  readonly bus: BusCurrent
  readonly short: Readonly<Record<ShortPlace, (copperTemperature: number) => HotShort>>
  readonly drag: StormDrag
}

const shortNodes = 17
const shortColumns = 3

export function shortTable(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  place: ShortPlace,
  fastest: number,
): (copperTemperature: number) => HotShort {
  const short = shortCircuit(machine, voltage, place)
  const nodes = speedNodes(machine, voltage, { slowest: 1e-3 * fastest, fastest, count: shortNodes })
  const tables = tableTemperatures.map((copperTemperature) => {
    const table = new Float64Array(shortNodes * shortColumns)
    nodes.speeds.forEach((speed, i) => {
      const { torque, loss, phaseCurrent } = short(speed, copperTemperature)
      table[shortColumns * i] = torque / speed
      table[shortColumns * i + 1] = loss / speed ** 2
      table[shortColumns * i + 2] = phaseCurrent / speed
    })
    return table
  }) as [Float64Array, Float64Array, Float64Array]
  return (copperTemperature) => {
    const table = nodes.mixed(tables, shortColumns, copperTemperature)
    const weights = new Float64Array(4)
    return (state, speed) => {
      const first = cubicWeights(nodes.place(speed), shortNodes, weights)
      let torque = 0
      let loss = 0
      let current = 0
      for (let k = 0; k < 4; k++) {
        const row = shortColumns * (first + k)
        torque += weights[k]! * table[row]!
        loss += weights[k]! * table[row + 1]!
        current += weights[k]! * table[row + 2]!
      }
      state.dcCurrent = 0
      state.torque = Math.max(0, torque * speed)
      state.windingLoss = Math.max(0, loss * speed * speed)
      state.phaseCurrent = Math.max(0, current * speed)
      return state
    }
  }
}

/** Even nodes of a drag's table, straight between them. */
const dragNodes = 256

/** A torque from watts at a speed, tabulated; the least speed's torque down to rest. */
function tabulated(
  watts: (speed: number) => number,
  fastest: number,
  power: 1 | 0,
): (speed: number) => number {
  const step = fastest / dragNodes
  const table = Float64Array.from({ length: dragNodes + 1 }, (_, k) => {
    const speed = Math.max(k, power === 1 ? 1e-3 : 0) * step
    return power === 1 ? watts(speed) / speed : watts(speed)
  })
  return (speed) => {
    const at = Math.min(Math.max(speed / step, 0), dragNodes - 1e-9)
    const low = Math.floor(at)
    return table[low]! + (at - low) * (table[low + 1]! - table[low]!)
  }
}

function dragOf(
  { drag }: StormChain,
  { branches, delta, loops }: Pick<Circulation, 'branches' | 'delta' | 'loops'>,
  fastest: number,
): StormDrag {
  const inCopper = (speed: number) => drag.at(speed).eddy + branches(speed)
  const loaded = (speed: number) => {
    const { friction, eddy, parts } = drag.at(speed)
    return friction + eddy + parts + branches(speed)
  }
  const inside = (speed: number) => delta(speed) + loops(speed)
  return {
    loaded: tabulated(loaded, fastest, 1),
    idle: tabulated((speed) => loaded(speed) + inside(speed), fastest, 1),
    loadedHeat: tabulated(inCopper, fastest, 0),
    idleHeat: tabulated((speed) => inCopper(speed) + inside(speed), fastest, 0),
  }
}

const shortsOf = (
  machine: Machine,
  voltage: OpenCircuitVoltage,
  fastest: number,
): WindingTables['short'] => ({
  leads: shortTable(machine, voltage, 'leads', fastest),
  'far end': shortTable(machine, voltage, 'far end', fastest),
})

/** One diode of the first line out of order, the common case: the positive side's. */
const diodeOf = (kind: 'open' | 'shorted'): readonly DiodeFault[] => [{ line: 0, side: 'positive', kind }]

const still = () => 0
const noShort = () => (state: BusState) =>
  Object.assign(state, { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 })

/** With every phase open nothing flows, not even round a delta. */
export function openWinding(chain: StormChain, sound: WindingTables, fastest: number): WindingTables {
  return {
    voltage: sound.voltage,
    bus: deadBus(sound.bus.openVoltage),
    short: { leads: noShort, 'far end': noShort },
    drag: dragOf(chain, { ...chain.circulating, delta: still }, fastest),
  }
}

/** Faults of the bridge that the document lists belong to lines that an open phase numbers anew: they are left out. */
const withoutFaults = (machine: Machine): Machine => ({
  ...machine,
  defects: { ...machine.defects, diodeFaults: [] },
})

function* phaseOpen(chain: StormChain, sound: WindingTables, fastest: number): Steps<WindingTables> {
  const { machine, voltage, circulating } = chain
  const left = openPhaseVoltage(voltage, machine.stator.connection, 0)
  if (left === undefined) return openWinding(chain, sound, fastest)
  const { stator } = machine
  const seen = { ...withoutFaults(machine), stator: { ...stator, connection: left.connection } }
  return {
    voltage: left.voltage,
    bus: yield* busCurrent(seen, left.voltage, { fastest }),
    short: shortsOf(seen, left.voltage, fastest),
    drag: dragOf(chain, { ...circulating, delta: still }, fastest),
  }
}

/** The rotor with the first of its magnets gone, with all pieces of its pole. */
export function withMagnetOff(machine: Machine): Machine {
  const { rotor } = machine
  const [first, ...others] = rotor.rings
  const at = first!.findIndex(({ strength }) => strength > 0)
  const ring = first!.map((place, k) => (k === at ? { ...place, strength: 0 } : place))
  return { ...machine, rotor: { ...rotor, rings: [ring, ...others], alternating: false } }
}

/** Bearings and eddy currents stay those of the whole rotor: one magnet of many, on the safe side for the heat. */
function* magnetOff(chain: StormChain, fastest: number): Steps<WindingTables> {
  const { layout, wound } = chain
  const machine = withMagnetOff(chain.machine)
  const field = rotorField(machine, machine.site.ambient)
  const voltage = openCircuitVoltage(machine, field, layout, wound)
  yield 0.2
  return {
    voltage,
    bus: yield* within(busCurrent(machine, voltage, { fastest }), 0.2, 0.8),
    short: shortsOf(machine, voltage, fastest),
    drag: dragOf(chain, circulation(machine, layout, wound, voltage, fastest), fastest),
  }
}

export function* soundTables(chain: StormChain, fastest: number): Steps<WindingTables> {
  const { machine, voltage, circulating } = chain
  return {
    voltage,
    bus: yield* busCurrent(machine, voltage, { fastest }),
    short: shortsOf(machine, voltage, fastest),
    drag: dragOf(chain, circulating, fastest),
  }
}

/** The tables of one state beside those of the sound machine. Yields the fraction done. */
export function* windingTables(
  chain: StormChain,
  sound: WindingTables,
  state: Exclude<WindingState, 'sound'>,
  fastest: number,
): Steps<WindingTables> {
  if (state === 'phase open') return yield* phaseOpen(chain, sound, fastest)
  if (state === 'magnet off') return yield* magnetOff(chain, fastest)
  const diodeFaults = diodeOf(state === 'diode open' ? 'open' : 'shorted')
  return { ...sound, bus: yield* busCurrent(chain.machine, chain.voltage, { fastest, diodeFaults }) }
}
