/** The whole machine wind by wind: speed, amps, watts and copper temperature in steady wind. */
import type { Machine } from '../machine/machine.ts'
import { root } from '../numerics/root.ts'
import { currentDensity } from '../physics/electrics/current-density.ts'
import type { RotorCurve } from './blade-rotor.ts'
import type { GeneratorCurve } from './generator-curve.ts'
import { type BladeMap, fromRest, steadyStates } from './match.ts'
import type { StatorCooling } from './stator-cooling.ts'
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
  readonly loadVoltage: number
  readonly phaseCurrent: number
  /** Of that current in the copper [A/m²]. */
  readonly currentDensity: number
  /** [K] */
  readonly copperTemperature: number
  /** The copper finds no steady temperature below `hottest`. */
  readonly overheated: boolean
}

/** Copper temperature at which the search stops [K]: any enamel has failed long before. */
export const hottest = 623.15

const stallShare = 2 / 3

/** Winds of the table [m/s]: every half metre per second. */
export const windStep = 0.5

export interface PowerCurveParts {
  readonly machine: Machine
  readonly rotor: RotorCurve
  readonly blades: BladeMap
  readonly generator: GeneratorCurve
  readonly cooling: StatorCooling
  /** Copper that shares the phase current: strands and parallel groups together [m²]. */
  readonly phaseArea: number
}

/** Wind in which the blades' torque at rest overcomes the starting friction [m/s]; infinite where it never does. */
export function startWind({ machine, blades }: PowerCurveParts): number {
  const { startingFriction } = machine.shaft
  // the torque at rest goes with the square of the wind
  const unit = blades.torque(1, 0)
  if (startingFriction <= 0) return 0
  return unit > 0 ? Math.sqrt(startingFriction / unit) : Number.POSITIVE_INFINITY
}

/** Least wind in which the blades can hold the speed at which current begins [m/s]. */
export function cutInWind(parts: PowerCurveParts): number {
  const { generator, blades, rotor } = parts
  const { cutIn } = generator
  if (!Number.isFinite(cutIn)) return Number.POSITIVE_INFINITY
  const drag = generator.shaftPower(cutIn, parts.machine.site.ambient)
  const surplus = (wind: number) => blades.power(wind, cutIn) - drag
  // below this wind the rotor at that speed is past its runaway ratio
  const radius = cutIn / blades.tipSpeedRatio(1, 1)
  const least = (cutIn * blades.tipSpeedRatio(1, 1)) / rotor.runaway
  const most = 60
  if (!(surplus(most) > 0) || radius <= 0) return Number.POSITIVE_INFINITY
  let low = least * 0.999
  while (surplus(low) > 0 && low > 1e-3) low /= 2
  const wind = surplus(low) > 0 ? low : root(surplus, [low, most], 1e-6)
  return Math.max(wind, startWind(parts))
}

const restRow = (parts: PowerCurveParts, wind: number): WindRow => ({
  wind,
  state: 'at rest',
  speed: 0,
  tipSpeedRatio: 0,
  powerCoefficient: 0,
  available: parts.blades.available(wind),
  watts: noWatts,
  dcCurrent: 0,
  loadVoltage: parts.generator.at(0, parts.machine.site.ambient).loadVoltage,
  phaseCurrent: 0,
  currentDensity: 0,
  copperTemperature: parts.machine.site.ambient,
  overheated: false,
})

function stateAt(parts: PowerCurveParts, wind: number, copperTemperature: number) {
  const { blades, generator, rotor } = parts
  const fastest = (rotor.runaway * 1.02 * wind) / blades.tipSpeedRatio(1, 1)
  return fromRest(
    steadyStates(
      (speed) => blades.power(wind, speed),
      (speed) => generator.shaftPower(speed, copperTemperature),
      fastest,
    ),
  )
}

/** One wind, the copper as warm as its own loss makes it. */
export function windRow(parts: PowerCurveParts, wind: number): WindRow {
  const { machine, generator, blades, rotor, cooling } = parts
  const { ambient } = machine.site
  if (!(wind > 0) || wind < startWind(parts)) return restRow(parts, wind)
  // the temperature that a temperature makes; the equilibrium is where both agree
  const heated = (copperTemperature: number) => {
    const state = stateAt(parts, wind, copperTemperature)
    if (!state) return undefined
    const { watts } = generator.at(state.speed, copperTemperature)
    return {
      speed: state.speed,
      temperature: ambient + cooling.resistance(state.speed) * (watts.winding + watts.eddy),
    }
  }
  const rise = (temperature: number) => (heated(temperature)?.temperature ?? ambient) - temperature
  let temperature = ambient
  let overheated = false
  if (rise(ambient) > 0.05) {
    overheated = rise(hottest) > 0
    temperature = overheated ? hottest : root(rise, [ambient, hottest], 0.02)
  }
  const found = heated(temperature)
  if (!found) return restRow(parts, wind)
  const { speed } = found
  const state = generator.at(speed, temperature)
  const available = blades.available(wind)
  const taken = shaftPower(state.watts)
  const powerCoefficient = taken / available
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
    loadVoltage: state.loadVoltage,
    phaseCurrent: state.phaseCurrent,
    currentDensity: currentDensity({ current: state.phaseCurrent, area: parts.phaseArea }),
    copperTemperature: temperature,
    overheated,
  }
}

/** The table from half a metre per second up to the storm; a mechanical limiter holds all above its wind. */
export function powerCurve(parts: PowerCurveParts): WindRow[] {
  const { protection, site } = parts.machine
  const limit = protection.mechanical === 'none' ? Number.POSITIVE_INFINITY : limiterWind(parts.machine)
  const rows: WindRow[] = []
  let held: WindRow | undefined
  const count = Math.ceil(site.stormWind / windStep - 1e-9)
  for (let k = 1; k <= count; k++) {
    const wind = k * windStep
    if (wind <= limit) rows.push(windRow(parts, wind))
    else {
      held ??= windRow(parts, limit)
      const available = parts.blades.available(wind)
      const working = held.state !== 'at rest'
      rows.push({
        ...held,
        wind,
        state: working ? 'held' : 'at rest',
        available,
        tipSpeedRatio: parts.blades.tipSpeedRatio(wind, held.speed),
        powerCoefficient: shaftPower(held.watts) / available,
      })
    }
  }
  return rows
}

/** Wind at which the mechanical limiter acts [m/s]: as given, else where it usually does (common practice, no source). */
export const usualLimiterWind = 12

export function limiterWind({ design }: Machine): number {
  const given = design.protection.actsAt_m_per_s
  return given === undefined ? usualLimiterWind : typeof given === 'number' ? given : given.value
}
