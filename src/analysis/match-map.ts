/** The match of blades and generator as a map: watts over speed for many winds, every steady state, the zones. */
import type { Chain } from './compute.ts'
import { copperNode } from './copper-node.ts'
import { type BladeMap, steadyStates } from './match.ts'
import { bandCurves, type SpeedPower } from './match-band.ts'
import { pathKind } from './path-kind.ts'
import { hottest, limiterWind, stallShare, windStep } from './power-curve.ts'
import { type Steps, within } from './step.ts'
import { shaftPower } from './watts.ts'

/** A speed at which blades and generator agree in a wind, the copper as warm as it gets there. */
export interface MatchState {
  /** [rad/s] */
  readonly speed: number
  /** Shaft power [W]. */
  readonly power: number
  /** A faster rotor would be slowed, with the copper as it is and with the copper warmed through. */
  readonly stable: boolean
  readonly tipSpeedRatio: number
  readonly powerCoefficient: number
  /** [K] */
  readonly copperTemperature: number
  readonly kind: 'turning' | 'charging' | 'stalled'
  /** dP/dω of the blades and of the generator, copper as warm as it is [W·s/rad]. */
  readonly bladeSlope: number
  readonly generatorSlope: number
}

export interface MatchWind {
  /** [m/s] */
  readonly wind: number
  /** Rising in speed. */
  readonly states: readonly MatchState[]
  /** Index of the state that a rising and a falling wind reach; −1 at rest. */
  readonly rising: number
  readonly falling: number
  /** Below this speed blades of this wind count as stalled [rad/s]. */
  readonly stallSpeed: number
  /** Torque of the blades at rest over the starting friction; infinite without friction. */
  readonly startingMargin: number
  /** Blades [W], at `bladeFractions` of `fastest`. */
  readonly bladePower: Float64Array
  /** A little past the speed at which unloaded blades stop gaining [rad/s]. */
  readonly fastest: number
}

export interface MatchMap {
  /** Every one up to the limiter's wind, or to the storm where nothing limits. */
  readonly winds: readonly MatchWind[]
  /** Wind that ends the map [m/s], and what ends it. */
  readonly greatestWind: number
  readonly endedBy: 'limiter' | 'storm'
  /** Of `fastest`, from rest to past runaway. */
  readonly bladeFractions: Float64Array
  /** What the generator takes. settled: copper as warm as it gets if it stays at the speed. */
  readonly generator: {
    readonly settled: SpeedPower
    readonly cold: SpeedPower
    readonly hot: SpeedPower
  }
  /** [K] */
  readonly coldTemperature: number
  readonly hotTemperature: number
  /** The battery empty and full, copper settled; undefined where no battery is charged. */
  readonly battery:
    | {
        readonly low: SpeedPower & { readonly voltage: number }
        readonly high: SpeedPower & { readonly voltage: number }
      }
    | undefined
  readonly zones: MatchZones
}

/** Where on the map a machine does not want to be. */
export interface MatchZones {
  /** Under this wind it stays at rest [m/s]. */
  readonly startWind: number
  /** Left of this speed no current flows [rad/s]; a rising wind passes it at `cutInWind` [m/s]. */
  readonly cutInSpeed: number
  readonly cutInWind: number
  /** Above this line blades are stalled: power at which a wind's blades come out of stall, by speed. */
  readonly stallLine: SpeedPower
  /** Winds in which a rising wind ends in stall [m/s]. */
  readonly stalledWinds: readonly number[]
  /** Right of the fastest state that the map's last wind allows: only a lost load gets there [rad/s]. */
  readonly overspeed: number
}

const speedCount = 90
/** Winds of the map at most; their step is the least of these that keeps to it [m/s]. */
const mostWinds = 50
const windSteps = [0.1, windStep / 2, windStep, 2 * windStep, 4 * windStep, 8 * windStep] as const

