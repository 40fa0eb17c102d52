/** A machine in a storm, second by second: speed, volts, amps, copper temperature, and what switches when. */
import type { Steps } from './step.ts'
import type { Bus } from './storm-bus.ts'
import type { StormCase } from './storm-case.ts'
import { stormCircuit } from './storm-circuit.ts'
import { limiterShare } from './storm-limiter.ts'
import type { StormMachine } from './storm-machine.ts'
import { type Happening, switchboard } from './storm-switch.ts'
import { type StormTrace, traceRecorder } from './storm-trace.ts'
import { stormWarmth } from './storm-warmth.ts'
import type { StormWind } from './storm-wind.ts'

/** Greatest of a whole run, also between the samples of its trace. */
export interface StormMost {
  /** [rad/s], and when [s] */
  speed: number
  speedAt: number
  /** Behind the bridge [V], between lines rms [V]. */
  directVoltage: number
  lineVoltage: number
  /** From the bridge [A], of a phase rms [A]. */
  directCurrent: number
  phaseCurrent: number
  /** Into the dump while it is on, and on average once the wind has settled [W]. */
  dumpPower: number
  dumpMean: number
  /** Hottest spot of the copper, and the warmest magnets [K]. */
  copperTemperature: number
  magnetTemperature: number
}

/** When and in which wind something first happened, and how fast the rotor was. */
export interface Beginning {
  readonly time: number
  readonly wind: number
  readonly speed: number
}

export interface Storm {
  readonly wind: StormWind
  readonly given: StormCase
  readonly trace: StormTrace
  readonly most: Readonly<StormMost>
  /** When it first turned, and when current first flowed; undefined where it never did. */
  readonly turns: Beginning | undefined
  readonly charges: Beginning | undefined
  /** First time at which the copper passed the limit it was given [s]; undefined where it did not. */
  readonly hotAt: number | undefined
  /** At the end: what still holds the rotor; a dump that switches to and fro counts as on. */
  readonly last: {
    readonly speed: number
    /** Mean of the copper, and the warmest magnets [K]. */
    readonly copperTemperature: number
    readonly magnetTemperature: number
    readonly current: boolean
    readonly limiter: boolean
    readonly dump: boolean
    readonly short: boolean
  }
  /** What failed and switched, in its order. */
  readonly happened: readonly Happening[]
  /** Work of the blades, work taken by currents and drag, kinetic energy gained [J]. */
  readonly energy: { readonly blades: number; readonly taken: number; readonly kinetic: number }
  readonly steps: number
}

export interface StormOptions {
  /** Limit of the copper whose passing is noted [K]. */
  readonly copperLimit?: number
  /** Speed and copper at the beginning; else those of the steady wind there. */
  readonly from?: { readonly speed: number; readonly copperTemperature: number }
  /** How long to go on in the last wind, untraced, for the sake of the copper [s]. */
  readonly soak?: number
}

/** Error allowed per step, as a share of the fastest speed; and the steps' bounds, also after the wind has settled [s]. */
const stepError = 2e-5
const leastStep = 1e-4
const mostStep = 0.25
const mostSoakStep = 1
/** Copper and magnets may move so far before the tables are mixed anew [K]. */
const temperatureStep = 0.5
/** What acted so shortly before the end still acts [s]. */
const lately = 2
/** Below it no wind is told from calm [m/s]. */
const calm = 1e-3
/** Slower than this a rotor stands: a turn in a minute [rad/s]. */
const standing = 0.1

