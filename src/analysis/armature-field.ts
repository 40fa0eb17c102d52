/** The field that the currents of a shorted winding raise at points which turn with the rotor. */
import { curvePolyline, turnedCurve } from '../geometry/curve.ts'
import { mirrorPartners } from '../geometry/mirror-partner.ts'
import type { Machine } from '../machine/machine.ts'
import { turnPointsAboutZ, type Vector3 } from '../numerics/vector.ts'
import { wireFluxDensity } from '../physics/magnetics/wire-field.ts'
import { ironPlanes } from './coil-inductance.ts'
import { type ConductorLayout, type ConductorShape, conductorLayout } from './conductor-layout.ts'
import type { IronPlanes } from './image-inductance.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'
import { type ShortCircuit, shortCircuit } from './short-circuit.ts'

const μ0 = 4e-7 * Math.PI

/** Mirrors and shifts of a winding between plates: z → sense·z + shift, the current keeping its way along the iron. */
function windingImages({ lower, upper }: IronPlanes): readonly (readonly [sense: 1 | -1, shift: number])[] {
  const itself = [1, 0] as const
  if (lower === undefined && upper === undefined) return [itself]
  if (lower === undefined || upper === undefined) return [itself, [-1, 2 * (lower ?? upper!)]]
  const D = upper - lower
  // what repeats farther off cancels between phases, about as exp(−4π D/pole pitch)
  return [
    itself,
    [-1, 2 * lower],
    [-1, 2 * upper],
    [1, 2 * D],
    [1, -2 * D],
    [-1, 2 * upper + 2 * D],
    [-1, 2 * lower - 2 * D],
  ]
}

/** Chords may miss a coil by this share of a turn's length: half a per cent of the field. */
const sagittaShare = 0.008

export interface TurningPoints {
  /** x y z of the points with the rotor at angle 0. */
  readonly points: Float64Array
  /** Unit vector along which the field is wanted, turning with them. */
  readonly direction: Vector3
  /** Rotor angles [rad]. */
  readonly angles: readonly number[]
}

interface Wire {
  readonly polyline: Float64Array
  /** Ampere-turns per ampere of the coil. */
  readonly turns: number
  readonly softening: number
}

/** Keeps the field finite for points that lie in a bundle, as a share of its thickness; outside it takes 0.4 % at most. */
const softeningShare = 0.05

/** Of a spread, where two Gauss points stand for it, to either side of its middle. */
const gaussPair = 0.5 / Math.sqrt(3)

/** Images beyond the nearest three lie twice the room between the plates away and more: they show no bundle. */
const nearImages = 3
const farChords = 2

/**
 * Wires that stand for a shape at angle 0: the bundle of a coil, or of a wave, by two filaments side by side; of a coil
 * far off by one with longer chords, 0.03 % of the whole.
 */
function shapeWires(machine: Machine, shape: ConductorShape, number: number, far: boolean): readonly Wire[] {
  const { bundle, turns, turnLength, repeats, spreadAngle, curve } = shape
  const curves =
    repeats > 1
      ? [-1, 1].map((side) => ({ curve: turnedCurve(curve, side * gaussPair * spreadAngle), weight: 0.5 }))
      : conductorLayout(machine, [far ? 1 : 2, 1]).shapes[number]!.filaments
  return curves.map((filament) => ({
    polyline: curvePolyline(filament.curve, {
      sagitta: ((far ? farChords : 1) * sagittaShare * turnLength) / repeats,
    }),
    turns: turns * filament.weight,
    softening: softeningShare * bundle.thickness,
  }))
}

/** Angles in whole parts of this many a turn are told apart. */
const angleKeys = 1e9

const keyOf = (angle: number): number =>
  Math.round((angle / (2 * Math.PI) - Math.floor(angle / (2 * Math.PI))) * angleKeys) % angleKeys

/**
 * Points that mirror each other in the plane through the shaft and their own middle, where the direction lies in that
 * plane: a coil that is its own mirror image meets them at −θ as it does at θ.
 */
function mirrored({ points, direction: [x, y] }: TurningPoints) {
  let [X, Y] = [0, 0]
  for (let i = 0; i < points.length; i += 3) {
    X += points[i]!
    Y += points[i + 1]!
  }
  const middle = Math.atan2(Y, X)
  if (Math.abs(y * Math.cos(middle) - x * Math.sin(middle)) > 1e-9) return undefined
  const partner = mirrorPartners(points, middle)
  return partner === undefined ? undefined : { middle, partner }
}

/**
 * H along the direction per ampere of each phase, phase by phase, angle by angle, points fastest [1/m]. Plates are
 * unbounded and not saturated, magnets are air. Copies of a coil are met at angles of their own, so that what one
 * relative angle gives serves all that come to it. Against all filaments of the bundle: 3 % low in the mean over the
 * magnets, 0.3 % where it is strongest.
 */
