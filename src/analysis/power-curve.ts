/** The whole machine wind by wind: speed, amps, watts and copper temperature in steady wind. */
import type { Machine } from '../machine/machine.ts'
import { currentDensity } from '../physics/electrics/current-density.ts'
import { nominal } from '../units/quantity.ts'
import type { RotorCurve } from './blade-rotor.ts'
import type { GeneratorCurve } from './generator-curve.ts'
import { heatFollower, type MachineHeat, type PartTemperatures } from './machine-heat.ts'
import { type BladeMap, settledSpeed } from './match.ts'
import { noWatts, shaftPower, type Watts } from './watts.ts'

/**
 * at rest: the wind cannot start it. turning: no current. charging: current flows. stalled: it charges, but slower
 * than the blades like, at under two thirds of their best. held: the mechanical limiter holds it.
 */
export type WindState = 'at rest' | 'turning' | 'charging' | 'stalled' | 'held'

export interface WindRow {
  /** [m/s] */
  readonly wind: number
  readonly state: WindState
  /** [rad/s] */
  readonly speed: number
  readonly tipSpeedRatio: number
  readonly powerCoefficient: number
  /** In the wind through the swept area [W]. */
  readonly available: number
  readonly watts: Watts
  readonly dcCurrent: number
  /** Into the load: behind a converter another than the bridge's [A]. */
  readonly loadCurrent: number
  readonly loadVoltage: number
  readonly phaseCurrent: number
  /** Of that current in the copper [A/m²]. */
  readonly currentDensity: number
  /** Mean of the copper, which its ohms tell [K]. */
  readonly copperTemperature: number
  readonly temperatures: PartTemperatures
  /** Every node of the heat net above the air [K]. */
  readonly nodeRises: Float64Array
  /** The copper finds no steady temperature below `hottest`. */
  readonly overheated: boolean
}

/** Copper temperature at which the search stops [K]: any enamel has failed long before. */
export const hottest = 623.15

/** Below this share of the best power, and below its tip-speed ratio, blades count as stalled. */
export const stallShare = 2 / 3

/** Winds of the table [m/s]: every half metre per second. */
export const windStep = 0.5

export interface PowerCurveParts {
  readonly machine: Machine
  readonly rotor: RotorCurve
  readonly blades: BladeMap
  readonly generator: GeneratorCurve
  readonly heat: MachineHeat
  /** Copper that shares the phase current: strands and parallel groups together [m²]. */
  readonly phaseArea: number
}

/**
 * Wind in which a torque at rest overcomes a friction [m/s]; infinite where it never does. The torque goes nearly with the
 * square of the wind; what the Reynolds number adds is found by going round a few times.
 */
export function windThatStarts(torqueAtRest: (wind: number) => number, friction: number): number {
  if (friction <= 0) return 0
  let wind = 1
  for (let round = 0; round < 8; round++) {
    const unit = torqueAtRest(wind) / wind ** 2
    if (!(unit > 0)) return Number.POSITIVE_INFINITY
    const next = Math.sqrt(friction / unit)
    if (Math.abs(next - wind) < 1e-6 * next) return next
    wind = next
  }
  return wind
}

/** Wind in which the blades' torque at rest overcomes the starting friction [m/s]; infinite where it never does. */
export const startWind = ({ machine, blades }: PowerCurveParts): number =>
  windThatStarts((wind) => blades.torque(wind, 0), machine.shaft.startingFriction)

const coldNodes = ({ heat }: PowerCurveParts): Float64Array => new Float64Array(heat.body.nodes.length)

const restRow = (parts: PowerCurveParts, wind: number): WindRow => ({
  wind,
  state: 'at rest',
  speed: 0,
  tipSpeedRatio: 0,
  powerCoefficient: 0,
  available: parts.blades.available(wind),
  watts: noWatts,
  dcCurrent: 0,
  loadCurrent: 0,
  loadVoltage: parts.generator.at(0, parts.machine.site.ambient).loadVoltage,
  phaseCurrent: 0,
  currentDensity: 0,
  copperTemperature: parts.machine.site.ambient,
  temperatures: parts.heat.read(coldNodes(parts), 0),
  nodeRises: coldNodes(parts),
  overheated: false,
})

/** How the machine was turning before: it keeps its state as far as the wind lets it. */
interface Past {
  readonly speed: number
  readonly copperTemperature: number
  readonly nodeRises: Float64Array
}

const relaxation = 0.7
const mostRounds = 80
const closeEnough = 0.05

/** Speed and temperatures that a machine with this past settles in; the copper warms or cools step by step. */
function settled(parts: PowerCurveParts, wind: number, past: Past): Past & { readonly overheated: boolean } {
  const { blades, generator, heat, machine } = parts
  const { ambient } = machine.site
  const fastest = blades.fastest(wind)
  const nodeRises = Float64Array.from(past.nodeRises)
  const warmth = heatFollower(heat, nodeRises)
  let { speed, copperTemperature } = past
  for (let round = 0; round < mostRounds; round++) {
    const temperature = copperTemperature
    speed = settledSpeed(
      (at) => blades.power(wind, at),
      (at) => generator.shaftPower(at, temperature),
      { from: speed, fastest },
    )
    if (speed === 0)
      return { speed, copperTemperature: ambient, nodeRises: coldNodes(parts), overheated: false }
    const { watts } = generator.at(speed, temperature)
    const target = ambient + warmth({ speed, wind, copper: watts.winding + watts.eddy, metal: watts.parts })
    if (Math.abs(target - temperature) < closeEnough) break
    copperTemperature = temperature + relaxation * (target - temperature)
    if (copperTemperature >= hottest)
      return { speed, copperTemperature: hottest, nodeRises, overheated: true }
  }
  return { speed, copperTemperature, nodeRises, overheated: false }
}

