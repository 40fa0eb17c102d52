/** What the generator takes from the shaft and gives to the load, against speed and copper temperature. */
import type { Machine } from '../machine/machine.ts'
import { smoothCubic } from '../numerics/interpolate.ts'
import type { RectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import type { Circulation } from './circulation.ts'
import type { DragWatts } from './drag.ts'
import { copperRatio, cutInSpeed, loadPoint } from './load-point.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import type { Steps } from './step.ts'
import { noWatts, shaftPower, type Watts, wattColumns } from './watts.ts'

export interface GeneratorState {
  readonly watts: Watts
  /** Mean [A]. */
  readonly dcCurrent: number
  /** Mean at the load [V]. */
  readonly loadVoltage: number
  /** Largest of the phases, rms [A]. */
  readonly phaseCurrent: number
}

export interface GeneratorCurve {
  /** Speed at which current begins to flow [rad/s]; infinite where it never does. */
  readonly cutIn: number
  /** Nodes of the table [rad/s]. */
  readonly speeds: Float64Array
  readonly at: (speed: number, copperTemperature: number) => GeneratorState
  /** Shaft power with nothing connected [W]. */
  readonly idlePower: (speed: number) => number
  /** Shaft power only, for the search of operating points [W]. */
  readonly shaftPower: (speed: number, copperTemperature: number) => number
  /** Largest gap between shaft power and the sum of its parts at the nodes, as a share. */
  readonly residual: number
}

/** Copper temperatures of the table [K]; between them the curve is a parabola in conductance. */
const temperatures = [253.15, 353.15, 523.15] as const
const speedNodes = 14
/** A ring of unlike magnets makes the period a whole turn, p times the work: fewer speeds must do. */
const sparseNodes = 8
/** First node past cut-in, as a share of the way to the last. */
const firstNode = 0.003

function nodes(cutIn: number, fastest: number, count: number): Float64Array {
  const span = fastest - cutIn
  const speeds = new Float64Array(count)
  speeds[0] = cutIn
  for (let k = 1; k < count; k++) speeds[k] = cutIn + span * firstNode ** (1 - (k - 1) / (count - 2))
  return speeds
}

/** Weights of the parabola through the three nodes. */
function parabola(x: number, [a, b, c]: readonly [number, number, number]): [number, number, number] {
  return [
    ((x - b) * (x - c)) / ((a - b) * (a - c)),
    ((x - a) * (x - c)) / ((b - a) * (b - c)),
    ((x - a) * (x - b)) / ((c - a) * (c - b)),
  ]
}

/** What a turning rotor costs before any load. */
export interface NoLoadLosses {
  readonly drag: (speed: number) => DragWatts
  readonly circulating: Circulation
}

/**
 * `drag` gives friction and eddy losses at a speed; they are there with or without load.
 * `fastest` is the highest speed that will be asked for [rad/s]. Yields the fraction done.
 */
export function* generatorCurve(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { drag, circulating }: NoLoadLosses,
  fastest: number,
): Steps<GeneratorCurve> {
  const cutIn = machine.load.kind === 'open' ? Number.POSITIVE_INFINITY : cutInSpeed(machine, voltage)
  const dragOnly = (speed: number): GeneratorState => ({
    watts: {
      ...noWatts,
      ...drag(speed),
      winding: circulating.branches(speed) + circulating.delta(speed) + circulating.loops(speed),
    },
    dcCurrent: 0,
    loadVoltage: machine.load.kind === 'battery' ? machine.load.voltage : 0,
    phaseCurrent: 0,
  })
  const idlePower = (speed: number) => shaftPower(dragOnly(speed).watts)
  const loadedDrag = (speed: number) => {
    const { friction, eddy, parts } = drag(speed)
    return friction + eddy + parts + circulating.branches(speed)
  }
  if (!(cutIn < fastest))
    return {
      cutIn,
      speeds: new Float64Array(0),
      at: dragOnly,
      idlePower,
      shaftPower: idlePower,
      residual: 0,
    }
  const speeds = nodes(cutIn, fastest, voltage.order === 1 ? speedNodes : sparseNodes)
  let residual = 0
  const solved: RectifierPoint[][] = []
  for (const copperTemperature of temperatures) {
    const points: RectifierPoint[] = []
    for (const speed of speeds) {
      points.push(loadPoint(machine, voltage, { speed, copperTemperature }))
      yield (solved.length + points.length / speeds.length) / temperatures.length
    }
    solved.push(points)
  }
  const tables = solved.map((points) => {
    for (const point of points) residual = Math.max(residual, point.residual)
    const column = (value: (point: (typeof points)[number]) => number) =>
      smoothCubic(speeds, points.map(value))
    const electrical = {
      winding: column(({ power }) => power.winding),
      cable: column(({ power }) => power.line + power.dcCable),
      diodes: column(({ power }) => power.diodes),
      battery: column(({ power }) => power.batteryResistance),
      useful: column(({ power }) => power.load),
    }
    return {
      electrical,
      shaft: column(({ power }) => power.shaft),
      dcCurrent: column(({ dcCurrent }) => dcCurrent),
      voltageRise: column(({ loadVoltage }) => loadVoltage - points[0]!.loadVoltage),
      firstVoltage: points[0]!.loadVoltage,
      phaseCurrent: column(({ phaseCurrentRms }) => Math.max(...phaseCurrentRms)),
    }
  })
  const conductance = (temperature: number) => 1 / copperRatio(machine, temperature)
  const at3 = temperatures.map(conductance) as [number, number, number]
  const bounded = (temperature: number) => Math.min(Math.max(temperature, 223.15), 623.15)
  const weigh = (temperature: number) => parabola(conductance(bounded(temperature)), at3)
  return {
    cutIn,
    speeds,
    residual,
    idlePower,
    shaftPower: (speed, temperature) => {
      if (speed <= cutIn) return idlePower(speed)
      const w = weigh(temperature)
      let sum = 0
      for (let k = 0; k < 3; k++) sum += w[k]! * tables[k]!.shaft(speed)
      return sum + loadedDrag(speed)
    },
    at: (speed, temperature) => {
      if (speed <= cutIn) return dragOnly(speed)
      const w = weigh(temperature)
      const mix = (pick: (table: (typeof tables)[number]) => number) =>
        w[0] * pick(tables[0]!) + w[1] * pick(tables[1]!) + w[2] * pick(tables[2]!)
      const watts: Record<keyof Watts, number> = { ...noWatts, ...drag(speed) }
      for (const name of wattColumns)
        if (name !== 'friction' && name !== 'eddy' && name !== 'parts')
          watts[name] = Math.max(
            0,
            mix((table) => table.electrical[name](speed)),
          )
      watts.winding += circulating.branches(speed)
      return {
        watts,
        dcCurrent: Math.max(
          0,
          mix((table) => table.dcCurrent(speed)),
        ),
        loadVoltage: mix((table) => table.firstVoltage + table.voltageRise(speed)),
        phaseCurrent: Math.max(
          0,
          mix((table) => table.phaseCurrent(speed)),
        ),
      }
    },
  }
}