/** The run. Yields the fraction done. */
export function* storm(
  parts: StormMachine,
  wind: StormWind,
  given: StormCase,
  { copperLimit = Number.POSITIVE_INFINITY, from, soak = 0 }: StormOptions = {},
): Steps<Storm> {
  const { chain, inertia } = parts
  const { machine, blades, voltage } = chain
  const { protection, site, shaft, cable, diode } = machine
  const J = Math.max(inertia.inertia, 1e-9)
  const row = chain.rowAt(Math.max(calm, Math.min(wind.at(0), site.stormWind)))
  let { speed } = from ?? row
  const warmth = stormWarmth(chain, row, from?.copperTemperature)
  const circuit = stormCircuit(parts, given, { voltage: row.loadVoltage, ...warmth.now() })
  const board = switchboard(parts, given, circuit)
  const { is, state } = circuit
  let tabledAt = warmth.now()

  const works = given.limiterWorks && protection.mechanical !== 'none'
  const share = limiterShare(chain, parts.limiter)
  const { lag } = parts.limiter
  let kept = works ? share(wind.at(0), speed) : 1

  /** Nothing outside the winding carries current: a delta's own does. */
  const isIdle = (bus: Bus | undefined) => bus === undefined && state.torque === 0
  const bladeTorque = (t: number, w: number) => blades.torque(Math.max(wind.at(t) * kept, calm), w)
  const takenTorque = (w: number) => {
    const bus = circuit.settle(w)
    return state.torque + (isIdle(bus) ? circuit.drag().idle(w) : circuit.drag().loaded(w))
  }
  /** A rotor at rest stays there until the blades overcome what holds it. */
  const acceleration = (blade: number, taken: number, w: number) =>
    w <= 0 && blade <= Math.max(taken, shaft.startingFriction) ? 0 : (blade - taken) / J

  const most: StormMost = {
    speed: 0,
    speedAt: 0,
    directVoltage: 0,
    lineVoltage: 0,
    directCurrent: 0,
    phaseCurrent: 0,
    dumpPower: 0,
    dumpMean: 0,
    copperTemperature: warmth.now().hotSpot,
    magnetTemperature: warmth.now().magnetTemperature,
  }
  let hotAt: number | undefined
  let turns: Beginning | undefined
  let charges: Beginning | undefined
  let currentAt = Number.NEGATIVE_INFINITY
  let dumpAt = Number.NEGATIVE_INFINITY
  let volts = 0
  const lineRms = Math.max(...voltage.lines.map(({ rms }) => rms))
  const shape = voltage.greatestLinePeak > 0 ? lineRms / voltage.greatestLinePeak : 0
  const dcOhms = cable.place === 'before bridge' ? 0 : 2 * cable.conductorResistance
  const note = (t: number, bus: Bus | undefined) => {
    if (speed > most.speed) {
      most.speed = speed
      most.speedAt = t
    }
    volts = bus?.voltage ?? circuit.openVoltage(speed)
    const atBridge = volts + state.dcCurrent * dcOhms
    most.directVoltage = Math.max(most.directVoltage, atBridge)
    // the bridge clamps the lines to what stands behind it
    const line = Math.min(lineRms * speed, shape * (atBridge + 2 * diode.threshold))
    most.lineVoltage = Math.max(most.lineVoltage, is.short === 'none' ? line : 0)
    most.directCurrent = Math.max(most.directCurrent, state.dcCurrent)
    most.phaseCurrent = Math.max(most.phaseCurrent, state.phaseCurrent)
    const ohms = circuit.dumpOhms()
    if (ohms > 0 && is.short === 'none') most.dumpPower = Math.max(most.dumpPower, volts ** 2 / ohms)
    const { hotSpot, magnetTemperature } = warmth.now()
    most.copperTemperature = Math.max(most.copperTemperature, hotSpot)
    most.magnetTemperature = Math.max(most.magnetTemperature, magnetTemperature)
    if (hotAt === undefined && hotSpot > copperLimit) hotAt = t
    if (turns === undefined && speed > standing) turns = { time: t, wind: wind.at(t), speed }
    if (charges === undefined && state.dcCurrent > 0) charges = { time: t, wind: wind.at(t), speed }
    if (state.torque > 0) currentAt = t
    if (ohms > 0) dumpAt = t
  }
  const warm = (bus: Bus | undefined, h: number) => {
    const heat =
      state.windingLoss + (isIdle(bus) ? circuit.drag().idleHeat(speed) : circuit.drag().loadedHeat(speed))
    warmth.advance({ speed, wind: wind.at(time), copper: heat }, h)
  }

  const end = wind.duration + soak
  const recorder = traceRecorder(wind)
  const record = (t: number) =>
    recorder.record(t, {
      speed,
      voltage: volts,
      current: state.dcCurrent,
      phaseCurrent: state.phaseCurrent,
      copperTemperature: warmth.now().copperTemperature,
      kept,
    })
  const kineticBefore = 0.5 * J * speed * speed
  let time = 0
  let step = 0.02
  let bladeWork = 0
  let takenWork = 0
  let steps = 0
  let told = 0
  let bus = circuit.settle(speed)
  note(0, bus)
  record(0)
  while (time < end - 1e-9) {
    const due = board.due()
    let h = Math.min(
      step,
      end - time,
      due > time + 1e-9 ? due - time : leastStep,
      time < wind.duration ? mostStep : mostSoakStep,
    )
    for (;;) {
      // third order, its second-order companion tells the error (Bogacki & Shampine 1989); limiter and switches rest
      const b1 = bladeTorque(time, speed)
      const t1 = takenTorque(speed)
      const a1 = acceleration(b1, t1, speed)
      const w2 = Math.max(0, speed + 0.5 * h * a1)
      const b2 = bladeTorque(time + 0.5 * h, w2)
      const t2 = takenTorque(w2)
      const a2 = acceleration(b2, t2, w2)
      const w3 = Math.max(0, speed + 0.75 * h * a2)
      const b3 = bladeTorque(time + 0.75 * h, w3)
      const t3 = takenTorque(w3)
      const a3 = acceleration(b3, t3, w3)
      const next = Math.max(0, speed + h * ((2 / 9) * a1 + (1 / 3) * a2 + (4 / 9) * a3))
      const a4 = acceleration(bladeTorque(time + h, next), takenTorque(next), next)
      const error = Math.abs(h * ((-5 / 72) * a1 + (1 / 12) * a2 + (1 / 9) * a3 - (1 / 8) * a4))
      const over = error / (stepError * parts.fastest)
      const grow = 0.9 * Math.max(over, 1e-6) ** (-1 / 3)
      if (over <= 1 || h <= leastStep) {
        bladeWork += h * ((2 / 9) * b1 * speed + (1 / 3) * b2 * w2 + (4 / 9) * b3 * w3)
        takenWork += h * ((2 / 9) * t1 * speed + (1 / 3) * t2 * w2 + (4 / 9) * t3 * w3)
        speed = next
        time += h
        step = h * Math.min(grow, 3)
        break
      }
      h = Math.max(leastStep, h * Math.max(grow, 0.2))
    }
    steps += 1
    bus = circuit.settle(speed)
    warm(bus, h)
    if (works) kept += (share(wind.at(time), speed) - kept) * (1 - Math.exp(-h / lag))
    circuit.charge(bus, speed, h)
    if (soak > 0 && time > wind.duration && circuit.dumpOhms() > 0 && bus !== undefined)
      most.dumpMean += (bus.voltage ** 2 / circuit.dumpOhms()) * (h / soak)
    note(time, bus)
    const now = warmth.now()
    const moved =
      Math.abs(now.copperTemperature - tabledAt.copperTemperature) > temperatureStep ||
      Math.abs(now.magnetTemperature - tabledAt.magnetTemperature) > temperatureStep
    if (board.look(time, bus, speed) || moved) {
      circuit.retable(now.copperTemperature, now.strength)
      tabledAt = now
    }
    record(time)
    if (time - told > end / 20) {
      told = time
      yield time / end
    }
  }
  record(end)
  return {
    wind,
    given,
    trace: recorder.trace,
    most,
    turns,
    charges,
    hotAt,
    last: {
      speed,
      copperTemperature: warmth.now().copperTemperature,
      magnetTemperature: warmth.now().magnetTemperature,
      current: end - currentAt < lately,
      limiter: works && kept < 1 - 1e-3,
      dump: end - dumpAt < lately,
      short: is.short !== 'none',
    },
    happened: board.happened,
    energy: { blades: bladeWork, taken: takenWork, kinetic: 0.5 * J * speed * speed - kineticBefore },
    steps,
  }
}
