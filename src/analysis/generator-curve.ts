/** What the generator takes from the shaft and gives to the load, against speed and copper temperature. */

import type { Machine } from '../machine/machine.ts'
import { smoothCubic } from '../numerics/interpolate.ts'
import { kinkedCubic } from '../numerics/kinked-cubic.ts'
import { parabolaWeights } from '../numerics/parabola-weight.ts'
import type { RotorCurve } from './blade-rotor.ts'
import type { Circulation } from './circulation.ts'
import { converterKinks } from './converter-kink.ts'
import type { DragWatts } from './drag.ts'
import type { LoadPoint } from './load-balance.ts'
import { copperRatio, cutInSpeed, loadPoint } from './load-point.ts'
import { weakenedVoltage } from './magnet-strength.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import type { Steps } from './step.ts'
import { noWatts, shaftPower, type Watts, wattColumns } from './watts.ts'

export interface GeneratorState {
  readonly watts: Watts
  /** Mean [A]. */
  readonly dcCurrent: number
  /** Mean into the load; behind a converter another than the bridge's [A]. */
  readonly loadCurrent: number
  /** Mean at the load [V]. */
  readonly loadVoltage: number
  /** Largest of the phases, rms [A]. */
  readonly phaseCurrent: number
}

export interface GeneratorCurve {
  /** Speed at which current begins to flow, the magnets cold [rad/s]; infinite where it never does. */
  readonly cutIn: number
  /** Nodes of the table at its coldest [rad/s]. */
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
/** Behind a converter the way of working changes with temperature too: straight lines between more of them. */
const converterTemperatures = [253.15, 303.15, 353.15, 423.15, 523.15] as const
const speedNodes = 14
/** A ring of unlike magnets makes the period a whole turn, p times the work: fewer speeds must do. */
const sparseNodes = 8
/** A converter makes every point dear, and its kinks bring nodes of their own. */
const converterNodes = 12
/** First node past cut-in, as a share of the way to the last. */
const firstNode = 0.003

function nodes(cutIn: number, fastest: number, count: number): Float64Array {
  const span = fastest - cutIn
  const speeds = new Float64Array(count)
  speeds[0] = cutIn
  for (let k = 1; k < count; k++) speeds[k] = cutIn + span * firstNode ** (1 - (k - 1) / (count - 2))
  return speeds
}

/** Kinks among the nodes, rising; nodes that all but coincide with one give way. */
function merged(speeds: Float64Array, kinks: readonly number[]): Float64Array {
  const least = 1e-4 * speeds[speeds.length - 1]!
  const apart = (speed: number) => kinks.every((kink) => Math.abs(speed - kink) > least)
  const own = speeds.filter((speed, k) => k === 0 || k === speeds.length - 1 || apart(speed))
  return Float64Array.from(new Set([...own, ...kinks])).sort()
}

/** Weights of the straight line between the two nodes, falling, that hold x; of the nearest two outside. */
function chord(x: number, nodes: readonly number[]): number[] {
  let k = 0
  while (k < nodes.length - 2 && x < nodes[k + 1]!) k++
  const share = (x - nodes[k]!) / (nodes[k + 1]! - nodes[k]!)
  return nodes.map((_, n) => (n === k ? 1 - share : n === k + 1 ? share : 0))
}

/** What a turning rotor costs before any load. */
export interface NoLoadLosses {
  readonly drag: (speed: number) => DragWatts
  readonly circulating: Circulation
}

/** The circuit solved at nodes of speed and copper temperature: what the load takes, turning losses aside. */
export interface LoadTables {
  /** Speed at which current begins to flow [rad/s]; infinite where it never does. */
  readonly cutIn: number
  /** Nodes at its coldest [rad/s]; none where no current flows up to the fastest speed. */
  readonly speeds: Float64Array
  readonly tables: readonly LoadTable[]
  /** Share of each table at a copper temperature [K]. */
  readonly weigh: (temperature: number) => readonly number[]
  /** Volts over those of magnets as cold as the air, at a copper temperature [K]. */
  readonly strength: (temperature: number) => number
  /** Largest gap between shaft power and the sum of its parts at the nodes, as a share. */
  readonly residual: number
}

type OfSpeed = (speed: number) => number

/** At one copper temperature, against speed. */
interface LoadTable {
  readonly electrical: Readonly<Record<Exclude<keyof Watts, keyof DragWatts>, OfSpeed>>
  readonly shaft: OfSpeed
  readonly dcCurrent: OfSpeed
  readonly loadCurrent: OfSpeed
  readonly voltageRise: OfSpeed
  readonly firstVoltage: number
  readonly phaseCurrent: OfSpeed
}

const alwaysCold = () => 1

/**
 * `fastest` is the highest speed that will be asked for [rad/s]; `strength` as in the tables: magnets beside hot copper
 * are weaker. The tables run over the speed at which cold magnets would give the same volts, so that a kink, as where
 * current begins, lies at one place in all of them. Yields the fraction done.
 */
export function* loadTables(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  fastest: number,
  strength: (copperTemperature: number) => number = alwaysCold,
): Steps<LoadTables> {
  const cutIn = machine.load.kind === 'open' ? Number.POSITIVE_INFINITY : cutInSpeed(machine, voltage)
  if (!(cutIn < fastest))
    return { cutIn, speeds: new Float64Array(0), tables: [], weigh: () => [], strength, residual: 0 }
  const { converter } = machine
  const count = voltage.order !== 1 ? sparseNodes : converter === undefined ? speedNodes : converterNodes
  const even = nodes(cutIn, fastest, count)
  const hot = converter === undefined ? temperatures : converterTemperatures
  let residual = 0
  const solved: { readonly speeds: Float64Array; readonly kinks: number[]; readonly points: LoadPoint[] }[] =
    []
  for (const copperTemperature of hot) {
    const weak = strength(copperTemperature)
    const warm = weakenedVoltage(voltage, weak)
    const range = [cutIn / weak, fastest / weak] as const
    const kinks = converterKinks(machine, warm, { range, copperTemperature }).map((speed) => weak * speed)
    const speeds = kinks.length === 0 ? even : merged(even, kinks)
    const points: LoadPoint[] = []
    for (const speed of speeds) {
      points.push(loadPoint(machine, warm, { speed: speed / weak, copperTemperature }))
      yield (solved.length + points.length / speeds.length) / hot.length
    }
    solved.push({ speeds, kinks, points })
  }
  const tables = solved.map(({ speeds, kinks, points }): LoadTable => {
    for (const point of points) residual = Math.max(residual, point.residual)
    const column = (value: (point: (typeof points)[number]) => number) =>
      converter === undefined
        ? smoothCubic(speeds, points.map(value))
        : kinkedCubic(speeds, points.map(value), kinks)
    const electrical = {
      winding: column(({ power }) => power.winding),
      cable: column(({ power }) => power.line + power.dcCable),
      diodes: column(({ power }) => power.diodes),
      converter: column(({ power }) => power.converter),
      battery: column(({ power }) => power.batteryResistance),
      useful: column(({ power }) => power.load),
    }
    return {
      electrical,
      shaft: column(({ power }) => power.shaft),
      dcCurrent: column(({ dcCurrent }) => dcCurrent),
      loadCurrent: column(({ loadCurrent }) => loadCurrent),
      voltageRise: column(({ loadVoltage }) => loadVoltage - points[0]!.loadVoltage),
      firstVoltage: points[0]!.loadVoltage,
      phaseCurrent: column(({ phaseCurrentRms }) => Math.max(...phaseCurrentRms)),
    }
  })
  const conductance = (temperature: number) => 1 / copperRatio(machine, temperature)
  const nodesOfHeat = hot.map(conductance)
  const bounded = (temperature: number) => Math.min(Math.max(temperature, 223.15), 623.15)
  const weigh = (temperature: number): readonly number[] =>
    converter === undefined
      ? parabolaWeights(conductance(bounded(temperature)), nodesOfHeat as [number, number, number])
      : chord(conductance(bounded(temperature)), nodesOfHeat)
  return { cutIn, speeds: solved[0]!.speeds, tables, weigh, strength, residual }
}

/** The solved circuit with what turning costs: friction and eddy losses are there with or without load. */
export function generatorOn(
  machine: Machine,
  { cutIn, speeds, tables, weigh, strength, residual }: LoadTables,
  { drag, circulating }: NoLoadLosses,
): GeneratorCurve {
  const dragOnly = (speed: number): GeneratorState => ({
    watts: {
      ...noWatts,
      ...drag(speed),
      winding:
        circulating.branches(speed) +
        circulating.delta(speed) +
        circulating.loops(speed) +
        circulating.bridge(speed),
    },
    dcCurrent: 0,
    loadCurrent: 0,
    loadVoltage: machine.load.kind === 'battery' ? machine.load.voltage : 0,
    phaseCurrent: 0,
  })
  const idlePower = (speed: number) => shaftPower(dragOnly(speed).watts)
  const loadedDrag = (speed: number) => {
    const { friction, eddy, parts } = drag(speed)
    return friction + eddy + parts + circulating.branches(speed)
  }
  if (tables.length === 0)
    return {
      cutIn,
      speeds: new Float64Array(0),
      at: dragOnly,
      idlePower,
      shaftPower: idlePower,
      residual: 0,
    }
  return {
    cutIn,
    speeds,
    residual,
    idlePower,
    shaftPower: (speed, temperature) => {
      const asCold = strength(temperature) * speed
      if (asCold <= cutIn) return idlePower(speed)
      const w = weigh(temperature)
      let sum = 0
      for (let k = 0; k < w.length; k++) if (w[k] !== 0) sum += w[k]! * tables[k]!.shaft(asCold)
      return sum + loadedDrag(speed)
    },
    at: (speed, temperature) => {
      const asCold = strength(temperature) * speed
      if (asCold <= cutIn) return dragOnly(speed)
      const w = weigh(temperature)
      const mix = (pick: (table: LoadTable) => number) =>
        w.reduce((sum, share, k) => (share === 0 ? sum : sum + share * pick(tables[k]!)), 0)
      const watts: Record<keyof Watts, number> = { ...noWatts, ...drag(speed) }
      for (const name of wattColumns)
        if (name !== 'friction' && name !== 'eddy' && name !== 'parts')
          watts[name] = Math.max(
            0,
            mix((table) => table.electrical[name](asCold)),
          )
      watts.winding += circulating.branches(speed)
      return {
        watts,
        dcCurrent: Math.max(
          0,
          mix((table) => table.dcCurrent(asCold)),
        ),
        loadCurrent: Math.max(
          0,
          mix((table) => table.loadCurrent(asCold)),
        ),
        loadVoltage: mix((table) => table.firstVoltage + table.voltageRise(asCold)),
        phaseCurrent: Math.max(
          0,
          mix((table) => table.phaseCurrent(asCold)),
        ),
      }
    },
  }
}

/** Highest speed that the blades may ask of the tables: somewhat past the storm's runaway [rad/s]. */
export const fastestTabled = (
  { runaway }: Pick<RotorCurve, 'runaway'>,
  { radius, stormWind }: { readonly radius: number; readonly stormWind: number },
): number => (runaway * 1.05 * stormWind) / radius

/** `fastest` is the highest speed that will be asked for [rad/s]. Yields the fraction done. */
export function* generatorCurve(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  losses: NoLoadLosses,
  fastest: number,
  strength?: (copperTemperature: number) => number,
): Steps<GeneratorCurve> {
  return generatorOn(machine, yield* loadTables(machine, voltage, fastest, strength), losses)
}
