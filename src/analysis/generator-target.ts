/** What the blades and the wanted watts ask of a generator: volts per speed, resistance, torque, heat. */
import type { Machine } from '../machine/machine.ts'
import { root } from '../numerics/root.ts'
import { nominal } from '../units/quantity.ts'
import type { Chain } from './compute.ts'
import { cutInSpeed, loadPoint } from './load-point.ts'
import type { MatchMap } from './match-map.ts'
import { idealPoint } from './remedy/ideal-electronics.ts'
import { tellingWind } from './telling-wind.ts'

export interface GeneratorTarget {
  /** For which the sheet is drawn up [m/s], and the watts into the load then [W]. */
  readonly wind: number
  readonly wantedPower: number
  /** The document asks for those watts; else they are a share of the blades' best. */
  readonly stated: boolean
  /** Where the blades give most in that wind [rad/s], [W]. */
  readonly bestSpeed: number
  readonly bestPower: number
  /** Where blades and winding together give most: faster, where the copper burns much [rad/s], [W] at the shaft. */
  readonly workingSpeed: number
  readonly workingPower: number
  /** Direct current that the wanted watts take [A], and the load's volts then [V]. */
  readonly current: number
  readonly loadVoltage: number
  /** Peak between lines over speed [V·s/rad]. */
  readonly voltage: {
    /**
     * With which the same window, filled with other turns, would work at just that speed; undefined where no turns
     * do, or the load does not let it be told.
     */
    readonly wanted: number | undefined
    readonly present: number
    /** Wind in which current would begin with the wanted volts, nothing taken before [m/s]. */
    readonly beginsInWind: number | undefined
  }
  /** Winding and cable as the direct current meets them [Ω]: the most that leaves the wanted watts; at hand, hot. */
  readonly resistance: { readonly ceiling: number; readonly present: number | undefined }
  readonly torque: {
    /** At the working speed [N·m]. */
    readonly working: number
    /** Of the blades at rest in the site's mean wind, against what holds the rotor [N·m]. */
    readonly atRest: number
    readonly startingFriction: number
    /** The most that the blades give in the map's last wind [N·m]: what a generator or brake must hold. */
    readonly greatest: number
  }
  readonly heat: {
    /** Wind of the greatest heat in the copper [m/s], that heat [W], copper and limit [K]. */
    readonly wind: number
    readonly power: number
    readonly temperature: number
    readonly limit: number
    /** Copper to air: the most that keeps to the limit, and at hand [K/W]. */
    readonly ceiling: number
    readonly present: number
  }
}

/** Into the load of the blades' best, where nobody said what is wanted: common practice, no source. */
const usualShare = 0.75

const searchPoints = 200

function bestOf(
  { blades }: Pick<Chain, 'blades'>,
  wind: number,
): { speed: number; power: number; torque: number } {
  const fastest = blades.fastest(wind)
  let best = { speed: 0, power: 0 }
  let torque = 0
  for (let k = 1; k < searchPoints; k++) {
    const speed = (fastest * k) / searchPoints
    const power = blades.power(wind, speed)
    if (power > best.power) best = { speed, power }
    torque = Math.max(torque, power / speed)
  }
  return { ...best, torque }
}

/** Volts of the load when it takes `power` [V]. */
function voltsAt({ machine: { load } }: Pick<Chain, 'machine'>, power: number, present: number): number {
  if (load.kind === 'resistor') return Math.sqrt(power * load.resistance)
  if (load.kind !== 'battery') return present
  const { voltage: U, resistance: R } = load
  // the battery stores U I of U I + R I²
  return U + (R * power) / U
}

/**
 * The machine as a winding of `ratio` times the turns in the same window sees its load: E ~ N, R ~ N² and L ~ N², so
 * that N turns into U are like N/ratio turns into U/ratio, with all that lies behind divided by ratio².
 */
function seenWith(machine: Machine, ratio: number): Machine {
  const { load, diode, cable } = machine
  const square = ratio * ratio
  return {
    ...machine,
    diode: { ...diode, threshold: diode.threshold / ratio, slope: diode.slope / square },
    cable: {
      ...cable,
      conductorResistance: cable.conductorResistance / square,
      seriesResistance: cable.seriesResistance / square,
    },
    load:
      load.kind === 'battery'
        ? { ...load, voltage: load.voltage / ratio, resistance: load.resistance / square }
        : load.kind === 'resistor'
          ? { ...load, resistance: load.resistance / square }
          : load,
  }
}

const leastRatio = 0.1
const greatestRatio = 8
const ratioSteps = 12