/** Nodes of the settled copper temperature over speed. */
const temperatureNodes = 40
const mostRounds = 60
const closeEnough = 0.02

type Thermal = Pick<Chain, 'machine' | 'blades' | 'generator' | 'heat'>

const windHalvings = 24

/** Wind that keeps the machine at a speed while it takes that power; at most the storm's [m/s]. */
function keepingWind({ blades, machine }: Thermal, speed: number, power: number): number {
  let low = 0
  let high = machine.site.stormWind
  for (let k = 0; k < windHalvings; k++) {
    const middle = (low + high) / 2
    if (blades.power(middle, speed) < power) low = middle
    else high = middle
  }
  return high
}

/** Temperature at which copper held at this speed stays, in the wind that holds it there; no more than `hottest` [K]. */
function settledTemperature(thermal: Thermal, speed: number, from: number): number {
  const { machine, generator, heat } = thermal
  const { ambient } = machine.site
  const rises = new Float64Array(heat.body.nodes.length)
  let temperature = from
  for (let round = 0; round < mostRounds; round++) {
    const { watts } = generator.at(speed, temperature)
    const wind = speed > 0 ? keepingWind(thermal, speed, shaftPower(watts)) : 0
    const sources = heat.sources({ copper: watts.winding + watts.eddy, metal: watts.parts })
    heat.net.round({ speed, wind, sources }, rises)
    const step = ambient + rises[copperNode]! - temperature
    if (Math.abs(step) < closeEnough) break
    temperature += 0.7 * step
    if (temperature >= hottest) return hottest
  }
  return temperature
}

/** Settled copper temperature against speed, straight between nodes that crowd where current begins [K]. */
function temperatureCurve(thermal: Thermal, fastest: number): (speed: number) => number {
  const { ambient } = thermal.machine.site
  const start = Math.min(thermal.generator.cutIn, fastest)
  const speeds = new Float64Array(temperatureNodes + 1)
  const values = new Float64Array(temperatureNodes + 1)
  values[0] = Math.max(ambient, settledTemperature(thermal, 0, ambient))
  for (let k = 1; k <= temperatureNodes; k++) {
    const share = k / temperatureNodes
    // a fifth of the nodes before current begins, the others after it
    speeds[k] = share <= 0.2 ? 5 * share * start : start + (fastest - start) * ((share - 0.2) / 0.8) ** 1.5
    if (!(speeds[k]! > speeds[k - 1]!)) speeds[k] = speeds[k - 1]! + 1e-9 * fastest
    values[k] = settledTemperature(thermal, speeds[k]!, values[k - 1]!)
  }
  let hint = 0
  return (speed) => {
    if (!(speed > 0)) return values[0]!
    if (speed >= speeds[temperatureNodes]!) return values[temperatureNodes]!
    // scans walk along the curve: the last place is near
    while (hint > 0 && speeds[hint]! > speed) hint--
    while (hint < temperatureNodes - 1 && speeds[hint + 1]! <= speed) hint++
    const t = (speed - speeds[hint]!) / (speeds[hint + 1]! - speeds[hint]!)
    return values[hint]! + t * (values[hint + 1]! - values[hint]!)
  }
}

/** Speed at which blades of a wind come out of stall: two thirds of their best power, left of its tip-speed ratio. */
function stallSpeedOf({ rotor, blades }: Pick<Chain, 'rotor' | 'blades'>, wind: number): number {
  const { best } = rotor
  const unit = blades.tipSpeedRatio(wind, 1)
  if (!(unit > 0) || !(best.tipSpeedRatio > 0)) return 0
  let high = best.tipSpeedRatio / unit
  const threshold = stallShare * best.power * blades.available(wind)
  if (!(blades.power(wind, high) > threshold)) return high
  let low = 0
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2
    if (blades.power(wind, middle) > threshold) high = middle
    else low = middle
  }
  return high
}

/** Share of a speed within which it counts as that of a steady state. */
const sameSpeed = 1e-6

