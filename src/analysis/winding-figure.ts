/** Figures of merit of a winding: torque per ampere, motor constant, and what the copper and the room give for it. */
import { type Curve, curvePolyline } from '../geometry/curve.ts'
import type { FourierSeries } from '../numerics/fourier.ts'
import { harmonicAmplitude, seriesRms } from '../numerics/fourier.ts'
import { resistanceRatio } from '../physics/electrics/resistance.ts'
import { requireNotNegative } from '../refusal/require.ts'
import type { Chain } from './compute.ts'
import { coilFormOf } from './conductor-layout.ts'

/** What a figure of merit is drawn from. */
export type Wound = Pick<Chain, 'machine' | 'layout' | 'wound' | 'voltage'>

/** Copper temperature at which windings are compared [K], 75 °C: common practice, no source. */
export const comparedTemperature = 348.15

export interface LineConstants {
  /** K_t: torque per ampere rms of a line [N·m/A]. */
  readonly torqueConstant: number
  /** R: the copper burns R I² with I amperes rms in every line [Ω]. */
  readonly resistance: number
  /** k_m = K_t/√R: torque per square root of the copper's watts [N·m/√W]. */
  readonly motorConstant: number
}

export interface ConnectedPhases {
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  /** EMF over speed of each phase [V·s/rad] and the order of its working harmonic. */
  readonly emf: readonly FourierSeries[]
  readonly order: number
  /** Of each phase at the temperature of the comparison [Ω]. */
  readonly resistance: readonly number[]
}

/** |Σ e_k a^{sk}| of the phases' phasors, rms, with a = 120°: what balanced line currents of sequence s can use. */
function sequenceSum({ emf, order }: ConnectedPhases, sense: 1 | -1): number {
  let re = 0
  let im = 0
  emf.forEach(({ cos, sin }, k) => {
    const turn = (sense * 2 * Math.PI * k) / 3
    const [c, s] = [cos[order] ?? 0, sin[order] ?? 0]
    re += c * Math.cos(turn) + s * Math.sin(turn)
    im += c * Math.sin(turn) - s * Math.cos(turn)
  })
  return Math.hypot(re, im) / Math.SQRT2
}

/**
 * Torque per ampere, resistance and motor constant of the connected machine, on the fundamental. Sine currents, the
 * same in every line, in step with the volts they suit best:
 *
 *   separate, single  K_t = Σ E_k      R = Σ R_k      every phase its own circuit
 *   star              K_t = |Σ E_k aᵏ|  R = Σ R_k      three lines whose currents sum to zero
 *   delta             K_t of the star over √3, R of the star over 3: a line carries √3 times a phase
 *
 * with E_k the rms EMF over the speed. So K_t/√R is the same in star and delta, and depends neither on the turns nor
 * on the strands of the same copper. Phases out of step lose in K_t; what runs round inside a delta is not in it.
 */
export function lineConstants(phases: ConnectedPhases): LineConstants {
  const { connection, emf, order, resistance } = phases
  for (const R of resistance) requireNotNegative('resistance', R, 'Ω')
  const R = resistance.reduce((sum, value) => sum + value, 0)
  const three = connection === 'star' || connection === 'delta'
  const Kt =
    three && emf.length === 3
      ? Math.max(sequenceSum(phases, 1), sequenceSum(phases, -1))
      : emf.reduce((sum, series) => sum + harmonicAmplitude(series, order) / Math.SQRT2, 0)
  const motorConstant = R > 0 ? Kt / Math.sqrt(R) : 0
  return connection === 'delta'
    ? { torqueConstant: Kt / Math.sqrt(3), resistance: R / 3, motorConstant }
    : { torqueConstant: Kt, resistance: R, motorConstant }
}

/** Of the machine as wound and wired, leads and joints included, with the copper at `temperature` [K]. */
export function motorConstants(
  { machine, voltage }: Pick<Wound, 'machine' | 'voltage'>,
  temperature: number,
) {
  const { stator } = machine
  const ratio = resistanceRatio({ temperature, coefficient: stator.wire.temperatureCoefficient })
  return lineConstants({
    connection: stator.connection,
    emf: voltage.phases.map(({ emf }) => emf),
    order: voltage.order,
    resistance: voltage.phases.map(({ resistance }) => resistance * ratio),
  })
}

/** Volume of all bundles: section times mean turn [m³]. */
export function windingVolume({ layout }: Pick<Wound, 'layout'>): number {
  return layout.coils.reduce((sum, { shape }) => {
    const { bundle, turnLength } = layout.shapes[shape]!
    return sum + bundle.width * bundle.thickness * turnLength
  }, 0)
}