/** Turns over those at hand with which the generator takes `power` at `speed`; undefined where none do. */
function turnsRatio(
  { machine, voltage, generator }: Chain,
  at: { readonly speed: number; readonly power: number; readonly copperTemperature: number },
): number | undefined {
  const { speed, power, copperTemperature } = at
  const plain = machine.load.kind === 'battery' || machine.load.kind === 'resistor'
  if (!plain || machine.converter !== undefined || voltage.order !== 1) return undefined
  const idle = generator.idlePower(speed)
  const surplus = (log: number) =>
    loadPoint(seenWith(machine, Math.exp(log)), voltage, { speed, copperTemperature }).power.shaft +
    idle -
    power
  const [low, high] = [Math.log(leastRatio), Math.log(greatestRatio)]
  let before = low
  for (let k = 1; k <= ratioSteps; k++) {
    const log = low + ((high - low) * k) / ratioSteps
    if (surplus(log) >= 0)
      return surplus(before) < 0 ? Math.exp(root(surplus, [before, log], 1e-4)) : undefined
    before = log
  }
  return undefined
}

/** Wind in which the rotor, once started, reaches a speed unloaded; undefined where none up to the storm does [m/s]. */
function windThatTurns({ machine, blades, generator, startWind }: Chain, speed: number): number | undefined {
  const { stormWind } = machine.site
  const surplus = (wind: number) => blades.power(wind, speed) - generator.idlePower(speed)
  const steps = 60
  for (let k = 1; k <= steps; k++) {
    const wind = (stormWind * k) / steps
    if (surplus(wind) > 0)
      return Math.max(startWind, k === 1 ? wind : root(surplus, [wind - stormWind / steps, wind], 1e-3))
  }
  return undefined
}

/** The sheet, or undefined where nothing is connected or the blades give no power. */
export function generatorTarget(chain: Chain, map: MatchMap): GeneratorTarget | undefined {
  const { machine, rows, year, generator } = chain
  const told = tellingWind(chain)
  const { wind } = told.row
  const best = bestOf(chain, wind)
  if (machine.load.kind === 'open' || !(best.power > 0)) return undefined
  const { power_W } = machine.design.purpose
  const stated = power_W !== undefined && told.kind === 'wanted'
  const wantedPower = stated ? nominal(power_W) : usualShare * best.power
  const loadVoltage = voltsAt(chain, wantedPower, told.row.loadVoltage)
  if (!(loadVoltage > 0)) return undefined
  const current = wantedPower / (machine.load.kind === 'battery' ? machine.load.voltage : loadVoltage)
  const { threshold, slope } = machine.diode
  const hottest = rows.reduce((most, row) => (row.watts.winding > most.watts.winding ? row : most), rows[0]!)
  const heat = hottest.watts.winding + hottest.watts.eddy
  const limit = machine.stator.wire.highestTemperature
  const present =
    told.row.dcCurrent > 0
      ? (told.row.watts.winding + told.row.watts.cable) / told.row.dcCurrent ** 2
      : undefined
  const work = idealPoint(chain, wind)
  if (!(work.power > 0)) return undefined
  const drag = generator.idlePower(work.speed)
  const diodes = 2 * (threshold + slope * current) * current
  const battery = (loadVoltage - wantedPower / current) * current
  const ceiling = Math.max(0, work.shaft - drag - wantedPower - diodes - battery) / current ** 2
  const ratio = turnsRatio(chain, {
    speed: work.speed,
    power: work.shaft,
    copperTemperature: told.row.copperTemperature,
  })
  const begins = ratio === undefined ? undefined : cutInSpeed(seenWith(machine, ratio), chain.voltage)
  const last = map.winds[map.winds.length - 1]!
  return {
    wind,
    wantedPower,
    stated,
    bestSpeed: best.speed,
    bestPower: best.power,
    workingSpeed: work.speed,
    workingPower: work.shaft,
    current,
    loadVoltage,
    voltage: {
      wanted: ratio === undefined ? undefined : ratio * chain.voltage.greatestLinePeak,
      present: chain.voltage.greatestLinePeak,
      beginsInWind: begins === undefined ? undefined : windThatTurns(chain, begins),
    },
    resistance: { ceiling, present },
    torque: {
      working: work.shaft / work.speed,
      atRest: Math.max(0, chain.blades.torque(Math.max(year.meanWind, 1e-3), 0)),
      startingFriction: machine.shaft.startingFriction,
      greatest: bestOf(chain, last.wind).torque,
    },
    heat: {
      wind: hottest.wind,
      power: heat,
      temperature: hottest.copperTemperature,
      limit,
      ceiling: heat > 0 ? Math.max(0, limit - machine.site.ambient) / heat : Number.POSITIVE_INFINITY,
      present: chain.cooling.resistance(hottest.speed),
    },
  }
}