export function armatureFields(
  machine: Machine,
  layout: ConductorLayout,
  turning: TurningPoints,
): Float64Array[] {
  const { points, direction, angles } = turning
  const mirror = mirrored(turning)
  const count = points.length / 3
  const images = windingImages(ironPlanes(machine))
  const perShape = layout.shapes.map((shape, number) => {
    const met = new Map<number, number>()
    const partner = shape.parity === 'even' ? mirror?.partner : undefined
    const imageOf = (angle: number) => keyOf(-2 * (mirror?.middle ?? 0) - angle)
    for (const coil of layout.coils)
      if (coil.shape === number)
        for (const angle of angles) {
          const relative = angle - coil.angle
          if (partner === undefined || !met.has(imageOf(relative))) met.set(keyOf(relative), relative)
        }
    const relative = [...met.values()]
    const places = new Float64Array(points.length * relative.length)
    relative.forEach((angle, k) => {
      places.set(turnPointsAboutZ(points, angle), points.length * k)
    })
    const near = shapeWires(machine, shape, number, false)
    const far = images.length > nearImages ? shapeWires(machine, shape, number, true) : []
    const B = wireFluxDensity(
      images.flatMap(([sense, shift], k) =>
        (k < nearImages ? near : far).map(({ polyline, turns, softening }) => ({
          polyline: Float64Array.from(polyline, (value, i) => (i % 3 === 2 ? sense * value + shift : value)),
          current: turns / μ0,
          softening,
        })),
      ),
      places,
    )
    const axial = new Map<number, Float64Array>()
    relative.forEach((angle, k) => {
      const [x, y, z] = turnPointsAboutZ(Float64Array.from(direction), angle)
      const own = Float64Array.from({ length: count }, (_, i) => {
        const at = 3 * (count * k + i)
        return B[at]! * x! + B[at + 1]! * y! + B[at + 2]! * z!
      })
      if (partner !== undefined)
        axial.set(
          imageOf(angle),
          own.map((_, i) => own[partner[i]!]!),
        )
      axial.set(keyOf(angle), own)
    })
    return axial
  })
  const fields = Array.from({ length: layout.phaseCount }, () => new Float64Array(count * angles.length))
  for (const { shape, phase, sense, angle: place } of layout.coils)
    angles.forEach((angle, a) => {
      const own = perShape[shape]!.get(keyOf(angle - place))!
      for (let i = 0; i < count; i++) fields[phase]![a * count + i]! += (sense * own[i]!) / layout.groups
    })
  return fields
}

/** Share of the apparent power that is heat: cos φ of the steady short. */
function heatShare({ phaseCurrent, loss }: ShortCircuit, peaks: readonly number[]): number {
  const apparent = peaks.reduce((sum, peak) => sum + (peak / Math.SQRT2) * phaseCurrent, 0)
  return apparent > 0 ? Math.min(1, loss / apparent) : 1
}

export interface ShortCurrents {
  /** Of the steady short, greatest of the phases [A]. */
  readonly peak: number
  /**
   * Of every phase [A] at an electrical angle of the rotor, `since` the short came in the same measure [rad];
   * infinite: steady.
   */
  readonly at: (angle: number, since: number) => readonly number[]
}

/**
 * Currents of a winding shorted at its leads at a speed [rad/s], copper at a temperature [K]:
 *
 *   i_k = Î (cos(x + α_k − φ) − e^(−s/tan φ) cos(x − s + α_k − φ))
 *
 * x the electrical angle, s that since the short, α_k of the phase's volts, tan φ the steady reactance over
 * resistance. The flux that the short found linked with the winding stays and dies away: half a period later the
 * currents are up to twice their steady peak and stand against magnets that have moved on by a pole. Fundamental only;
 * phases are taken alike, with the greatest of their currents.
 */
export function shortCurrents(
  machine: Machine,
  voltage: OpenCircuitVoltage,
  { speed, temperature }: { readonly speed: number; readonly temperature: number },
): ShortCurrents {
  const { order, phases } = voltage
  const phasors = phases.map(({ emf }) => [emf.cos[order] ?? 0, emf.sin[order] ?? 0] as const)
  const peaks = phasors.map(([c, s]) => Math.hypot(c, s) * speed)
  const steady = shortCircuit(machine, voltage, 'leads')(speed, temperature)
  const cosine = heatShare(steady, peaks)
  const φ = Math.acos(cosine)
  const decay = cosine / Math.max(Math.sin(φ), 1e-9)
  const peak = Math.SQRT2 * steady.phaseCurrent
  return {
    peak,
    at: (angle, since) => {
      const kept = Number.isFinite(since) ? Math.exp(-since * decay) : 0
      return phasors.map(([c, s], k) => {
        if (!(peaks[k]! > 0)) return 0
        const lagging = Math.atan2(-s, c) - φ
        const trapped = kept > 0 ? kept * Math.cos(angle - since + lagging) : 0
        return peak * (Math.cos(angle + lagging) - trapped)
      })
    },
  }
}

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b)

const anglesPerPolePair = 8
const mostAngles = 24

/**
 * Rotor angles [rad] through which one magnet meets the winding in every way that any magnet does; between coils
 * whole steps, so that one coil's field serves for its copies.
 */
export function tellingAngles({ rotor }: Machine, { shapes, coils }: ConductorLayout): number[] {
  const p = rotor.polePairs
  const wave = shapes[0]!.repeats > 1
  const alike = wave ? p : greatestCommonDivisor(coils.length, p)
  const wanted = Math.min(mostAngles, (anglesPerPolePair * p) / alike)
  const perCoil = wave ? 1 : coils.length / alike
  const count = perCoil * Math.max(1, Math.round(wanted / perCoil))
  return Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / (alike * count))
}