/** Where along the chord from p to p + d it crosses the bounds of the magnets, as fractions in rising order. */
function crossings(p: readonly number[], d: readonly number[], reach: Reach): number[] {
  const found: number[] = [0, 1]
  if (reach.along === 'shaft') {
    if (d[2] !== 0) for (const bound of reach.bounds) found.push((bound - p[2]!) / d[2]!)
  } else {
    const a = d[0]! ** 2 + d[1]! ** 2
    const b = p[0]! * d[0]! + p[1]! * d[1]!
    for (const bound of reach.bounds) {
      const root = b ** 2 - a * (p[0]! ** 2 + p[1]! ** 2 - bound ** 2)
      if (a > 0 && root > 0) found.push((-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a)
    }
  }
  return found.filter((t) => t >= 0 && t <= 1).sort((x, y) => x - y)
}

interface Reach {
  readonly along: 'shaft' | 'radius'
  readonly bounds: readonly [number, number]
}

function magnetReach({ rotor }: Wound['machine']): Reach {
  const half = rotor.magnet.length / 2
  return rotor.arrangement === 'drum'
    ? { along: 'shaft', bounds: [-half, half] }
    : { along: 'radius', bounds: [rotor.pitchRadius - half, rotor.pitchRadius + half] }
}

/** Chords miss their curve by at most this share of the pitch radius. */
const fineness = 1 / 2000
/** Turns looked at from the innermost of a coil to the outermost. */
const turnsLookedAt = 8

/** Lines that stand for the turns of a shape, evenly over its bundle. A wave's bundle is the wave turned: one will do. */
function turnLines({ machine, layout }: Pick<Wound, 'machine' | 'layout'>, shape: number): readonly Curve[] {
  const { winding } = machine.stator
  const { curve, bundle } = layout.shapes[shape]!
  if (winding.kind === 'serpentine') return [curve]
  const { turn, across } = coilFormOf(machine, winding)
  return Array.from({ length: turnsLookedAt }, (_, k) =>
    turn(across[0] + ((k + 0.5) / turnsLookedAt) * bundle.width, 0),
  )
}

/** Length of a curve beyond the ends of the magnets, and its whole length [m]. */
function lengthBeyond(curve: Curve, sagitta: number, reach: Reach): readonly [beyond: number, whole: number] {
  const [low, high] = reach.bounds
  const points = curvePolyline(curve, { sagitta })
  let beyond = 0
  let whole = 0
  for (let at = 0; at + 5 < points.length; at += 3) {
    const p = [points[at]!, points[at + 1]!, points[at + 2]!]
    const d = [points[at + 3]! - p[0]!, points[at + 4]! - p[1]!, points[at + 5]! - p[2]!]
    const length = Math.hypot(...d)
    const cuts = crossings(p, d, reach)
    whole += length
    for (let k = 1; k < cuts.length; k++) {
      const t = (cuts[k - 1]! + cuts[k]!) / 2
      const place =
        reach.along === 'shaft' ? p[2]! + t * d[2]! : Math.hypot(p[0]! + t * d[0]!, p[1]! + t * d[1]!)
      if (place < low || place > high) beyond += length * (cuts[k]! - cuts[k - 1]!)
    }
  }
  return [beyond, whole]
}

/**
 * Share of the wire that lies beyond the ends of the magnets, along the shaft of a drum or the radius of a disc:
 * crowns, coil ends. Without leads.
 */
export function endTurnShare(chain: Pick<Wound, 'machine' | 'layout'>): number {
  const { machine, layout } = chain
  const reach = magnetReach(machine)
  const sagitta = machine.rotor.pitchRadius * fineness
  let beyond = 0
  let whole = 0
  layout.shapes.forEach(({ turns }, shape) => {
    const lines = turnLines(chain, shape)
    const copies = layout.coils.filter((coil) => coil.shape === shape).length
    for (const line of lines) {
      const [out, all] = lengthBeyond(line, sagitta, reach)
      beyond += (copies * turns * out) / lines.length
      whole += (copies * turns * all) / lines.length
    }
  })
  return whole > 0 ? beyond / whole : 0
}

/** Volts over the shaft's speed of one kind of terminal, means over its phases or lines. */
export interface TerminalVolts {
  /** rms [V·s/rad]: of the whole wave and of its working harmonic alone. */
  readonly rms: number
  readonly fundamental: number
  /** rms of all other harmonics over rms of the whole, 0…1. */
  readonly harmonicShare: number
}

function terminalVolts(emf: readonly FourierSeries[], order: number): TerminalVolts {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const rms = mean(emf.map(seriesRms))
  const fundamental = mean(emf.map((series) => harmonicAmplitude(series, order) / Math.SQRT2))
  const rest = Math.sqrt(Math.max(rms ** 2 - fundamental ** 2, 0))
  return { rms, fundamental, harmonicShare: rms > 0 ? rest / rms : 0 }
}

export interface WindingFigure extends LineConstants {
  /** [kg], wire of the leads included. */
  readonly copperMass: number
  /** [m³] */
  readonly volume: number
  readonly price: number | undefined
  /** k_m² over the copper [N²·m²/(W·kg)] and over the winding's room [N²·m²/(W·m³)]. */
  readonly perMass: number
  readonly perVolume: number
  readonly endTurnShare: number
  readonly phaseVolts: TerminalVolts
  readonly lineVolts: TerminalVolts
}

/** All figures of a winding with the copper at `temperature` [K]. */
export function windingFigure(chain: Wound, temperature = comparedTemperature): WindingFigure {
  const { wound, voltage } = chain
  const constants = motorConstants(chain, temperature)
  const square = constants.motorConstant ** 2
  const volume = windingVolume(chain)
  const lines = (emf: readonly { readonly emf: FourierSeries }[]) => emf.map((part) => part.emf)
  return {
    ...constants,
    copperMass: wound.copperMass,
    volume,
    price: wound.price,
    perMass: square / wound.copperMass,
    perVolume: square / volume,
    endTurnShare: endTurnShare(chain),
    phaseVolts: terminalVolts(lines(voltage.phases), voltage.order),
    lineVolts: terminalVolts(lines(voltage.lines), voltage.order),
  }
}
