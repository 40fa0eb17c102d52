/** The generator as a direct-current bus of any voltage meets it: amps, torque and copper heat, from a table. */
import type { Machine } from '../machine/machine.ts'
import { type DiodeFault, rectifierMeans } from '../physics/electrics/bridge-rectifier.ts'
import { cubicWeights, speedNodes, tableTemperatures } from './hot-table.ts'
import { loadPoint, rectifierInput } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import type { Steps } from './step.ts'

/** What flows at one speed and bus voltage. */
export interface BusState {
  /** Mean into the bus [A]. */
  dcCurrent: number
  /** Of the currents only, bearings and eddy currents aside [N·m]. */
  torque: number
  /** In the copper of the winding [W]. */
  windingLoss: number
  /** Largest of the phases, rms [A]. */
  phaseCurrent: number
}

/** The bus at one copper temperature. */
export interface HotBus {
  /** Mean amps into the bus [A]. */
  readonly current: (speed: number, voltage: number) => number
  /** All of it, written into `state`. */
  readonly fill: (state: BusState, speed: number, voltage: number) => BusState
}

export interface BusCurrent {
  /** Largest volts behind the bridge with nothing connected [V]. */
  readonly openVoltage: (speed: number) => number
  readonly at: (copperTemperature: number) => HotBus
}

const usualNodes = { speed: 9, volt: 9 } as const
/** A ring of unlike magnets, or a bridge out of order, makes the period long: fewer nodes must do. */
const sparseNodes = { speed: 6, volt: 6 } as const

/** A shorted diode lets current flow round inside the machine above the open-circuit voltage too. */
const faultReach = 1.5

const columns = 4

export interface BusRequest {
  /** The highest speed that will be asked for [rad/s]; beyond it the table's last admittance is carried on. */
  readonly fastest: number
  readonly diodeFaults?: readonly DiodeFault[]
}

/** Nothing ever flows: no volts, or none past the diodes. */
export const deadBus = (openVoltage: (speed: number) => number): BusCurrent => {
  const hot: HotBus = {
    current: () => 0,
    fill: (state) => Object.assign(state, { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 }),
  }
  return { openVoltage, at: () => hot }
}

/**
 * The table: current, torque and phase current over the open-circuit voltage, copper loss over its square, for an
 * ideal voltage behind cable and bridge. Yields the fraction done.
 */
export function* busCurrent(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { fastest, diodeFaults = [] }: BusRequest,
): Steps<BusCurrent> {
  const threshold = 2 * machine.diode.threshold
  const peak = voltage.greatestLinePeak
  const openVoltage = (speed: number) => Math.max(0, peak * speed - threshold)
  const slowest = Math.max(peak > 0 ? (1.05 * threshold) / peak : 0, 0.02 * fastest)
  if (!(peak > 0) || !(slowest < 0.95 * fastest)) return deadBus(openVoltage)
  const shorted = diodeFaults.some(({ kind }) => kind === 'shorted')
  const sparse = voltage.order > 1 || diodeFaults.length > 0
  // voltages evenly in z = √(1 − U/U_open): at the edge of conduction the amps go with its third power
  const { speed: n, volt: m } = sparse ? sparseNodes : usualNodes
  const { speeds, place: placeOf, mixed } = speedNodes(machine, voltage, { slowest, fastest, count: n })
  const reach = shorted ? faultReach : 1
  const tables: Float64Array[] = []
  let done = 0
  for (const copperTemperature of tableTemperatures) {
    const table = new Float64Array(n * m * columns)
    for (let i = 0; i < n; i++) {
      const speed = speeds[i]!
      const open = openVoltage(speed)
      for (let j = 0; j < m; j++) {
        done += 1
        if (j === 0 && !shorted) continue
        const U = reach * open * (1 - (j / (m - 1)) ** 2)
        const request = {
          speed,
          copperTemperature,
          load: { kind: 'battery', voltage: Math.max(U, 1e-6 * open), resistance: 0 },
        } as const
        const point =
          diodeFaults.length === 0
            ? loadPoint(machine, voltage, request)
            : rectifierMeans({ ...rectifierInput(machine, voltage, request), diodeFaults })
        const at = (i * m + j) * columns
        table[at] = point.dcCurrent / open
        table[at + 1] = point.power.shaft / speed / open
        table[at + 2] = point.power.winding / open ** 2
        // a bare wire in the place of a phase has no copper to warm
        const most = point.phaseCurrentRms.reduce(
          (great, each, k) => (voltage.phases[k]!.resistance > 0 ? Math.max(great, each) : great),
          0,
        )
        table[at + 3] = most / open
      }
      yield done / (tableTemperatures.length * n * m)
    }
    tables.push(table)
  }
  const three = tables as unknown as [Float64Array, Float64Array, Float64Array]
  const at = (copperTemperature: number): HotBus => {
    const table = mixed(three, m * columns, copperTemperature)
    const ws = new Float64Array(4)
    const wz = new Float64Array(4)
    let i0 = 0
    let j0 = 0
    /** Places the weights; false where nothing flows. */
    const place = (speed: number, U: number, open: number): boolean => {
      const y = U / (reach * open)
      if (!(open > 0) || (y >= 1 && !shorted)) return false
      const z = Math.sqrt(Math.min(Math.max(1 - y, 0), 1))
      i0 = cubicWeights(placeOf(speed), n, ws)
      j0 = cubicWeights(z * (m - 1), m, wz)
      return true
    }
    const read = (column: number): number => {
      let sum = 0
      for (let i = 0; i < 4; i++) {
        const row = ((i0 + i) * m + j0) * columns + column
        sum +=
          ws[i]! *
          (wz[0]! * table[row]! +
            wz[1]! * table[row + columns]! +
            wz[2]! * table[row + 2 * columns]! +
            wz[3]! * table[row + 3 * columns]!)
      }
      return Math.max(0, sum)
    }
    return {
      current: (speed, U) => {
        const open = openVoltage(speed)
        return place(speed, U, open) ? open * read(0) : 0
      },
      fill: (state, speed, U) => {
        const open = openVoltage(speed)
        const flows = place(speed, U, open)
        state.dcCurrent = flows ? open * read(0) : 0
        state.torque = flows ? open * read(1) : 0
        state.windingLoss = flows ? open * open * read(2) : 0
        state.phaseCurrent = flows ? open * read(3) : 0
        return state
      },
    }
  }
  return { openVoltage, at }
}