/** The state that a rotor turning at `from` settles in, −1 for rest: it goes where the surplus sends it. */
function reached(
  states: readonly Pick<MatchState, 'speed' | 'stable'>[],
  from: number,
  speedsUp: boolean,
): number {
  const here = states.findIndex(({ speed, stable }) => stable && Math.abs(speed - from) <= sameSpeed * from)
  if (here >= 0) return here
  const next = states.findIndex(({ speed }) => speed > from)
  const above = next < 0 ? states.length : next
  return speedsUp ? (above < states.length ? above : states.length - 1) : above - 1
}

type MapChain = Pick<Chain, 'machine' | 'rotor' | 'blades' | 'generator' | 'heat' | 'startWind' | 'cutInWind'>

const relativeStep = 1e-4

function stateAt(
  { rotor, blades, generator }: MapChain,
  at: {
    readonly wind: number
    readonly speed: number
    readonly stable: boolean
    readonly temperature: number
  },
): MatchState {
  const { wind, speed, temperature } = at
  const power = blades.power(wind, speed)
  const h = relativeStep * speed
  const slope = (curve: (speed: number) => number) => (curve(speed + h) - curve(speed - h)) / (2 * h)
  const bladeSlope = slope((ω) => blades.power(wind, ω))
  const generatorSlope = slope((ω) => generator.shaftPower(ω, temperature))
  const tipSpeedRatio = blades.tipSpeedRatio(wind, speed)
  const powerCoefficient = power / blades.available(wind)
  const slow = tipSpeedRatio < rotor.best.tipSpeedRatio && powerCoefficient < stallShare * rotor.best.power
  return {
    speed,
    power,
    stable: at.stable && generatorSlope > bladeSlope,
    tipSpeedRatio,
    powerCoefficient,
    copperTemperature: temperature,
    kind: speed <= generator.cutIn ? 'turning' : slow ? 'stalled' : 'charging',
    bladeSlope,
    generatorSlope,
  }
}

function windsOf(greatest: number): number[] {
  const step =
    windSteps.find((each) => Math.floor(greatest / each + 1e-9) <= mostWinds) ??
    windSteps[windSteps.length - 1]!
  const count = Math.max(1, Math.floor(greatest / step + 1e-9))
  return Array.from({ length: count }, (_, k) => ((k + 1) * Math.round(step * 1000)) / 1000)
}

function sampled(speeds: Float64Array, curve: (speed: number) => number): SpeedPower {
  return { speed: speeds, power: speeds.map(curve) }
}

/** Indices that rising and falling winds reach, wind by wind. */
function followPaths(
  winds: readonly Omit<MatchWind, 'rising' | 'falling'>[],
  {
    startWind,
    surplus,
  }: { readonly startWind: number; readonly surplus: (wind: number, speed: number) => number },
): MatchWind[] {
  const settle = ({ wind, states, fastest }: Omit<MatchWind, 'rising' | 'falling'>, from: number): number => {
    const least = fastest / 5000
    const start = Math.max(from, least)
    return reached(states, start, surplus(wind, start) > 0)
  }
  let speed = 0
  const rising = winds.map((each) => {
    const index = speed === 0 && each.wind < startWind ? -1 : settle(each, speed)
    speed = index < 0 ? 0 : each.states[index]!.speed
    return index
  })
  const falling = new Array<number>(winds.length).fill(-1)
  for (let k = winds.length - 1; k >= 0; k--) {
    // a falling wind starts nothing
    if (k < winds.length - 1 && speed === 0) break
    falling[k] = settle(winds[k]!, speed)
    speed = falling[k]! < 0 ? 0 : winds[k]!.states[falling[k]!]!.speed
  }
  return winds.map((each, k) => ({ ...each, rising: rising[k]!, falling: falling[k]! }))
}