/** One wind, met by a machine that turned as `past` says; a machine at rest must first be started. */
function followedRow(parts: PowerCurveParts, wind: number, past: Past): WindRow {
  const { machine, generator, blades, rotor } = parts
  if (!(wind > 0) || (past.speed === 0 && wind < startWind(parts))) return restRow(parts, wind)
  const { speed, copperTemperature, nodeRises, overheated } = settled(parts, wind, past)
  if (speed === 0) return restRow(parts, wind)
  const state = generator.at(speed, copperTemperature)
  const copper = state.watts.winding + state.watts.eddy
  const { net, sources, read } = parts.heat
  // the search rests when the copper does; films of cooler nodes may still be on their way
  const rest = { speed, wind, sources: sources({ copper, metal: state.watts.parts }) }
  if (overheated) net.round(rest, nodeRises)
  else net.settle(rest, nodeRises)
  const available = blades.available(wind)
  const powerCoefficient = shaftPower(state.watts) / available
  const tipSpeedRatio = blades.tipSpeedRatio(wind, speed)
  const slow = tipSpeedRatio < rotor.best.tipSpeedRatio && powerCoefficient < stallShare * rotor.best.power
  return {
    wind,
    state: state.dcCurrent <= 0 ? 'turning' : slow ? 'stalled' : 'charging',
    speed,
    tipSpeedRatio,
    powerCoefficient,
    available,
    watts: state.watts,
    dcCurrent: state.dcCurrent,
    loadCurrent: state.loadCurrent,
    loadVoltage: state.loadVoltage,
    phaseCurrent: state.phaseCurrent,
    currentDensity: currentDensity({ current: state.phaseCurrent, area: parts.phaseArea }),
    copperTemperature: Math.max(copperTemperature, machine.site.ambient),
    temperatures: read(nodeRises, copper),
    nodeRises,
    overheated,
  }
}

const atRest = (parts: PowerCurveParts): Past => ({
  speed: 0,
  copperTemperature: parts.machine.site.ambient,
  nodeRises: coldNodes(parts),
})

/** The state at the limiter's wind, carried to a wind above it. */
function heldRow(parts: PowerCurveParts, held: WindRow, wind: number): WindRow {
  const available = parts.blades.available(wind)
  return {
    ...held,
    wind,
    state: held.state === 'at rest' ? 'at rest' : 'held',
    available,
    tipSpeedRatio: parts.blades.tipSpeedRatio(wind, held.speed),
    powerCoefficient: shaftPower(held.watts) / available,
  }
}

export interface PowerCurve {
  /** Wind by wind as it rises from calm to storm. */
  readonly rising: readonly WindRow[]
  /** The same winds as it falls again; where both differ, the machine may be in either state. */
  readonly falling: readonly WindRow[]
  /** Any wind up to the storm, met on a rising wind. */
  readonly rowAt: (wind: number) => WindRow
}

/** Every half metre per second up to the storm; a mechanical limiter holds all above its wind. */
export function powerCurve(parts: PowerCurveParts): PowerCurve {
  const { protection, site } = parts.machine
  const limit = protection.mechanical === 'none' ? Number.POSITIVE_INFINITY : limiterWind(parts.machine)
  const count = Math.ceil(site.stormWind / windStep - 1e-9)
  const winds = Array.from({ length: count }, (_, k) => (k + 1) * windStep)
  const rising: WindRow[] = []
  let past = atRest(parts)
  for (const wind of winds.filter((w) => w <= limit)) {
    const row = followedRow(parts, wind, past)
    rising.push(row)
    past = row
  }
  const last = rising[rising.length - 1]
  const held =
    limit >= site.stormWind ? undefined : last?.wind === limit ? last : followedRow(parts, limit, past)
  const falling: WindRow[] = []
  past = held ?? past
  for (const wind of winds.filter((w) => w <= limit).reverse()) {
    // a falling wind starts nothing
    const row = past.speed === 0 ? restRow(parts, wind) : followedRow(parts, wind, past)
    falling.unshift(row)
    past = row
  }
  if (held) {
    const above = winds.filter((w) => w > limit).map((wind) => heldRow(parts, held, wind))
    rising.push(...above)
    falling.push(...above)
  }
  const rowAt = (wind: number): WindRow => {
    if (held && wind > limit) return heldRow(parts, held, wind)
    const before = [...rising].reverse().find((row) => row.wind <= wind && row.state !== 'held')
    return before?.wind === wind ? before : followedRow(parts, wind, before ?? atRest(parts))
  }
  return { rising, falling, rowAt }
}

/** Least rising wind in which current flows [m/s]; infinite where none does. */
export function cutInWind({ rising, rowAt }: PowerCurve): number {
  const first = rising.findIndex(({ dcCurrent }) => dcCurrent > 0)
  if (first < 0) return Number.POSITIVE_INFINITY
  let high = rising[first]!.wind
  let low = first > 0 ? rising[first - 1]!.wind : 0
  while (high - low > 0.005) {
    const middle = (low + high) / 2
    if (rowAt(middle).dcCurrent > 0) high = middle
    else low = middle
  }
  return high
}

/** Wind at which the mechanical limiter acts [m/s]: as given, else where it usually does (common practice, no source). */
export const usualLimiterWind = 12

export function limiterWind({ design }: Machine): number {
  return nominal(design.protection.actsAt_m_per_s ?? usualLimiterWind)
}
