/** All that a storm asks of a machine, as tables: what turns, what brakes, what warms. */
import { conductors } from '../data/conductor.ts'
import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'
import { type BusCurrent, type BusState, busCurrent } from './bus-current.ts'
import type { Chain } from './compute.ts'
import { cubicWeights, speedNodes, tableTemperatures } from './hot-table.ts'
import { type RotorInertia, rotorInertia } from './rotor-inertia.ts'
import { type ShortPlace, shortCircuit } from './short-circuit.ts'
import { type Steps, within } from './step.ts'

/** The chain's parts that a storm needs. */
export type StormChain = Pick<
  Chain,
  | 'machine'
  | 'rotor'
  | 'blades'
  | 'layout'
  | 'wound'
  | 'voltage'
  | 'generator'
  | 'circulating'
  | 'drag'
  | 'cooling'
  | 'rows'
  | 'rowAt'
  | 'runaway'
>

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

export interface StormMachine {
  readonly chain: StormChain
  readonly inertia: RotorInertia
  /** Of copper and enamel [J/K]. */
  readonly heatCapacity: number
  /** Fastest speed of the tables [rad/s]. */
  readonly fastest: number
  readonly drag: StormDrag
  readonly bus: BusCurrent
  /** The same with one diode out of order; undefined where it was not asked for. */
  readonly openDiode: BusCurrent | undefined
  readonly shortedDiode: BusCurrent | undefined
  readonly short: Readonly<Record<ShortPlace, (copperTemperature: number) => HotShort>>
}

const copper = conductors.find(({ name }) => name === 'copper')!

/** Specific heat of polyester and polyamide enamels [J/(kg·K)]: common practice, no source. */
const enamelHeat = 1300

/** Copper keeps its heat within itself and its enamel for the first minutes; resin and print are left out, on the safe side. */
function windingHeatCapacity({ machine, wound }: Pick<Chain, 'machine' | 'wound'>): number {
  const { wire } = machine.stator
  const enamel = Math.max(0, wound.wireLength * wire.massPerLength - wound.copperMass)
  return wound.copperMass * copper.heatCapacity_J_per_kgK + enamel * enamelHeat
}

const shortNodes = 17
const shortColumns = 3

function shortTable(
  { machine, voltage }: StormChain,
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

function dragOf({ drag, circulating }: StormChain, fastest: number): StormDrag {
  const inCopper = (speed: number) => drag.at(speed).eddy + circulating.branches(speed)
  const loaded = (speed: number) => {
    const { friction, eddy, parts } = drag.at(speed)
    return friction + eddy + parts + circulating.branches(speed)
  }
  const inside = (speed: number) => circulating.delta(speed) + circulating.loops(speed)
  return {
    loaded: tabulated(loaded, fastest, 1),
    idle: tabulated((speed) => loaded(speed) + inside(speed), fastest, 1),
    loadedHeat: tabulated(inCopper, fastest, 0),
    idleHeat: tabulated((speed) => inCopper(speed) + inside(speed), fastest, 0),
  }
}

/** One diode of the first line out of order, the common case: the positive side's. */
const diodeOf = (kind: 'open' | 'shorted'): readonly DiodeFault[] => [{ line: 0, side: 'positive', kind }]

/** All tables, for winds up to `top` [m/s]; those of a bridge out of order are left out on request. Yields the fraction done. */
export function* stormMachine(chain: StormChain, top: number, diodes = true): Steps<StormMachine> {
  const { machine, voltage, rotor } = chain
  // past the runaway of the highest wind, and of what the rotor may turn at when the wind drops
  const fastest = Math.max((1.1 * rotor.runaway * top) / machine.blades.radius, 1e-3)
  const bus = yield* within(busCurrent(machine, voltage, { fastest }), 0, diodes ? 0.3 : 0.95)
  const faulty = (kind: 'open' | 'shorted') =>
    busCurrent(machine, voltage, { fastest, diodeFaults: diodeOf(kind) })
  const openDiode = diodes ? yield* within(faulty('open'), 0.3, 0.3) : undefined
  const shortedDiode = diodes ? yield* within(faulty('shorted'), 0.6, 0.35) : undefined
  return {
    chain,
    inertia: rotorInertia(machine, rotor),
    heatCapacity: windingHeatCapacity(chain),
    fastest,
    drag: dragOf(chain, fastest),
    bus,
    openDiode,
    shortedDiode,
    short: {
      leads: shortTable(chain, 'leads', fastest),
      'far end': shortTable(chain, 'far end', fastest),
    },
  }
}