function stallLineOf(winds: readonly MatchWind[], blades: BladeMap): SpeedPower {
  const speed = Float64Array.from([0, ...winds.map(({ stallSpeed }) => stallSpeed)])
  const power = Float64Array.from([0, ...winds.map(({ wind, stallSpeed }) => blades.power(wind, stallSpeed))])
  return { speed, power }
}

/** The whole map of a computed chain. Yields the fraction done. */
export function* matchMap(
  chain: MapChain & Pick<Chain, 'voltage' | 'drag' | 'circulating'>,
): Steps<MatchMap> {
  const { machine, blades, generator, startWind } = chain
  const { protection, site } = machine
  const limit = protection.mechanical === 'none' ? Number.POSITIVE_INFINITY : limiterWind(machine)
  const greatestWind = Math.min(limit, site.stormWind)
  const topSpeed = blades.fastest(greatestWind)
  const temperatureAt = temperatureCurve(chain, topSpeed)
  const taken = (speed: number) => generator.shaftPower(speed, temperatureAt(speed))
  yield 0.15
  const bladeFractions = Float64Array.from({ length: speedCount }, (_, k) => k / (speedCount - 1))
  const list: Omit<MatchWind, 'rising' | 'falling'>[] = []
  const winds = windsOf(greatestWind)
  const unit = blades.torque(1, 0)
  for (const wind of winds) {
    const fastest = blades.fastest(wind)
    const given = (speed: number) => blades.power(wind, speed)
    const states = steadyStates(given, taken, fastest).map(({ speed, stable }) =>
      stateAt(chain, { wind, speed, stable, temperature: temperatureAt(speed) }),
    )
    const friction = machine.shaft.startingFriction
    list.push({
      wind,
      states,
      stallSpeed: stallSpeedOf(chain, wind),
      startingMargin:
        friction > 0 ? Math.max(0, blades.torque(wind, 0)) / friction : Number.POSITIVE_INFINITY,
      bladePower: bladeFractions.map((share) => given(share * fastest)),
      fastest,
    })
    yield 0.15 + (0.55 * list.length) / winds.length
  }
  const followed = followPaths(list, {
    startWind: unit > 0 ? startWind : Number.POSITIVE_INFINITY,
    surplus: (wind, speed) => blades.power(wind, speed) - taken(speed),
  })
  const onPath = followed.flatMap(({ states, rising, falling }) =>
    [rising, falling].flatMap((index) => (index < 0 ? [] : [states[index]!])),
  )
  const cutIn = generator.cutIn
  const speeds = Float64Array.from(
    [...bladeFractions.map((share) => share * topSpeed), ...(cutIn < topSpeed ? [cutIn] : [])].sort(
      (a, b) => a - b,
    ),
  )
  const coldTemperature = site.ambient
  const hotTemperature = onPath.reduce(
    (most, each) => Math.max(most, each.copperTemperature),
    coldTemperature,
  )
  const battery = yield* within(bandCurves(chain, { speeds, temperatureAt }), 0.7, 0.3)
  const last = followed[followed.length - 1]!
  return {
    winds: followed,
    greatestWind,
    endedBy: limit < site.stormWind ? 'limiter' : 'storm',
    bladeFractions,
    generator: {
      settled: sampled(speeds, taken),
      cold: sampled(speeds, (speed) => generator.shaftPower(speed, coldTemperature)),
      hot: sampled(speeds, (speed) => generator.shaftPower(speed, hotTemperature)),
    },
    coldTemperature,
    hotTemperature,
    battery,
    zones: {
      startWind,
      cutInSpeed: cutIn,
      cutInWind: chain.cutInWind,
      stallLine: stallLineOf(followed, blades),
      stalledWinds: followed
        .filter((each) => pathKind(each, each.rising) === 'stalled')
        .map(({ wind }) => wind),
      overspeed: last.states.filter(({ stable }) => stable).at(-1)?.speed ?? topSpeed,
    },
  }
}
