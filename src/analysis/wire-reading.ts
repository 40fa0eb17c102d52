/** Volts along the wire as plain data, and how they are read: in step with the phase, or at one moment. */
import type { WirePart } from './wire-part.ts'

/** Elements of one shape of conductor, over the part of its path that repeats. */
export interface WireElements {
  /** Path from its start to each element's start, and to the last one's end; mean over the bundle [m]. */
  readonly path: Float64Array
  /** Where the elements begin and the last one ends, middle of the bundle: x0 y0 z0 x1 … [m]. */
  readonly points: Float64Array
  /** Angle between wire and run direction, 0…π/2 [rad]. */
  readonly lean: Float64Array
  readonly part: readonly WirePart[]
  /** 1 where the element lies within the length of the magnets, else 0. */
  readonly underMagnets: Uint8Array
  /** EMF of one wire over the shaft's speed, element by element, orders 0…`orders` of each [V·s/rad]. */
  readonly cos: Float64Array
  readonly sin: Float64Array
  readonly orders: number
  readonly turns: number
  /** The whole path is the elements, this many times round the shaft. */
  readonly repeats: number
}

/** A coil, or a phase's wave, as its phase uses it. */
export interface WireCoil {
  /** From 1. */
  readonly number: number
  readonly shape: number
  /** From 0. */
  readonly phase: number
  /** About the shaft [rad]. */
  readonly angle: number
  readonly sense: 1 | -1
  /** Part of the phase's volts that a volt of all turns makes: 1 in a single string without shorted turns. */
  readonly weight: number
  /** Its volts over those of its shape: 1 unless the stator stands askew. */
  readonly scale: number
  /** In step with the phase: inPhase.cos · cos + inPhase.sin · sin of an element's working order. */
  readonly inPhase: { readonly cos: number; readonly sin: number }
}

export interface PartTotal {
  readonly part: WirePart
  /** Peak of the part's EMF in step with the phase, over the speed; below zero it works against it [V·s/rad]. */
  readonly volts: number
  /** Of the phase's fundamental; all parts together 1, or all 0 where the phase has none. */
  readonly share: number
  /** Share of what lies within the length of the magnets. */
  readonly underShare: number
  /** Wire of the phase, strands counted once [m], and its share of the winding's resistance. */
  readonly length: number
  readonly copperShare: number
  /** Mean over its wire: in step per metre [V·s/(rad·m)], and the angle to the run direction [rad]. */
  readonly perMetre: number
  readonly lean: number
}

export interface PhaseParts {
  /** Peak of the fundamental over the speed, summed along the wire [V·s/rad]. */
  readonly fundamental: number
  readonly parts: readonly PartTotal[]
}

export interface VoltageAlongWire {
  /** Periods of the series in one turn of the shaft, and the working order in them. */
  readonly base: number
  readonly order: number
  readonly shapes: readonly WireElements[]
  readonly coils: readonly WireCoil[]
  readonly phases: readonly PhaseParts[]
}

/** Per metre of one wire of the coil: the peak in step with its phase, over the speed [V·s/(rad·m)]. */
export function inPhasePerMetre({ shapes, order }: VoltageAlongWire, coil: WireCoil): Float64Array {
  const { path, cos, sin, orders } = shapes[coil.shape]!
  const { inPhase } = coil
  return Float64Array.from({ length: path.length - 1 }, (_, k) => {
    const at = k * (orders + 1) + order
    return (inPhase.cos * cos[at]! + inPhase.sin * sin[at]!) / (path[k + 1]! - path[k]!)
  })
}

/** Rotor angle at which the fundamental of the coil's phase is at its peak [rad]. */
export function peakAngle({ base, order }: VoltageAlongWire, { inPhase, sense, angle }: WireCoil): number {
  return angle + Math.atan2(sense * inPhase.sin, sense * inPhase.cos) / (order * base)
}

/**
 * Per metre of one wire of the coil at one moment, over the speed, counted in the direction of its phase
 * [V·s/(rad·m)]. A wave has the elements `repeats` times round the shaft: `copy` says which are meant.
 */
export function instantPerMetre(
  { shapes, base }: VoltageAlongWire,
  coil: WireCoil,
  rotorAngle: number,
  copy = 0,
): Float64Array {
  const { path, cos, sin, orders, repeats } = shapes[coil.shape]!
  const x = base * (rotorAngle - coil.angle - (2 * Math.PI * copy) / repeats)
  const c = Float64Array.from({ length: orders + 1 }, (_, h) => Math.cos(h * x))
  const s = Float64Array.from({ length: orders + 1 }, (_, h) => Math.sin(h * x))
  return Float64Array.from({ length: path.length - 1 }, (_, k) => {
    let sum = 0
    for (let h = 0, at = k * (orders + 1); h <= orders; h++, at++) sum += cos[at]! * c[h]! + sin[at]! * s[h]!
    return (coil.scale * coil.sense * sum) / (path[k + 1]! - path[k]!)
  })
}
